using PushSim.Tyres;

namespace PushSim.Words.Turns;

/// <summary>Why a turn chatters or not.</summary>
public static class TurnExplanation
{
    private const int MostWheels = 4;

    // Dampings that differ by less are told as one [1].
    private const double Alike = 1.03;

    // Two frequencies are those of two swings from this ratio on [1].
    private const double Apart = 1.2;

    /// <summary>The explanation, sentence by sentence.</summary>
    public static IReadOnlyList<string> Of(TurnResult r, RunResult result) => r.Modes.Count == 0 ? [.. ChatterWords.Explanation(result.Chatter), .. Lifted(r)] :
    [
        .. ChatterWords.Explanation(result.Chatter), .. Lifted(r), .. Feed(r, result.Scenario), .. Mode(r), .. Other(r), .. Contrast(r, result), .. Range(r, result.Scenario), .. SlipSpeeds(r, result.Scenario),
    ];

    private static IEnumerable<string> Lifted(TurnResult r)
    {
        WheelTurn[] lifted = [.. r.Wheels.Where(w => w.LiftOffs > 0).OrderByDescending(w => w.AirShare)];
        if (lifted.Length > 0)
        {
            yield return "Wheels leave the floor: " + string.Join(", ", lifted.Take(MostWheels).Select(w => Text($"{w.Wheel} {w.LiftOffs} {(w.LiftOffs == 1 ? "time" : "times")}, {100.0 * w.AirShare:0.0} % of the time in the air"))) + ".";
        }
    }

    // Where the run does other than its small swings
    private static IEnumerable<string> Contrast(TurnResult r, RunResult result)
    {
        if (result.Chatter.Kind == ChatterKind.Buzzes && !r.Modes.Any(m => m.IsChatter))
        {
            yield return "Yet it chatters: the start of the turn throws the treads into a large swing, and that one keeps itself going.";
        }

        if (result.Chatter.IsLatent)
        {
            yield return "The run is quiet all the same, for nothing disturbs an even robot on an even floor; a seam of the floor or a centre of mass a little off the middle starts it.";
        }
    }

    private static IEnumerable<string> Feed(TurnResult r, ScenarioSettings scenario)
    {
        if (r.Rings.Count == 0)
        {
            yield return "No tread slides in the steady turn, so nothing feeds a chatter.";
            yield break;
        }

        if (r.Rings.Where(c => c.FrictionSlope < 0.0).MinBy(c => c.Margin) is not RingCheck worst)
        {
            yield return Text($"Friction falls with slip speed at none of the sliding treads ({r.Rings.Min(c => c.SlipSpeed):0.00} to {r.Rings.Max(c => c.SlipSpeed):0.00} m/s), so falling friction feeds no chatter.");
            yield break;
        }

        TyreSettings tyre = scenario.Robot.Wheels.First(w => w.Name == worst.Wheel).Tyre;
        double feed = -worst.Load * worst.FrictionSlope;
        string start = r.Feed is { WithoutFall: > 0.0, WithSteadyLoad: <= 0.0 } ? "Falling friction helps every chatter on" : "What feeds a chatter";
        yield return Text($"{start}: a tread that slides a little faster is held back less. At {worst.Wheel} it slides at {worst.SlipSpeed:0.00} m/s under {worst.Load:0.0} N, and falling friction pushes every swing on with {(feed < 0.005 ? "less than 0.01" : Text($"{feed:0.00}"))} N s/m; a duller tyre body takes more of it back (this one's own damping is {tyre.BodyDamping:0.00} N s/m, a rebound of about {100.0 * ReboundOf(tyre, tyre.BodyDamping):0} %).");
        yield return Text($"Tread ring alone, with the wheel held: margin {AwayFromOne(worst.Margin)}, below 1 it buzzes: {(worst.Buzzes ? "it does" : "it is quiet")}, near {worst.Frequency:0} Hz.");
    }

    private static IEnumerable<string> Mode(TurnResult r)
    {
        TurnMode first = First(r);
        string swing = first.Frequency > 0.0 ? Text($" at {first.Frequency:0.0} Hz") : "";
        yield return first.Growth > 0.0
            ? Text($"In the whole robot {TurnWords.Of(first.Part)}{swing} grows by itself, {Folds(first.Growth)}.")
            : Text($"In the whole robot every small swing dies out; the slowest is {TurnWords.Of(first.Part)}{swing}, {Folds(first.Growth)}.");
        if (r.Feed is { } feed && Source(feed, r.Rings.Any(c => c.FrictionSlope < 0.0)) is { Length: > 0 } source)
        {
            yield return source;
        }

        if (r.SimulatedGrowth is { } rate && double.IsFinite(rate))
        {
            yield return Text($"A simulation of the steady turn with everything moved by a ten-thousandth of its usual size {(rate > 0.0 ? "swings up" : "comes to rest")} at {Math.Abs(rate):0.0} 1/s (small-swing analysis: {Math.Abs(first.Growth):0.0} 1/s).");
        }
    }

    // the swing that is chatter, else the fastest growing one
    private static TurnMode First(TurnResult r) => r.Modes.FirstOrDefault(m => m.IsChatter) ?? r.Modes[0];

    // What the fastest growing swing lives on, as far as taking causes away tells.
    private static string Source(TurnFeed f, bool falls)
    {
        const string Load = "a tread holds as much as its wheel is loaded, and the load swings as the body bounces, pitches and rolls on its tyres";
        string without = falls ? Text($"Falling friction does not make it: with friction that is the same at every slip speed it would still grow, {Folds(f.WithoutFall)}. ") : "";
        return f.Kind switch
        {
            ChatterFeed.Friction => "Falling friction makes it: with friction that is the same at every slip speed it would die out.",
            ChatterFeed.Loads => Text($"{without}The body's own swinging makes it: {Load}; were the loads steady, it would die out."),
            ChatterFeed.Both => Text($"It takes two causes: falling friction, and that {Load}. Without either it would die out."),
            ChatterFeed.Either => Text($"It has two causes, each enough alone: falling friction ({Folds(f.WithSteadyLoad)} without the other), and that {Load} ({Folds(f.WithoutFall)})."),
            _ => Text($"{without}Nor is it that {Load}: it would grow with steady loads, too. What else feeds it is not known."),
        };
    }

    // One more growing swing at another frequency: which of them a run shows hangs on what starts it.
    private static IEnumerable<string> Other(TurnResult r)
    {
        TurnMode first = First(r);
        if (r.Modes.FirstOrDefault(m => m != first && m.Growth > 0.0 && m.Frequency > 0.0 && Math.Max(m.Frequency, first.Frequency) > Apart * Math.Min(m.Frequency, first.Frequency)) is TurnMode other)
        {
            yield return Text($"Another swing grows, too: {TurnWords.Of(other.Part)} at {other.Frequency:0.0} Hz, {Folds(other.Growth)}. A seam of the floor or a centre of mass a little off the middle may bring out that one instead.");
        }
    }

    // a margin that is not 1 is not told as 1
    private static string AwayFromOne(double margin)
    {
        string two = Text($"{margin:0.00}");
        return two == "1.00" ? PlainNumber.Apart(margin, 1.0) : two;
    }

    private static string Folds(double growth) => Text($"{(growth > 0.0 ? "doubling" : "halving")} every {1e3 * Math.Log(2.0) / Math.Abs(growth):0} ms");

    private static IEnumerable<string> Range(TurnResult r, ScenarioSettings scenario)
    {
        if (r.Range is null)
        {
            yield break;
        }

        TyreSettings tyre = scenario.Robot.Wheels[0].Tyre;
        bool isOne = scenario.Robot.Wheels.All(w => w.Tyre.BodyDamping == tyre.BodyDamping && w.Tyre.BodyStiffness == tyre.BodyStiffness && w.Tyre.TreadMass == tyre.TreadMass);
        string Damping(double factor) => isOne
            ? Text($"{factor * tyre.BodyDamping:0.00} N s/m (rebound about {100.0 * ReboundOf(tyre, factor * tyre.BodyDamping):0} %)")
            : Text($"{factor:0.00} times the damping that each tyre body has");
        string stop = r.Range!.Stop is not { } s ? ""
            : s < Alike * r.Range.Onset ? ", and stops above that"
            : $"; once it chatters it stops only above {Damping(s)}";
        yield return r.Range.Onset is { } onset
            ? $"It begins to chatter by itself below a tyre body damping of {Damping(onset)}{stop}."
            : (r.Modes[0].Growth > 0.0 ? "No damping of the tyre bodies up to a hundred times what they have stops that by itself" : "By itself it stays quiet even with a hundredth of the damping of its tyre bodies") + stop + ".";
    }

    private static IEnumerable<string> SlipSpeeds(TurnResult r, ScenarioSettings scenario)
    {
        if (r.SlipSpeeds.Count == 0)
        {
            yield break;
        }

        string ring = Spans(r.SlipSpeeds, p => p.RingMargin < 1.0);
        string all = Spans(r.SlipSpeeds, p => p.Chatters);
        double own = scenario.Robot.Wheels[0].Tyre.SlipSpeed;

        // where friction does not fall the ring has no margin: nothing feeds it
        double[] margins = [.. r.SlipSpeeds.Select(p => p.RingMargin).OfType<double>().Where(double.IsFinite)];
        string margin = margins.Length == 0 ? "" : Text($"; the ring's margin goes from {margins.Min():0.00} to {margins.Max():0.00}");
        yield return Text($"The speed over which friction falls cannot be seen in a pull test (here {own:0.00} m/s). From {r.SlipSpeeds[0].SlipSpeed:0.00} to {r.SlipSpeeds[^1].SlipSpeed:0.00} m/s the tread ring alone would buzz {ring}, the whole robot {all}{margin}.");
    }

    // Runs of points that chatter, as words.
    private static string Spans(IReadOnlyList<SlipSpeedPoint> points, Func<SlipSpeedPoint, bool> chatters)
    {
        List<string> spans = [];
        for (int i = 0; i < points.Count; i++)
        {
            if (chatters(points[i]))
            {
                int from = i;
                while (i + 1 < points.Count && chatters(points[i + 1]))
                {
                    i++;
                }

                spans.Add(from == 0 && i == points.Count - 1 ? "everywhere" : Text($"from {points[from].SlipSpeed:0.00} to {points[i].SlipSpeed:0.00} m/s"));
            }
        }

        return spans.Count == 0 ? "nowhere" : string.Join(" and ", spans);
    }

    // c_c = eta sqrt(k_c m_t), turned round
    private static double ReboundOf(TyreSettings t, double damping) => CoverModulus.Rebound(damping / Math.Sqrt(t.BodyStiffness * t.TreadMass));
}
