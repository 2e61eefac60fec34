
namespace PushSim.Scenarios.Keys;

/// <summary>How a file says one kind of manoeuvre: each is a short way to write a timeline.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Word">What the key "kind" says.</param>
/// <param name="Name">Its name in a complaint.</param>
/// <param name="Keys">Which of <see cref="Optional"/> it uses.</param>
internal sealed record ManoeuvreWord(ManoeuvreKind Kind, string Word, string Name, string[] Keys)
{
    /// <summary>A single command in short, in place of points.</summary>
    public static readonly string[] ShortKeys = ["throttle", "turn", "start", "ramp"];

    /// <summary>Keys that only some kinds use.</summary>
    public static readonly string[] Optional = [.. ShortKeys, "reverse_at", "points"];

    /// <summary>One row a kind, in the order of the kinds.</summary>
    public static readonly ManoeuvreWord[] All =
    [
        new(ManoeuvreKind.Launch, "launch", "launch", ShortKeys),
        new(ManoeuvreKind.Brake, "brake", "brake", [.. ShortKeys, "reverse_at"]) { Second = c => c with { Throttle = 0.0, Turn = 0.0 } },
        new(ManoeuvreKind.Reversal, "reversal", "reversal", [.. ShortKeys, "reverse_at"]) { Second = c => c with { Throttle = -c.Throttle } },
        new(ManoeuvreKind.PullTest, "pull", "pull test", ShortKeys),
        new(ManoeuvreKind.DragTest, "drag", "drag test", []),
        new(ManoeuvreKind.Spot, "spot", "spot turn", ["turn", "start", "ramp"]) { Throttle = _ => 0.0 },
        new(ManoeuvreKind.Arc, "arc", "arc", ShortKeys) { Throttle = _ => 0.5 },
        new(ManoeuvreKind.Hold, "hold", "hold", []),
        new(ManoeuvreKind.Timeline, "timeline", "timeline", ["points"]),
        new(ManoeuvreKind.Shove, "shove", "shove", [.. ShortKeys, "points"]),
        new(ManoeuvreKind.WallPush, "wall", "wall push", [.. ShortKeys, "points"]),
    ];

    /// <summary>Throttle of a command that says none, from its turn command [1].</summary>
    public Func<double, double> Throttle { get; init; } = _ => 1.0;

    /// <summary>The second command, from the first; null if there is none.</summary>
    public Func<CommandPoint, CommandPoint>? Second { get; init; }

    /// <summary>What is so of the kind.</summary>
    public ManoeuvreTraits Traits => ManoeuvreTraits.Of(Kind);

    /// <summary>Whether the kind uses the key.</summary>
    public bool Takes(string key) => Keys.Contains(key);

    /// <summary>The row of a kind.</summary>
    public static ManoeuvreWord Of(ManoeuvreKind kind) => All[(int)kind];
}
