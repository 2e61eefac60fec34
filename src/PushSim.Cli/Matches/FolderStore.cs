using System.Diagnostics;

namespace PushSim.Cli.Matches;

/// <summary>Journals of matches in an output folder.</summary>
/// <param name="folder">The folder.</param>
/// <param name="isShared">Whether other processes write parts into it, so that it is marked as ours already.</param>
internal sealed class FolderStore(OutputFolder folder, bool isShared) : IMatchStore
{
    private const int ReadBuffer = 1 << 14;

    public IEnumerable<string> Names => Directory.Exists(folder.Path) ? Directory.EnumerateFiles(folder.Path).Select(f => Path.GetFileName(f)) : [];

    /// <summary>Keeps others from adding to a journal.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>Ends it; null if somebody else adds to it.</returns>
    public IDisposable? Hold(string name)
    {
        if (!isShared)
        {
            // the journal comes long before the first file of the result: without a mark a killed run's folder would be nobody's
            folder.Claim();
        }

        return PartLock.Take(LockOf(name));
    }

    public Stream? Open(string name) => File.Exists(Of(name)) ? new FileStream(Of(name), FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, ReadBuffer, FileOptions.SequentialScan) : null;

    public Stream Append(string name, long length)
    {
        var file = new FileStream(Of(name), FileMode.OpenOrCreate, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
        file.SetLength(length);
        file.Seek(length, SeekOrigin.Begin);
        return new SyncedFile(file, () => file.Flush(flushToDisk: true), () => Stopwatch.GetElapsedTime(0).TotalSeconds);
    }

    public void Rename(string from, string to) => File.Move(Of(from), Of(to), overwrite: false);

    public void Remove(string name) => File.Delete(Of(name));

    public bool IsHeld(string name) => PartLock.IsTaken(LockOf(name));

    private string Of(string name) => Path.Combine(folder.Path, name);

    private string LockOf(string name) => Path.Combine(folder.Path, $"{OutputFolder.MarkName}.{name}.lock");
}
