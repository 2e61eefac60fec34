namespace PushSim.Cli.Run;

/// <summary>Files that need nothing of the closer look: they are made on other threads while it goes on.</summary>
internal sealed class EarlyFiles
{
    private readonly Task<byte[]> _history;
    private readonly Task<IReadOnlyList<PictureFile>>? _picture;

    /// <summary>Begins to make them.</summary>
    /// <param name="result">The run before anybody looks closer, with at least two samples.</param>
    /// <param name="output">What is asked.</param>
    /// <param name="isCsvWhole">Whether every sample stands in the history.</param>
    /// <param name="hasPicture">Whether the picture is known already.</param>
    /// <param name="cancel">Stops it.</param>
    public EarlyFiles(RunResult result, OutputRequest output, bool isCsvWhole, bool hasPicture, CancellationToken cancel)
    {
        _picture = hasPicture && !output.NoPlots ? Task.Run(() => PictureFile.Draw("plot", output.Drawn(RunPlot.Of(result)), output.Formats), cancel) : null;
        _history = Task.Run(() => PictureFile.Written(stream => HistoryCsv.Write(result, stream, isCsvWhole, cancel)), cancel);
    }

    /// <summary>The time history.</summary>
    public byte[] History => _history.GetAwaiter().GetResult();

    /// <summary>The picture; null if it was not known.</summary>
    public IReadOnlyList<PictureFile>? Picture => _picture?.GetAwaiter().GetResult();
}
