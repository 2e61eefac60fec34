namespace PushSim.Scenarios.Studies;

/// <summary>One thing of a garage.</summary>
/// <param name="Name">Its name.</param>
/// <param name="About">What it is, in a few words.</param>
/// <param name="Lacks">What it lacks before it can be used, or would be known better by; empty if nothing.</param>
public sealed record GarageItem(string Name, string About, IReadOnlyList<string> Lacks)
{
    /// <summary>Whether it cannot be used as it is.</summary>
    public bool IsUnusable { get; init; }

    /// <summary>Counted pulls of a tyre in the notebook [1]; null of what is not pulled.</summary>
    public int? Pulls { get; init; }
}
