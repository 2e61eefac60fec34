using PushSim.Tyres;

namespace PushSim.Words.Turns;

/// <summary>A turn's report in plain words.</summary>
public static class TurnWords
{
    private const int MostWheels = 4;

    // Twentyfold within a second; what grows slower is not seen within a turn [1/s].
    private const double SeenGrowth = 3.0;

    // Dampings that differ by less are told as one [1].
    private const double Alike = 1.03;

    // Two frequencies are those of two swings from this ratio on [1].
    private const double Apart = 1.2;

    /// <summary>The answer as one sentence.</summary>
    /// <param name="r">What was found of the turn.</param>
    /// <param name="result">Its run.</param>
    public static string Verdict(TurnReport r, RunResult result)
    {
        RunAnswers a = result.Answers;
        string name = result.Scenario.Robot.Name;
        WheelTurn[] lifted = [.. r.Wheels.Where(w => w.LiftOffs > 0)];
        string buzz = a.Chatter is { } hz ? Text($"; its tyres chatter at about {hz:0} Hz{(lifted.Length > 0 ? " and leave the floor" : "")}")
            : Latent(r, a) is { } mode ? Text($"; quiet here, but small swings near {mode.Frequency:0} Hz grow ({Of(mode.Part)}): expect chatter from the first bump") : "";
        if (r.Ease == TurnEase.CannotTurn)
        {
            string limit = a.Binding is null ? "" : $"; {(a.Binding.Named.Count == 1 ? "the " : "")}{BindingTable.Phrase(a.Binding)} set the limit";
            return Text($"{name} cannot turn{limit}; {Needs(r)}{buzz}.");
        }

        double rate = a.YawRate!.Value;
        string ease = r.Ease == TurnEase.Freely ? "turns with power to spare" : "turns, but at the limit";
        string scrub = a.EffectiveTrackRatio is { } ratio ? Text($"; scrub costs it a factor of {ratio:0.00} in turning rate") : "";
        return Text($"{name} {ease}: {Math.Abs(rate):0.0} rad/s ({Math.Abs(rate) * 180.0 / Math.PI:0} deg/s) {(rate > 0 ? "to the left" : "to the right")}{scrub}{buzz}.");
    }

    /// <summary>Why it chatters or not, sentence by sentence.</summary>
    /// <param name="r">What was found of the turn.</param>
    /// <param name="result">Its run.</param>
    public static IReadOnlyList<string> Explain(TurnReport r, RunResult result)
    {
        ScenarioSettings scenario = result.Scenario;
        List<string> lines = [];
        WheelTurn[] lifted = [.. r.Wheels.Where(w => w.LiftOffs > 0).OrderByDescending(w => w.AirShare)];
        if (lifted.Length > 0)
        {
            lines.Add("Wheels leave the floor: " + string.Join(", ", lifted.Take(MostWheels).Select(w => Text($"{w.Wheel} {w.LiftOffs} {(w.LiftOffs == 1 ? "time" : "times")}, {100.0 * w.AirShare:0.0} % of the time in the air"))) + ".");
        }

        if (r.Modes.Count == 0)
        {
            return lines;
        }

        AddFeed(lines, r, scenario);
        AddMode(lines, r);
        AddOther(lines, r);
        if (result.Answers.Chatter is not null && r.Modes[0].Growth <= 0.0)
        {
            lines.Add("Yet it chatters: the start of the turn throws the treads into a large swing, and that one keeps itself going.");
        }

        if (Latent(r, result.Answers) is not null)
        {
            lines.Add("The run is quiet all the same, for nothing disturbs an even robot on an even floor; a seam of the floor or a centre of mass a little off the middle starts it.");
        }

        AddRange(lines, r, scenario);
        AddSlipSpeeds(lines, r, scenario);
        return lines;
    }

    // A swing fast enough for chatter that grows by itself, in a run that did not disturb it; null for none.
    private static TurnMode? Latent(TurnReport r, RunAnswers a) =>
        a.Chatter is null ? r.Modes.FirstOrDefault(m => m.Growth > SeenGrowth && m.Frequency >= ForceSpectrum.LowestFrequency) : null;

    private static string Needs(TurnReport r)
    {
        List<string> needs = [];
        if (r.LeastCurrentLimit is { } ampere)
        {
            needs.Add(Text($"a current limit of {RoundedUp(ampere, 0.1):0.0} A"));
        }

        if (r.LeastMotorShare is { } share)
        {
            needs.Add(Text($"motors with {RoundedUp(share, 0.05):0.00} times the stall torque"));
        }

        needs.AddRange(r.Helps.Where(h => h.Turns && h.What != TurnChange.CurrentLimit).Take(3 - Math.Min(2, needs.Count)).Select(h => Text($"a {Of(h.What)} of {Number(h.To)}{(Unit(h.What) is { } unit and not "1" ? " " + unit : "")} instead of {Number(h.From)}")));
        return needs.Count == 0 ? "no single change that was tried lets it" : string.Join(" or ", needs) + " would let it";
    }

    // what just would not do is not told as enough
    private static double RoundedUp(double value, double step) => step * Math.Ceiling(value / step);

    private static void AddFeed(List<string> lines, TurnReport r, ScenarioSettings scenario)
    {
        if (r.Rings.Count == 0)
        {
            lines.Add("No tread slides in the steady turn, so nothing feeds a chatter.");
            return;
        }

        if (r.Rings.Where(c => c.FrictionSlope < 0.0).MinBy(c => c.Margin) is not RingCheck worst)
        {
            lines.Add(Text($"Friction falls with slip speed at none of the sliding treads ({r.Rings.Min(c => c.SlipSpeed):0.00} to {r.Rings.Max(c => c.SlipSpeed):0.00} m/s), so falling friction feeds no chatter."));
            return;
        }

        TyreSettings tyre = scenario.Robot.Wheels.First(w => w.Name == worst.Wheel).Tyre;
        double feed = -worst.Load * worst.FrictionSlope;
        string start = r.Feed is { WithoutFall: > 0.0, WithSteadyLoad: <= 0.0 } ? "Falling friction helps every chatter on" : "What feeds a chatter";
        lines.Add(Text($"{start}: a tread that slides a little faster is held back less. At {worst.Wheel} it slides at {worst.SlipSpeed:0.00} m/s under {worst.Load:0.0} N, and falling friction pushes every swing on with {(feed < 0.005 ? "less than 0.01" : Text($"{feed:0.00}"))} N s/m; a duller tyre body takes more of it back (this one's own damping is {tyre.BodyDamping:0.00} N s/m, a rebound of about {100.0 * ReboundOf(tyre, tyre.BodyDamping):0} %)."));
        lines.Add(Text($"Tread ring alone, with the wheel held: margin {AwayFromOne(worst.Margin)}, below 1 it buzzes: {(worst.Buzzes ? "it does" : "it is quiet")}, near {worst.Frequency:0} Hz."));
    }

    private static void AddMode(List<string> lines, TurnReport r)
    {
        TurnMode first = r.Modes[0];
        string swing = first.Frequency > 0.0 ? Text($" at {first.Frequency:0.0} Hz") : "";
        lines.Add(first.Growth > 0.0
            ? Text($"In the whole robot {Of(first.Part)}{swing} grows by itself, {Folds(first.Growth)}.")
            : Text($"In the whole robot every small swing dies out; the slowest is {Of(first.Part)}{swing}, {Folds(first.Growth)}."));
        if (r.Feed is { } feed && Source(feed, r.Rings.Any(c => c.FrictionSlope < 0.0)) is { Length: > 0 } source)
        {
            lines.Add(source);
        }

        if (r.SimulatedGrowth is { } rate && double.IsFinite(rate))
        {
            lines.Add(Text($"A simulation of the steady turn with everything moved by a ten-thousandth of its usual size {(rate > 0.0 ? "swings up" : "comes to rest")} at {Math.Abs(rate):0.0} 1/s (small-swing analysis: {Math.Abs(first.Growth):0.0} 1/s)."));
        }
    }

    // What the fastest growing swing lives on, as far as taking causes away tells.
    private static string Source(TurnFeed f, bool falls)
    {
        const string Load = "a tread holds as much as its wheel is loaded, and the load swings as the body bounces, pitches and rolls on its tyres";
        string without = falls ? Text($"Falling friction does not make it: with friction that is the same at every slip speed it would still grow, {Folds(f.WithoutFall)}. ") : "";
        return (f.WithoutFall > 0.0, f.WithSteadyLoad > 0.0, f.WithNeither > 0.0) switch
        {
            (false, true, _) => "Falling friction makes it: with friction that is the same at every slip speed it would die out.",
            (true, false, _) => Text($"{without}The body's own swinging makes it: {Load}; were the loads steady, it would die out."),
            (false, false, _) => Text($"It takes two causes: falling friction, and that {Load}. Without either it would die out."),
            (true, true, false) => Text($"It has two causes, each enough alone: falling friction ({Folds(f.WithSteadyLoad)} without the other), and that {Load} ({Folds(f.WithoutFall)})."),
            _ => Text($"{without}Nor is it that {Load}: it would grow with steady loads, too. What else feeds it is not known."),
        };
    }

    // One more growing swing at another frequency: which of them a run shows hangs on what starts it.
    private static void AddOther(List<string> lines, TurnReport r)
    {
        TurnMode first = r.Modes[0];
        if (r.Modes.Skip(1).FirstOrDefault(m => m.Growth > 0.0 && m.Frequency > 0.0 && Math.Max(m.Frequency, first.Frequency) > Apart * Math.Min(m.Frequency, first.Frequency)) is TurnMode other)
        {
            lines.Add(Text($"Another swing grows, too: {Of(other.Part)} at {other.Frequency:0.0} Hz, {Folds(other.Growth)}. A seam of the floor or a centre of mass a little off the middle may bring out that one instead."));
        }
    }

    // a margin that is not 1 is not told as 1
    private static string AwayFromOne(double margin)
    {
        string two = Text($"{margin:0.00}");
        return two == "1.00" ? PlainNumber.Apart(margin, 1.0) : two;
    }

    private static string Folds(double growth) => Text($"{(growth > 0.0 ? "doubling" : "halving")} every {1e3 * Math.Log(2.0) / Math.Abs(growth):0} ms");

    private static void AddRange(List<string> lines, TurnReport r, ScenarioSettings scenario)
    {
        TyreSettings tyre = scenario.Robot.Wheels[0].Tyre;
        bool isOne = scenario.Robot.Wheels.All(w => w.Tyre.BodyDamping == tyre.BodyDamping && w.Tyre.BodyStiffness == tyre.BodyStiffness && w.Tyre.TreadMass == tyre.TreadMass);
        string Damping(double factor) => isOne
            ? Text($"{factor * tyre.BodyDamping:0.00} N s/m (rebound about {100.0 * ReboundOf(tyre, factor * tyre.BodyDamping):0} %)")
            : Text($"{factor:0.00} times the damping that each tyre body has");
        string stop = r.Range!.Stop is not { } s ? ""
            : s < Alike * r.Range.Onset ? ", and stops above that"
            : $"; once it chatters it stops only above {Damping(s)}";
        lines.Add(r.Range.Onset is { } onset
            ? $"It begins to chatter by itself below a tyre body damping of {Damping(onset)}{stop}."
            : (r.Modes[0].Growth > 0.0 ? "No damping of the tyre bodies up to a hundred times what they have stops that by itself" : "By itself it stays quiet even with a hundredth of the damping of its tyre bodies") + stop + ".");
    }

    private static void AddSlipSpeeds(List<string> lines, TurnReport r, ScenarioSettings scenario)
    {
        if (r.SlipSpeeds.Count == 0)
        {
            return;
        }

        string ring = Spans(r.SlipSpeeds, p => p.RingMargin < 1.0);
        string all = Spans(r.SlipSpeeds, p => p.Growth > 0.0);
        double own = scenario.Robot.Wheels[0].Tyre.SlipSpeed;

        // where friction does not fall the ring has no margin: nothing feeds it
        double[] margins = [.. r.SlipSpeeds.Select(p => p.RingMargin).OfType<double>().Where(double.IsFinite)];
        string margin = margins.Length == 0 ? "" : Text($"; the ring's margin goes from {margins.Min():0.00} to {margins.Max():0.00}");
        lines.Add(Text($"The speed over which friction falls cannot be seen in a pull test (here {own:0.00} m/s). From {r.SlipSpeeds[0].SlipSpeed:0.00} to {r.SlipSpeeds[^1].SlipSpeed:0.00} m/s the tread ring alone would buzz {ring}, the whole robot {all}{margin}."));
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

    // c_c = eta sqrt(k_c m_t), eta = -ln(rebound)/pi, turned round
    private static double ReboundOf(TyreSettings t, double damping) => Math.Exp(-Math.PI * damping / Math.Sqrt(t.BodyStiffness * t.TreadMass));

    /// <summary>A number to three digits.</summary>
    public static string Number(double value) => value.ToString(Math.Abs(value) >= 100.0 ? "0" : Math.Abs(value) >= 10.0 ? "0.0" : "0.00", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>What is changed.</summary>
    /// <param name="change">The change.</param>
    public static string Of(TurnChange change) => change switch
    {
        TurnChange.Wheelbase => "wheelbase",
        TurnChange.Track => "track",
        TurnChange.CentreOfMass => "centre of mass ahead of the middle of the wheelbase",
        TurnChange.FrontFriction => "friction of the front tyres",
        TurnChange.RearFriction => "friction of the rear tyres",
        TurnChange.Friction => "friction of all tyres",
        TurnChange.GearRatio => "gear ratio",
        _ => "current limit of each controller",
    };

    /// <summary>Unit of a change's values.</summary>
    /// <param name="change">The change.</param>
    public static string Unit(TurnChange change) => change switch
    {
        TurnChange.Wheelbase or TurnChange.Track or TurnChange.CentreOfMass => "mm",
        TurnChange.CurrentLimit => "A",
        _ => "1",
    };

    /// <summary>What moves in a mode.</summary>
    /// <param name="part">The part.</param>
    public static string Of(TurnPart part) => part switch
    {
        TurnPart.Ring => "tyre ring",
        TurnPart.Bounce => "bounce",
        TurnPart.Pitch => "pitch",
        TurnPart.Roll => "roll",
        TurnPart.Yaw => "yaw",
        TurnPart.Drift => "drift",
        _ => "wheel spin",
    };

    /// <summary>Why a turn has no modes; empty if it has.</summary>
    /// <param name="cause">The cause.</param>
    public static string Of(NoModesCause cause) => cause switch
    {
        NoModesCause.None => "",
        NoModesCause.CannotTurn => "it does not turn",
        NoModesCause.UnevenFloor => "the floor is not the same all around, so there is no steady turn",
        NoModesCause.HeldBack => "something holds the robot back, so there is no steady turn",
        NoModesCause.NoCommand => "nothing is commanded",
        NoModesCause.NoStand => "the robot does not stand on its wheels",
        _ => "no steady turn was found",
    };
}
