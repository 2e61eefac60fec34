namespace PushSim.Cli.Matches;

/// <summary>Finished matches in an output folder.</summary>
/// <param name="folder">The folder.</param>
/// <param name="isShared">Whether other processes write parts into it, so that it is marked as ours already.</param>
internal sealed class FolderStore(OutputFolder folder, bool isShared) : IMatchStore
{
    // Ending of the file that is written beside and then renamed.
    private const string Beside = ".new";

    public IEnumerable<string> Names => Directory.EnumerateFiles(folder.Path).Select(f => Path.GetFileName(f));

    public TextReader? Open(string name) => File.Exists(Of(name)) ? new StreamReader(Of(name)) : null;

    public TextWriter Begin(string name, Action<TextWriter> start)
    {
        string path = Of(name);
        if (!isShared)
        {
            // the journal comes long before the first file of the result: without a mark a killed run's folder would be nobody's
            folder.Claim(name + Beside);
        }

        using (StreamWriter writer = Writer(path + Beside, append: false))
        {
            start(writer);
        }

        File.Move(path + Beside, path, overwrite: true);
        StreamWriter journal = Writer(path, append: true);
        journal.AutoFlush = true;
        return journal;
    }

    public void Remove(string name) => File.Delete(Of(name));

    private static StreamWriter Writer(string path, bool append) => new(path, append, new UTF8Encoding(false)) { NewLine = "\n" };

    private string Of(string name) => Path.Combine(folder.Path, name);
}
