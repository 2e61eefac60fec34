namespace PushSim.Files;

/// <summary>A file that was opened, or why it was not.</summary>
/// <param name="State">What came of it.</param>
/// <param name="Stream">Its bytes; null unless it is open.</param>
/// <param name="RealPath">Where it lies, all links followed; empty unless it was opened.</param>
public sealed record OpenedFile(OpenState State, Stream? Stream, string RealPath) : IDisposable
{
    /// <inheritdoc/>
    public void Dispose() => Stream?.Dispose();
}
