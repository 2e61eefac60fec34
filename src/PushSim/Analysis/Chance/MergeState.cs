namespace PushSim.Analysis.Chance;

/// <summary>What became of joining finished parts.</summary>
/// <param name="Splits">Counts of parts that the names tell; one if all are of one split [1].</param>
/// <param name="Parts">The parts of that split, each in its place; empty unless there is one split.</param>
public sealed record MergeState(IReadOnlyList<int> Splits, IReadOnlyList<PartState> Parts)
{
    /// <summary>Parts that are not whole.</summary>
    public IEnumerable<PartState> Unfinished => Parts.Where(p => p.Condition != PartCondition.Whole);

    /// <summary>Whether the whole is there.</summary>
    public bool IsWhole => Splits.Count == 1 && !Unfinished.Any();
}
