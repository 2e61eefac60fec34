namespace PushSim.Simulation;

/// <summary>What is so of every manoeuvre of a kind: who asks what a kind means asks its row, and names no kind.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Name">Its name in sentences and lists.</param>
/// <param name="Family">What it is asked.</param>
public sealed record ManoeuvreTraits(ManoeuvreKind Kind, string Name, ManoeuvreFamily Family)
{
    // one row a kind, in the order of the kinds
    private static readonly ManoeuvreTraits[] s_all =
    [
        new(ManoeuvreKind.Launch, "launch", ManoeuvreFamily.Drive),
        new(ManoeuvreKind.Brake, "brake", ManoeuvreFamily.Stop),
        new(ManoeuvreKind.Reversal, "reversal", ManoeuvreFamily.Stop),
        new(ManoeuvreKind.PullTest, "pull test", ManoeuvreFamily.Pull),
        new(ManoeuvreKind.DragTest, "drag test", ManoeuvreFamily.Pull) { IsDragged = true },
        new(ManoeuvreKind.Spot, "spot turn", ManoeuvreFamily.Turn) { IsOnTheSpot = true },
        new(ManoeuvreKind.Arc, "arc", ManoeuvreFamily.Turn),
        new(ManoeuvreKind.Hold, "hold", ManoeuvreFamily.Hold),
        new(ManoeuvreKind.Timeline, "timeline", ManoeuvreFamily.Drive),
        new(ManoeuvreKind.Shove, "shove", ManoeuvreFamily.Push) { NeedsOpponent = true },
        new(ManoeuvreKind.WallPush, "wall push", ManoeuvreFamily.Push) { NeedsWall = true },
    ];

    /// <summary>Whether the tether's anchor drags the robot, which is commanded nothing.</summary>
    public bool IsDragged { get; init; }

    /// <summary>Whether the robot is to stay where it is while it turns.</summary>
    public bool IsOnTheSpot { get; init; }

    /// <summary>Whether a second robot takes part.</summary>
    public bool NeedsOpponent { get; init; }

    /// <summary>Whether there must be a wall.</summary>
    public bool NeedsWall { get; init; }

    /// <summary>Whether there must be a tether.</summary>
    public bool NeedsTether => Family == ManoeuvreFamily.Pull;

    /// <summary>The row of a kind.</summary>
    public static ManoeuvreTraits Of(ManoeuvreKind kind) => s_all[(int)kind];
}
