using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>The rule of a shove: a robot whose centre is pushed over a line, its own behind it or, where the pair has swapped ends, the other's, has lost;
/// else who gained ground at the contact by the end; else nobody.</summary>
internal static class ShoveJudge
{
    // Ground below which nobody gives way [m].
    private const double Stands = 0.005;

    /// <summary>The outcome of a recorded shove; when ground was given is read from the histories of both robots.</summary>
    public static ShoveOutcome Judge(ScenarioSettings scenario, MatchWatch watch, double end, RunHistory first, RunHistory second)
    {
        (ShoveEnding ending, int winner) = Ending(scenario.Shove, watch);
        var outcome = new ShoveOutcome { Ending = ending, Winner = winner, GroundGained = watch.GroundGained, EndTime = double.IsNaN(watch.LineTime) ? end : watch.LineTime, IsFarLine = watch.IsFarLine, Upset = winner < 0 ? Upset.None : watch.Robots[1 - winner].Upset };
        if (double.IsNaN(watch.TouchTime))
        {
            return outcome;
        }

        double[] gained = Gained(first, second, first.IndexAt(watch.TouchTime));
        int last = first.Time.Length - 1;
        int? gives = GivesGround(gained, first.IndexAt(watch.TouchTime));
        return outcome with
        {
            FirstContact = watch.TouchTime,
            GivesGroundAt = gives is int g ? first.Time[g] : null,
            GroundSpeed = gives is int from && last > from ? Math.Abs(gained[last] - gained[from]) / (first.Time[last] - first.Time[from]) : 0.0,
            TurnedAside = (watch.Robots[0].Turned, watch.Robots[1].Turned),
        };
    }

    // Ground gained by the first robot up to each sample, counted from sample to sample as MatchWatch does from step to step [m].
    private static double[] Gained(RunHistory first, RunHistory second, int touch)
    {
        ContactTrace contact = first.Trace.Contact!;
        (BodyTrace own, BodyTrace other) = (first.Trace.Body, second.Trace.Body);
        double[] gained = new double[first.Time.Length];
        GroundCount ground = default;
        for (int i = touch; i < gained.Length; i++)
        {
            // the contact is known at the first touch, which lies between two samples
            (double X, double Y)? place = contact.Force[i] > 0.0 || i == touch ? (contact.X[i], contact.Y[i]) : null;
            ground.Next(place, own.X[i], own.Y[i], other.X[i], other.Y[i]);
            gained[i] = ground.Gained;
        }

        return gained;
    }

    /// <summary>How a shove ended and who won, from what was seen at step ends.</summary>
    public static (ShoveEnding Ending, int Winner) Ending(ShoveSettings shove, MatchWatch watch) =>
        watch.HasTipped || double.IsNaN(watch.LineTime) ? Without(shove, watch) : (ShoveEnding.Line, AtLine(watch));

    /// <summary>Who won at the line.</summary>
    public static int AtLine(MatchWatch watch) => watch.OverLine == 0 ? 1 : 0;

    /// <summary>The same as if no line had been there.</summary>
    public static (ShoveEnding Ending, int Winner) Without(ShoveSettings shove, MatchWatch watch)
    {
        (bool first, bool opponent) = (watch.Robots[0].HasTipped, watch.Robots[1].HasTipped);
        if (first || opponent)
        {
            return (ShoveEnding.Tips, first && opponent ? -1 : first ? 1 : 0);
        }

        double gained = watch.GroundGained;
        return Math.Abs(gained) > shove.DecidingGround ? (ShoveEnding.Ground, gained > 0.0 ? 0 : 1) : (ShoveEnding.Stalemate, -1);
    }

    // The last moment at which the ground had not yet gone the way it went in the end.
    private static int? GivesGround(double[] gained, int touch)
    {
        double end = gained[^1];
        if (Math.Abs(end) < Stands)
        {
            return null;
        }

        int i = gained.Length - 1;
        while (i > touch && Math.Sign(end) * gained[i] > Stands)
        {
            i--;
        }

        return i;
    }
}
