namespace PushSim.Scenarios.Shelf;

/// <summary>A part of the shelf.</summary>
/// <param name="Name">The name that a file refers to.</param>
/// <param name="About">What it is, one sentence.</param>
/// <param name="Numbers">Its values.</param>
public sealed record ShelfPart(string Name, string About, IReadOnlyList<ShelfNumber> Numbers)
{
    /// <summary>Builders' words for it, which a file may refer to as well.</summary>
    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>Names that it had before; files that refer to them still read, lists leave them out.</summary>
    public IReadOnlyList<string> OldNames { get; init; } = [];

    /// <summary>Its name, then its aliases.</summary>
    public IEnumerable<string> Names => [Name, .. Aliases];

    /// <summary>The number of that key; null if it has none.</summary>
    public ShelfNumber? Find(string key) => Numbers.FirstOrDefault(n => n.Key == key);
}
