namespace PushSim.Files;

/// <summary>How a file is to be opened.</summary>
public sealed record OpenAsk
{
    /// <summary>Folder that it must lie in, all links followed; null: it may lie anywhere.</summary>
    public string? Root { get; init; }

    /// <summary>Whether a pipe or a device is read too, as far as <see cref="MostOfPipe"/>.</summary>
    public bool TakesPipes { get; init; }

    /// <summary>Bytes that are read of a pipe at most [B].</summary>
    public long MostOfPipe { get; init; } = 1 << 28;

    /// <summary>Ends the wait for a pipe.</summary>
    public CancellationToken Cancel { get; init; }
}
