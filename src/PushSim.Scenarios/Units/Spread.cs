namespace PushSim.Scenarios.Units;

/// <summary>How values lie within a tolerance; named behind it, for example "0.85 ± 0.05 uniform".</summary>
public enum Spread
{
    /// <summary>A normal distribution with the tolerance as two standard deviations: 95 of 100 lie inside.</summary>
    Normal,

    /// <summary>All inside, everywhere alike.</summary>
    Uniform,

    /// <summary>All inside, falling straight from the middle to the ends.</summary>
    Triangular,
}
