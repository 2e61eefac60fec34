namespace PushSim.Scenarios.Sources;

/// <summary>Limits of reading; the defaults suit files from strangers.</summary>
public sealed record ReadOptions
{
    /// <summary>What stands for the file of a value that is set anew by <see cref="Set"/>.</summary>
    public const string CommandLine = "command line";

    /// <summary>Largest file that is read [byte].</summary>
    public int MaxBytes { get; init; } = 1 << 20;

    /// <summary>Deepest nesting of arrays and tables [1].</summary>
    public int MaxDepth { get; init; } = 16;

    /// <summary>Most keys in one file [1].</summary>
    public int MaxKeys { get; init; } = 10_000;

    /// <summary>Longest text in a file [character].</summary>
    public int MaxText { get; init; } = 4096;

    /// <summary>
    /// Values that stand in place of those of the files, by path: of the scenario ("manoeuvre.turn"), of its robot ("tyre.soft.body_damping"; "wheel.*.tyre" for
    /// every wheel) or of its opponent ("opponent.chassis.mass"), written as in a file but without quotes.
    /// </summary>
    public IReadOnlyList<(string Path, string Value)> Set { get; init; } = [];

    /// <summary>Name of the [[variant]] of the scenario whose values are set anew too; null: the file as it is.</summary>
    public string? Variant { get; init; }

    /// <summary>Robot file in the place of the one that the scenario names; what the scenario sets anew in its own robot is left out then. Null: the scenario's own.</summary>
    public string? Robot { get; init; }

    /// <summary>
    /// Robot file of the opponent, in the place of the scenario's own; what the scenario sets anew in its own opponent is left out then. A robot file can then be read like a
    /// scenario: it meets this opponent. Null: the scenario's own, if it has one.
    /// </summary>
    public string? Opponent { get; init; }

    /// <summary>Scenario file with floor, shove and driving for two robot files; needs <see cref="Opponent"/>. Null: a plain shove.</summary>
    public string? Scene { get; init; }

    /// <summary>True lets a scenario name a robot file outside its own folder.</summary>
    public bool AllowOutside { get; init; }

    /// <summary>Texts that stand in the place of what is in the files, by real path, links followed: an editor's that is not saved. Null or missing: the file's own.</summary>
    public IReadOnlyDictionary<string, string>? Texts { get; init; }

    /// <summary>Folder of the garage that names come from; null: the nearest one upwards with a garage.toml, if any.</summary>
    public string? Garage { get; init; }

    /// <summary>Name of a material of the shelf that every tyre of the (first) robot is made of instead of its own, sizes kept; null: their own.</summary>
    public string? TyreMaterial { get; init; }

    /// <summary>A tyre put on the (first) robot; null: its own ones.</summary>
    public TyreChange? Tyre { get; init; }
}
