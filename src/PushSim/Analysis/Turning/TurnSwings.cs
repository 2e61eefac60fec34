using PushSim.Runs;

namespace PushSim.Analysis.Turning;

/// <summary>The steady turn of a run and how small swings of it move.</summary>
/// <param name="Turn">The steady turn; null if there is none.</param>
/// <param name="NoModes">Why there is none.</param>
/// <param name="Feed">What feeds its fastest growing mode; null if none grows.</param>
/// <param name="Growth">Growth rate of a simulated disturbance [1/s]; null without a steady turn.</param>
internal sealed record TurnSwings(SteadyTurn? Turn, NoModesCause NoModes, TurnFeed? Feed, double? Growth)
{
    /// <summary>Left out for want of work.</summary>
    public static TurnSwings LeftOut { get; } = new(null, NoModesCause.LeftOut, null, null);
}
