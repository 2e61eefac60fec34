namespace PushSim.Scenarios.Studies;

/// <summary>One of the designs that are compared: a file and how it is read.</summary>
/// <param name="Label">What sentences and tables call it.</param>
/// <param name="File">The file.</param>
/// <param name="Options">How it is read.</param>
public sealed record DesignSide(string Label, string File, ReadOptions Options)
{
    /// <summary>Whether it is the file as it stands, which only variants of it or other robots in it are compared with.</summary>
    public bool IsPlain { get; init; }
}
