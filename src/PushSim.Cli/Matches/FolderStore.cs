using PushSim.Files;

namespace PushSim.Cli.Matches;

/// <summary>Finished matches in an output folder.</summary>
/// <param name="folder">The folder.</param>
/// <param name="isShared">Whether other processes write parts into it.</param>
internal sealed class FolderStore(OutputFolder folder, bool isShared) : IMatchStore
{
    public IEnumerable<string> Names => Disk.Look(folder.Path) == FileKind.Folder ? Disk.List(folder.Path) : [];

    public TextReader? Open(string name) => Disk.OpenOwn(Of(name)) is WatchedStream file ? new StreamReader(file) : null;

    public TextWriter Begin(string name, Action<TextWriter> start)
    {
        // the journal comes long before the first file of the result: without a mark a killed run's folder would be nobody's
        folder.Claim();
        WriteGate.Replace(Of(name), stream =>
        {
            using StreamWriter writer = Writer(stream);
            start(writer);
        });
        StreamWriter journal = Writer(WriteGate.Append(Of(name)), leaveOpen: false);
        journal.AutoFlush = true;

        // from here on rows are only added, also while another command puts a result beside them
        if (isShared)
        {
            folder.Share();
        }

        return journal;
    }

    public void Remove(string name) => Disk.Delete(Of(name));

    private static StreamWriter Writer(Stream stream, bool leaveOpen = true) => new(stream, new UTF8Encoding(false), leaveOpen: leaveOpen) { NewLine = "\n" };

    private string Of(string name) => Path.Combine(folder.Path, name);
}
