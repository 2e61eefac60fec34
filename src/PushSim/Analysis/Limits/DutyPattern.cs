namespace PushSim.Analysis.Limits;

/// <summary>A duty pattern that repeats until the match ends, in the order dash, push, turn, rest.</summary>
public sealed record DutyPattern
{
    /// <summary>Length of the match [s].</summary>
    public double Length { get; init; } = 180.0;

    /// <summary>Full throttle against something that does not give way, in each turn of the pattern [s].</summary>
    public double Push { get; init; } = 3.0;

    /// <summary>Least length of one round [s].</summary>
    public const double ShortestRound = 1.0;

    /// <summary>Dashes from standstill at full throttle, one after the other, each a second long, the last what is left [s].</summary>
    public double Dash { get; init; } = 3.0;

    /// <summary>Turning on the spot at full command [s].</summary>
    public double Turn { get; init; } = 1.0;

    /// <summary>Standing without command [s].</summary>
    public double Rest { get; init; } = 3.0;

    /// <summary>One round [s].</summary>
    public double Round => Push + Dash + Turn + Rest;
}
