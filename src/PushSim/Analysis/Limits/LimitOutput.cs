namespace PushSim.Analysis.Limits;

/// <summary>What a change may buy.</summary>
public enum LimitOutput
{
    /// <summary>Steady pull on a tether at standstill [N].</summary>
    Pull,

    /// <summary>Distance in the first half second of a launch [m].</summary>
    LaunchDistance,

    /// <summary>Time for the first metre of a launch [s].</summary>
    LaunchTime,

    /// <summary>Yaw rate of a turn on the spot at full command [rad/s].</summary>
    SpotTurnRate,

    /// <summary>Own push less the opponent's, both at standstill [N].</summary>
    ShoveMargin,
}
