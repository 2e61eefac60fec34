namespace PushSim.Analysis.Limits;

/// <summary>How the search for a steady pull at standstill ended.</summary>
public enum PullStatus
{
    /// <summary>It was found.</summary>
    Found,

    /// <summary>There is none: the robot rears up at a pull below what its drives and tyres give.</summary>
    RearsUp,

    /// <summary>The search came to no end; whether there is one is not known.</summary>
    NotFound,
}

/// <summary>What the search for a steady pull found.</summary>
/// <param name="Status">How it ended.</param>
/// <param name="Steady">The pull; null unless it was found.</param>
/// <param name="TipsAt">A traction at which the robot tips, where it rears up [N]; NaN else.</param>
internal sealed record PullSearch(PullStatus Status, StandingPull? Steady, double TipsAt)
{
    public static PullSearch NotFound { get; } = new(PullStatus.NotFound, null, double.NaN);

    public static PullSearch Found(StandingPull pull) => new(PullStatus.Found, pull, double.NaN);

    public static PullSearch RearsUp(double traction) => new(PullStatus.RearsUp, null, traction);
}
