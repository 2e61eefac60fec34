namespace PushSim.Analysis.Limits;

/// <summary>The trade between pull and dash over the gear ratio.</summary>
/// <param name="Points">Ratios, rising.</param>
/// <param name="BestForPull">Least factor tried that gives <see cref="NearlyMost"/> of the greatest pull [1].</param>
/// <param name="BestForDash">Factor of the shortest dash [1].</param>
/// <param name="MeanRatio">Mean gear ratio of the file [1].</param>
public sealed record RatioCurve(IReadOnlyList<RatioPoint> Points, double BestForPull, double BestForDash, double MeanRatio)
{
    /// <summary>Share of the greatest pull that counts as nearly all of it [1]. Tyres grip a few percent more where they spin more slowly, so that with a share nearer
    /// to 1 the deepest gear would be the answer of every robot whose tyres hold its pull.</summary>
    public const double NearlyMost = 0.95;

    /// <summary>Whether all ratios pull nearly alike.</summary>
    public bool IsFlat => Points.Min(p => p.Pull) > NearlyMost * Points.Max(p => p.Pull);

    /// <summary>At which end of what was tried a factor lies.</summary>
    public RatioEdge Edge(double factor) => factor == Points[0].Factor ? RatioEdge.Lowest : factor == Points[^1].Factor ? RatioEdge.Highest : RatioEdge.None;
}
