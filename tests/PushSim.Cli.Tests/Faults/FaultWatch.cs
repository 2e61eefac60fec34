using System.Runtime.InteropServices;
using PushSim.Files;

namespace PushSim.Cli.Tests.Faults;

/// <summary>Lets one act go wrong.</summary>
/// <param name="kind">How.</param>
/// <param name="at">Which one, from 1; 0 counts only.</param>
/// <param name="place">Where the command works.</param>
internal sealed partial class FaultWatch(FaultKind kind, int at, FaultPlace place) : DiskWatch
{
    private bool _isOver;

    public int Count { get; private set; }

    public override void Before(DiskAct act, string path)
    {
        if (_isOver)
        {
            After(act);
            return;
        }

        if (++Count == at)
        {
            Happen(act, path);
        }
    }

    public override int Bytes(DiskAct act, string path, int count)
    {
        if (kind == FaultKind.Short && Count + 1 == at && !_isOver)
        {
            Count++;
            _isOver = true;
            return count / 2;
        }

        Before(act, path);
        return count;
    }

    private void After(DiskAct act)
    {
        if (kind == FaultKind.Killed || (kind == FaultKind.Full && act is DiskAct.Create or DiskAct.Write or DiskAct.MakeFolder or DiskAct.Append or DiskAct.Sync))
        {
            throw new IOException("no space left");
        }
    }

    private void Happen(DiskAct act, string path)
    {
        _isOver = true;

        // a command looks for a garage above its folder: nothing is put there, nor taken away
        if (kind is FaultKind.Link or FaultKind.Pipe && !RealPath.IsInside(place.Root, Path.GetFullPath(path)))
        {
            return;
        }

        switch (kind)
        {
            case FaultKind.Fails or FaultKind.Short:
                throw new IOException("the disk fails");
            case FaultKind.Killed or FaultKind.Full:
                After(act);
                break;
            case FaultKind.Link:
                Steal(path);
                File.CreateSymbolicLink(path, act is DiskAct.MakeFolder or DiskAct.MoveFolder or DiskAct.List or DiskAct.DeleteFolder ? place.PreciousFolder : place.Precious);
                break;
            case FaultKind.Pipe:
                Steal(path);
                Assert(MkFifo(path, 0x1B6) == 0);
                break;
            case FaultKind.User:
                place.Edit();
                break;
            default:
                Disk.Watch(null);
                LockAsk.Patience(0.0);
                place.Second();
                LockAsk.Patience(FaultCampaignTests.Patience);
                Disk.Watch(this);
                break;
        }
    }

    // what stood there is not lost: whoever puts something in its place takes it along
    private void Steal(string path)
    {
        string stolen = Path.Combine(place.Root, "stolen");
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        if (Directory.Exists(path) && new FileInfo(path).LinkTarget is null)
        {
            Directory.Move(path, stolen);
        }
        else if (Path.Exists(path) || new FileInfo(path).LinkTarget is not null)
        {
            File.Move(path, stolen);
        }
    }

    private static void Assert(bool isSo) => Xunit.Assert.True(isSo);

    [LibraryImport("libc", EntryPoint = "mkfifo", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int MkFifo(string path, uint mode);
}
