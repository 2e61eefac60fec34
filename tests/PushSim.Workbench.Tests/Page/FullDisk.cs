using PushSim.Files;

namespace PushSim.Workbench.Tests.Page;

/// <summary>A disk that takes no more bytes while it is full, as the system tells it (ENOSPC).</summary>
internal sealed class FullDisk : DiskWatch
{
    private int _refused;

    public bool IsFull { get; set; }

    /// <summary>Writes that were refused [1].</summary>
    public int Refused => _refused;

    public override void Before(DiskAct act, string path)
    {
        if (IsFull && act == DiskAct.Write)
        {
            Interlocked.Increment(ref _refused);
            throw new IOException($"No space left on device : '{path}': the disk is full");
        }
    }
}
