using PushSim.Contact;

namespace PushSim.Simulation;

/// <summary>A contact that may come about in a scene.</summary>
internal sealed class SceneContact<T>
    where T : struct, IReal<T>
{
    /// <summary>Index of the one robot.</summary>
    public required int First { get; init; }

    /// <summary>Index of the other robot; -1 for a wall.</summary>
    public required int Second { get; init; }

    /// <summary>The contact's equations.</summary>
    public required ContactPair<T> Pair { get; init; }

    /// <summary>Whether the other body is a wall.</summary>
    public bool IsWall => Second < 0;

    /// <summary>Where the wall stands.</summary>
    public BodyPose<T> WallPose;

    /// <summary>Where the contact's bristles begin among the implicit states.</summary>
    public int FirstBristle { get; set; }
}
