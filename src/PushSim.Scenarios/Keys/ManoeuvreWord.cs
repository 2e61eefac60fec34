namespace PushSim.Scenarios.Keys;

/// <summary>How a file says one kind of manoeuvre: each is a short way to write a timeline.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Word">What the key "kind" says.</param>
/// <param name="Keys">Which of <see cref="Optional"/> it uses.</param>
internal sealed record ManoeuvreWord(ManoeuvreKind Kind, string Word, string[] Keys)
{
    /// <summary>A single command in short, in place of points.</summary>
    public static readonly string[] ShortKeys = ["throttle", "turn", "start", "ramp"];

    /// <summary>Keys that only some kinds use.</summary>
    public static readonly string[] Optional = [.. ShortKeys, "reverse_at", "points"];

    /// <summary>One row a kind, in the order of the kinds.</summary>
    public static readonly ManoeuvreWord[] All =
    [
        new(ManoeuvreKind.Launch, "launch", ShortKeys),
        new(ManoeuvreKind.Brake, "brake", [.. ShortKeys, "reverse_at"]) { Second = c => c with { Throttle = 0.0, Turn = 0.0 } },
        new(ManoeuvreKind.Reversal, "reversal", [.. ShortKeys, "reverse_at"]) { Second = c => c with { Throttle = -c.Throttle } },
        new(ManoeuvreKind.PullTest, "pull", ShortKeys),
        new(ManoeuvreKind.DragTest, "drag", []),
        new(ManoeuvreKind.Spot, "spot", ["turn", "start", "ramp"]) { Throttle = 0.0 },
        new(ManoeuvreKind.Arc, "arc", ShortKeys) { Throttle = 0.5 },
        new(ManoeuvreKind.Hold, "hold", []),
        new(ManoeuvreKind.Timeline, "timeline", ["points"]),
        new(ManoeuvreKind.Shove, "shove", [.. ShortKeys, "points"]),
        new(ManoeuvreKind.WallPush, "wall", [.. ShortKeys, "points"]),
    ];

    /// <summary>Throttle of a command that says none [1].</summary>
    public double Throttle { get; init; } = 1.0;

    /// <summary>The second command, from the first; null if there is none.</summary>
    public Func<CommandPoint, CommandPoint>? Second { get; init; }

    /// <summary>What is so of the kind.</summary>
    public ManoeuvreTraits Traits => ManoeuvreTraits.Of(Kind);

    /// <summary>Names of the kinds of which something is so, as "spot turn or arc".</summary>
    public static string Names(Func<ManoeuvreWord, bool> isSo)
    {
        string[] names = [.. All.Where(isSo).Select(w => w.Traits.Name)];
        return names.Length < 2 ? string.Concat(names) : $"{string.Join(", ", names[..^1])} or {names[^1]}";
    }

    /// <summary>Whether the kind uses the key.</summary>
    public bool Takes(string key) => Keys.Contains(key);

    /// <summary>The row of a kind.</summary>
    public static ManoeuvreWord Of(ManoeuvreKind kind) => All[(int)kind];
}
