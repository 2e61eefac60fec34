using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>
/// The rule of a shove: a robot whose centre is pushed back over its line has lost; else who gained ground at the contact by the end;
/// else nobody.
/// </summary>
internal static class ShoveJudge
{
    // Ground below which nobody gives way [m].
    private const double Stands = 0.005;

    public static ShoveOutcome Judge(ScenarioSettings scenario, RunHistory first, RunHistory opponent, double? lineTime, (bool First, bool Opponent) tipped)
    {
        double[] force = first["contact_force_n"];
        double[] place = first["contact_x_m"];
        int last = first.Time.Length - 1;
        double end = lineTime ?? first.Time[last];
        int touch = Array.FindIndex(force, f => f > 0.0);
        double gained = touch < 0 ? 0.0 : place[last] - place[touch];
        (ShoveEnding ending, int winner) = Ending(scenario, first, opponent, lineTime is not null, tipped, gained);
        var outcome = new ShoveOutcome { Ending = ending, Winner = winner, GroundGained = gained, EndTime = end };
        if (touch < 0)
        {
            return outcome;
        }

        int? gives = GivesGround(place, touch, gained);
        return outcome with
        {
            FirstContact = first.Time[touch],
            GivesGroundAt = gives is int g ? first.Time[g] : null,
            GroundSpeed = gives is int from && last > from ? Math.Abs(place[last] - place[from]) / (first.Time[last] - first.Time[from]) : 0.0,
            TurnedAside = (Turn(first, touch), Turn(opponent, touch)),
        };
    }

    private static (ShoveEnding Ending, int Winner) Ending(
        ScenarioSettings scenario, RunHistory first, RunHistory opponent, bool isOverLine, (bool First, bool Opponent) tipped, double gained)
    {
        if (tipped.First || tipped.Opponent)
        {
            return (ShoveEnding.Tips, tipped is { First: true, Opponent: true } ? -1 : tipped.First ? 1 : 0);
        }

        if (isOverLine)
        {
            double own = first["x_m"][0] - first["x_m"][^1];
            double other = opponent["x_m"][0] - opponent["x_m"][^1];
            return (ShoveEnding.Line, own > other ? 1 : 0);
        }

        return Math.Abs(gained) > scenario.Shove.DecidingGround ? (ShoveEnding.Ground, gained > 0.0 ? 0 : 1) : (ShoveEnding.Stalemate, -1);
    }

    // The last moment at which the contact had not yet moved the way it went in the end.
    private static int? GivesGround(double[] place, int touch, double gained)
    {
        if (Math.Abs(gained) < Stands)
        {
            return null;
        }

        double sign = Math.Sign(gained);
        int i = place.Length - 1;
        while (i > touch && sign * (place[i] - place[touch]) > Stands)
        {
            i--;
        }

        return i;
    }

    private static double Turn(RunHistory history, int touch)
    {
        double[] heading = history["heading_rad"];
        double most = 0.0;
        for (int i = touch; i < heading.Length; i++)
        {
            double turn = heading[i] - heading[0];
            most = Math.Abs(turn) > Math.Abs(most) ? turn : most;
        }

        return most;
    }
}
