namespace PushSim.Simulation;

/// <summary>What is so of every manoeuvre of a kind: who asks what a kind means asks its row, and names no kind.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Family">What it is asked.</param>
public sealed record ManoeuvreTraits(ManoeuvreKind Kind, ManoeuvreFamily Family)
{
    // one row a kind, in the order of the kinds
    private static readonly ManoeuvreTraits[] s_all =
    [
        new(ManoeuvreKind.Launch, ManoeuvreFamily.Drive),
        new(ManoeuvreKind.Brake, ManoeuvreFamily.Stop),
        new(ManoeuvreKind.Reversal, ManoeuvreFamily.Stop),
        new(ManoeuvreKind.PullTest, ManoeuvreFamily.Pull),
        new(ManoeuvreKind.DragTest, ManoeuvreFamily.Pull) { IsDragged = true },
        new(ManoeuvreKind.Spot, ManoeuvreFamily.Turn) { IsOnTheSpot = true },
        new(ManoeuvreKind.Arc, ManoeuvreFamily.Turn),
        new(ManoeuvreKind.Hold, ManoeuvreFamily.Hold),
        new(ManoeuvreKind.Timeline, ManoeuvreFamily.Drive),
        new(ManoeuvreKind.Shove, ManoeuvreFamily.Push) { NeedsOpponent = true },
        new(ManoeuvreKind.WallPush, ManoeuvreFamily.Push) { NeedsWall = true },
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
