using PushSim.Files;

namespace PushSim.Cli.Shared;

/// <summary>A folder for a command's files, over <see cref="FreshFolder"/>: they appear all at once, at <see cref="Put"/>. A part of a campaign shares the folder with other processes and has a lock of its own.</summary>
internal sealed class OutputFolder : IDisposable
{
    // Parts that start at once wait until each has begun its file [s].
    private const double PatienceOfParts = 10.0;

    private readonly FreshFolder? _opened;
    private readonly HeldLock? _piece;

    private OutputFolder(string path, FreshFolder? opened, HeldLock? piece) => (Path, _opened, _piece) = (path, opened, piece);

    /// <summary>The folder, links followed.</summary>
    public string Path { get; }

    /// <summary>Forms in which pictures are written.</summary>
    public PictureFormat Formats { get; init; } = PictureFormat.Png;

    private FreshFolder Fresh => _opened ?? throw new InvalidOperationException("the folder is only looked into");

    /// <summary>From which source the files in it came when it was opened; empty if that is not known or there were none.</summary>
    public string Source => _opened?.Before?.Source ?? "";

    /// <summary>Names of files that are kept over results: finished matches.</summary>
    public static bool IsKept(string name) => name.StartsWith("part-", StringComparison.Ordinal);

    /// <summary>Opens a folder, made or not yet. Throws <see cref="IOException"/> if it is not ours and not forced, or if another command holds it too long.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="force">Whether it may be one that is not ours.</param>
    /// <param name="source">Tells the source of its files from others.</param>
    /// <param name="ask">Who asks.</param>
    /// <param name="piece">Which piece of the work shares the folder with others; null: all of it is this command's.</param>
    /// <param name="formats">Forms in which pictures are written.</param>
    public static OutputFolder Open(string path, bool force, string source, LockAsk ask, string? piece = null, PictureFormat formats = PictureFormat.Png)
    {
        HeldLock? held = piece is null ? null : FolderLock.Piece(path, piece, ask with { What = $"{piece} in {ask.What}" });
        try
        {
            LockAsk whole = piece is null ? ask : ask with { TellAfter = PatienceOfParts };
            FreshFolder opened = FreshFolder.Open(new FolderAsk(path, force, source, whole) { IsKept = IsKept });
            return new OutputFolder(opened.Path, opened, held) { Formats = formats };
        }
        catch
        {
            held?.Dispose();
            throw;
        }
    }

    /// <summary>A folder that is only looked into: nothing is made, nobody waited for.</summary>
    public static OutputFolder See(string path) => new(System.IO.Path.GetFullPath(path), null, null);

    /// <summary>Makes sure that files can be written, before there are any.</summary>
    public void Begin() => Fresh.Begin();

    /// <summary>Makes and marks the folder, for files that lie in it before there is a result.</summary>
    public void Claim() => Fresh.Claim();

    /// <summary>Lets other commands at the folder; a piece keeps its own lock.</summary>
    public void Share() => Fresh.Release();

    /// <summary>Writes a file of the result.</summary>
    /// <returns>The path that it will have.</returns>
    public string Write(string name, Action<Stream> content) => Fresh.Write(name, content);

    /// <summary>Writes a file that a person fills in: one that is filled in is never replaced, the new one gets another name.</summary>
    /// <returns>The path that it will have.</returns>
    public string WriteForm(string name, string text) => Fresh.Write(name, s => s.Write(Encoding.UTF8.GetBytes(text)), isForm: true);

    /// <summary>Draws and writes a picture in the forms that were asked for.</summary>
    public IReadOnlyList<string> WritePicture(string name, PlotSheet picture) => WritePicture(PictureFile.Draw(name, picture, Formats));

    /// <summary>Writes a picture that is drawn.</summary>
    public IReadOnlyList<string> WritePicture(IReadOnlyList<PictureFile> picture) => [.. picture.Select(f => Write(f.Name, stream => stream.Write(f.Bytes)))];

    /// <summary>Puts all files in place.</summary>
    /// <param name="files">Their paths.</param>
    /// <param name="isWhole">False for what an interrupted command has.</param>
    /// <returns>The paths of those that are there: none where an earlier whole result stays.</returns>
    public List<string> Put(List<string> files, bool isWhole = true) => Fresh.Commit(isWhole) ? files : [];

    /// <inheritdoc/>
    public void Dispose()
    {
        _opened?.Dispose();
        _piece?.Dispose();
    }
}
