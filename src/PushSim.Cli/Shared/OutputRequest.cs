namespace PushSim.Cli.Shared;

/// <summary>What a command is to print and to write.</summary>
/// <param name="Out">Folder for files; null: one in pushsim-out.</param>
/// <param name="Force">Whether the folder may be one that is not ours.</param>
/// <param name="Json">Whether one JSON document is printed; then there are files only in a named folder.</param>
/// <param name="Quiet">Whether only the verdict is printed.</param>
/// <param name="NoPlots">Whether no pictures are written.</param>
/// <param name="Report">Whether a page is written.</param>
internal sealed record OutputRequest(string? Out, bool Force, bool Json, bool Quiet, bool NoPlots, bool Report)
{
    /// <summary>Whether no progress is shown.</summary>
    public bool HasNoProgress => Quiet || Json;

    /// <summary>Opens the folder for files; null where there are none.</summary>
    /// <param name="name">Its name in pushsim-out where none is given.</param>
    /// <param name="open">Opens a path, by force or not; null: as a folder of one process.</param>
    public OutputFolder? Open(string name, Func<string, bool, OutputFolder>? open = null) =>
        Json && Out is null ? null : (open ?? OutputFolder.Open)(Out ?? Path.Combine("pushsim-out", name), Force);

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
}
