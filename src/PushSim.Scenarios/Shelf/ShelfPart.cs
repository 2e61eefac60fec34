namespace PushSim.Scenarios.Shelf;

/// <summary>A part of the shelf.</summary>
/// <param name="Name">The name that a file refers to.</param>
/// <param name="About">What it is, one sentence.</param>
/// <param name="Numbers">Its values.</param>
public sealed record ShelfPart(string Name, string About, IReadOnlyList<ShelfNumber> Numbers)
{
    /// <summary>The number of that key; null if it has none.</summary>
    public ShelfNumber? Find(string key) => Numbers.FirstOrDefault(n => n.Key == key);
}
