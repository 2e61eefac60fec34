namespace PushSim.Analysis.Chance;

/// <summary>What became of joining finished parts.</summary>
/// <param name="Splits">Counts of parts that the names tell; one if all are of one split [1].</param>
/// <param name="Unfinished">Parts that lack matches, or are of something else.</param>
public sealed record MergeState(IReadOnlyList<int> Splits, IReadOnlyList<PartState> Unfinished)
{
    /// <summary>Whether the whole is there.</summary>
    public bool IsWhole => Splits.Count == 1 && Unfinished.Count == 0;
}
