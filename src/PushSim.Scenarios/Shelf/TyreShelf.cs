namespace PushSim.Scenarios.Shelf;

/// <summary>The generic tyre materials that come with the program, from tyres.toml beside this file.</summary>
public static class TyreShelf
{
    /// <summary>Every material, in the order of the shelf.</summary>
    public static IReadOnlyList<ShelfPart> All => PartShelf.Tyres.Parts;

    /// <summary>The material of that name; null if there is none.</summary>
    public static ShelfPart? Find(string name) => PartShelf.Tyres.Find(name);

    /// <summary>The words nearest to a name that is not there, and all names.</summary>
    internal static string Advice(string name) => PartShelf.Tyres.Advice(name);
}
