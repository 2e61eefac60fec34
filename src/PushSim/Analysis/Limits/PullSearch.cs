namespace PushSim.Analysis.Limits;

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
