using System.Diagnostics;
using PushSim.Files;

namespace PushSim.Cli.Matches;

/// <summary>Journals of matches in an output folder.</summary>
/// <param name="folder">The folder.</param>
/// <param name="isShared">Whether other processes write parts into it.</param>
internal sealed class FolderStore(OutputFolder folder, bool isShared) : IMatchStore
{
    public IEnumerable<string> Names => Disk.Look(folder.Path) == PathKind.Folder ? Disk.List(folder.Path) : [];

    /// <summary>Name of a journal's lock.</summary>
    /// <param name="name">Name of the journal.</param>
    public static string PieceOf(string name) => Path.GetFileNameWithoutExtension(name);

    public Stream? Open(string name) => Disk.OpenOwn(Of(name));

    public Stream Append(string name, long length)
    {
        // the journal comes long before the first file of the result: without a mark a killed run's folder would be nobody's
        folder.Claim();
        WatchedStream file = Disk.Look(Of(name)) == PathKind.None ? Disk.Create(Of(name)) : Disk.Append(Of(name), length);

        // from here on rows are only added, also while another command puts a result beside them
        if (isShared)
        {
            folder.Share();
        }

        return new SyncedFile(file, file.Sync, () => Stopwatch.GetElapsedTime(0).TotalSeconds);
    }

    public void Rename(string from, string to) => Disk.Move(Of(from), Of(to));

    public void Remove(string name) => Disk.Delete(Of(name));

    public bool IsHeld(string name) => FolderLock.Holder(folder.Path, PieceOf(name)) is not null;

    private string Of(string name) => Path.Combine(folder.Path, name);
}
