namespace PushSim.Analysis.Limits;

/// <summary>A duty pattern that repeats until the match ends.</summary>
public sealed record DutyPattern
{
    /// <summary>Length of the match [s].</summary>
    public double Length { get; init; } = 180.0;

    /// <summary>Full throttle against something that does not give way, in each turn of the pattern [s].</summary>
    public double Push { get; init; } = 3.0;

    /// <summary>Dashes of one second from standstill at full throttle [s].</summary>
    public double Dash { get; init; } = 3.0;

    /// <summary>Turning on the spot at full command [s].</summary>
    public double Turn { get; init; } = 1.0;

    /// <summary>Standing without command [s].</summary>
    public double Rest { get; init; } = 3.0;
}
