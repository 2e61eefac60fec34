using System.Security.Cryptography;
using PushSim.Files;

namespace PushSim.Cli.Shared;

/// <summary>What a command is to print and to write.</summary>
/// <param name="Out">Folder for files; null: one in pushsim-out.</param>
/// <param name="Force">Whether the folder may be one that is not ours.</param>
/// <param name="Json">Whether one JSON document is printed; then there are files only in a named folder.</param>
/// <param name="Quiet">Whether only the verdict is printed.</param>
/// <param name="NoPlots">Whether no pictures are written.</param>
/// <param name="Report">Whether a page is written.</param>
/// <param name="Details">Whether all tables are printed, not the answer alone.</param>
/// <param name="Line">The command line, by which others know who holds a folder.</param>
internal sealed record OutputRequest(string? Out, bool Force, bool Json, bool Quiet, bool NoPlots, bool Report, bool Details, string Line)
{
    private const string Home = "pushsim-out";
    private const int SourceDigits = 16;

    /// <summary>Forms in which pictures are written.</summary>
    public PictureFormat Formats { get; init; } = PictureFormat.Png;

    /// <summary>The garage that the command line names; null: none, and the nearest is taken.</summary>
    public string? Garage { get; init; }

    /// <summary>Whether no progress is shown.</summary>
    public bool HasNoProgress => Quiet || Json;

    /// <summary>A picture as it was asked for: the few charts that answer the question, or all.</summary>
    public PlotSheet Drawn(PlotSheet all) => Details ? all : all.Short;

    /// <summary>Refuses a folder that is not ours, for a command that computes before it can open it: no work for a result that has nowhere to go.</summary>
    public void Expect(OutputAsk ask)
    {
        if (!Json || Out is not null)
        {
            FreshFolder.Expect(Place(ask, 1).Path, Force, OutputFolder.IsKept);
        }
    }

    /// <summary>Opens the folder for files, before anything is computed; null where there are none.</summary>
    public OutputFolder? Open(OutputAsk ask)
    {
        if (Json && Out is null)
        {
            return null;
        }

        for (int n = 1; ; n++)
        {
            (string path, string source, n) = Place(ask, n);
            OutputFolder folder = Open(path, ask, source);

            // another source may have come in between
            if (Out is not null || folder.Source.Length == 0 || folder.Source == source)
            {
                return folder;
            }

            folder.Dispose();
        }
    }

    /// <summary>Prints the result in the form that was asked for.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="json">Makes the document.</param>
    /// <param name="verdict">The verdict.</param>
    /// <param name="text">Writes all of it as text.</param>
    public void Print(TextWriter output, Func<string> json, string verdict, Action text)
    {
        if (!Json && !Quiet)
        {
            text();
            return;
        }

        output.WriteLine(Json ? json() : verdict);
    }

    // Without a given folder it lies in pushsim-out, and one of that name that belongs to another source stays: NAME-2 is taken.
    private (string Path, string Source, int Number) Place(OutputAsk ask, int first)
    {
        if (Out is not null)
        {
            return (Out, Source(Out, ask), first);
        }

        string name = ask.Name is "" or "." or ".." ? ask.Kind : ask.Name;
        for (int n = first; ; n++)
        {
            string path = Path.Combine(Home, n == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}-{n}"));
            string source = Source(path, ask);
            if (Disk.Look(path) != PathKind.Folder || OutputMark.Read(path) is not { Source.Length: > 0 } mark || mark.Source == source)
            {
                return (path, source, n);
            }
        }
    }

    private OutputFolder Open(string path, OutputAsk ask, string source)
    {
        if (ask.IsSeen)
        {
            return OutputFolder.See(path);
        }

        var asked = new LockAsk(path, Line, message => ask.Error.WriteLine("pushsim: " + PlainText.Of(message)), ask.Cancel);
        OutputFolder folder = OutputFolder.Open(path, Force, source, asked, ask.Piece, Formats);
        try
        {
            if (ask.Piece is null)
            {
                folder.Begin();
            }

            return folder;
        }
        catch
        {
            folder.Dispose();
            throw;
        }
    }

    // By the way from the folder to the files, so that both may move together, and as a hash, which tells nobody where they lie.
    private static string Source(string path, OutputAsk ask)
    {
        string home = RealPath.Of(Path.GetDirectoryName(Path.GetFullPath(path)) ?? path);
        IEnumerable<string> ways = ask.Sources.Select(s => RealPath.Of(s) is var real && Disk.Look(real) == PathKind.File ? Path.GetRelativePath(home, real) : s);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', ways.Prepend(ask.Kind)))))[..SourceDigits];
    }
}
