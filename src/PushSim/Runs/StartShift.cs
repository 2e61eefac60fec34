using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>A shove whose drivers start in another order.</summary>
public static class StartShift
{
    /// <summary>By how much one robot is first [s]. Common practice, no source: about what two people differ by who wait for one signal.</summary>
    public const double Tenth = 0.1;

    /// <summary>How much later the opponent starts than the first robot [s]; of a robot that is told nothing only the reaction counts.</summary>
    /// <param name="shove">Settings with an opponent.</param>
    public static double Lead(ScenarioSettings shove)
    {
        (ManoeuvreSettings own, ManoeuvreSettings other) = (shove.Manoeuvre, shove.Opponent!.Manoeuvre);
        return other.FirstCommand is double later && own.FirstCommand is double sooner ? later - sooner : other.Driver.ReactionDelay - own.Driver.ReactionDelay;
    }

    /// <summary>The shove in another order: the sooner of both reactions stays, the other robot reacts later.</summary>
    /// <param name="shove">Settings with an opponent.</param>
    /// <param name="order">Who moves first.</param>
    /// <param name="lead">How much later the opponent starts where no order is asked, which is taken out [s].</param>
    public static ScenarioSettings With(ScenarioSettings shove, StartOrder order, double lead)
    {
        double first = order switch { StartOrder.First => Tenth, StartOrder.Last => -Tenth, _ => 0.0 };
        if (first == 0.0 && lead == 0.0)
        {
            return shove;
        }

        (double own, double other) = (shove.Manoeuvre.Driver.ReactionDelay, shove.Opponent!.Manoeuvre.Driver.ReactionDelay);
        double later = other - own - lead + first;
        double soonest = Math.Min(own, other);
        return shove with
        {
            Manoeuvre = Reacting(shove.Manoeuvre, soonest + Math.Max(0.0, -later)),
            Opponent = shove.Opponent with { Manoeuvre = Reacting(shove.Opponent.Manoeuvre, soonest + Math.Max(0.0, later)) },
        };
    }

    private static ManoeuvreSettings Reacting(ManoeuvreSettings m, double delay) => m with { Driver = m.Driver with { ReactionDelay = delay } };
}
