using PushSim.Scenarios.Notebook;

namespace PushSim.Scenarios.Studies;

/// <summary>All that a garage holds.</summary>
public sealed record GarageContents
{
    /// <summary>The folder.</summary>
    public required GarageFolder Folder { get; init; }

    /// <summary>What the garage is called.</summary>
    public required string Name { get; init; }

    /// <summary>Its robots.</summary>
    public required IReadOnlyList<GarageItem> Robots { get; init; }

    /// <summary>Its tyres, on a wheel or not.</summary>
    public required IReadOnlyList<GarageItem> Tyres { get; init; }

    /// <summary>Opponents that are known by a glance.</summary>
    public required IReadOnlyList<GarageItem> Rivals { get; init; }

    /// <summary>Its floors.</summary>
    public required IReadOnlyList<GarageItem> Floors { get; init; }

    /// <summary>Its notebook; null if there is none yet.</summary>
    public NotebookResult? Notebook { get; init; }

    /// <summary>What is wrong with garage.toml or the notebook, with its place.</summary>
    public required IReadOnlyList<Problem> Problems { get; init; }

    /// <summary>Everything, with the word for its kind.</summary>
    public IEnumerable<(string Kind, GarageItem Item)> All =>
        Robots.Select(i => ("robot", i)).Concat(Tyres.Select(i => ("tyre", i))).Concat(Rivals.Select(i => ("opponent", i))).Concat(Floors.Select(i => ("floor", i)));
}
