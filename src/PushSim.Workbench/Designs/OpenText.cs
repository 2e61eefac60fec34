namespace PushSim.Workbench.Designs;

/// <summary>A file that was opened, and what its text is by now.</summary>
/// <param name="Path">Where it lies, links followed.</param>
/// <param name="Name">What messages call it.</param>
/// <param name="Saved">Its text as it is on the disk, without byte-order mark.</param>
/// <param name="HasMark">Whether it begins with a byte-order mark.</param>
/// <param name="Text">Its text with the changes.</param>
internal sealed record OpenText(string Path, string Name, string Saved, bool HasMark, string Text)
{
    /// <summary>Whether it differs from the disk.</summary>
    public bool IsChanged => Saved != Text;
}
