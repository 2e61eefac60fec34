namespace PushSim.Files;

/// <summary>Where a cell's bytes come from.</summary>
public interface ILineSource
{
    /// <summary>Reads until it ends; on a thread of its own.</summary>
    /// <param name="got">Given what came.</param>
    /// <param name="cancel">Ends it.</param>
    void Read(Action<SourceNews> got, CancellationToken cancel);
}
