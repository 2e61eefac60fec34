namespace PushSim.Files;

/// <summary>Sees every act on the disk before it happens; tests make acts fail here, or do what another program would do in between.</summary>
public abstract class DiskWatch
{
    /// <summary>An act is due; throws to let it fail.</summary>
    /// <param name="act">The act.</param>
    /// <param name="path">On which path.</param>
    public abstract void Before(DiskAct act, string path);

    /// <summary>Bytes are due; gives how many of them pass before the act fails, all of them to let it pass.</summary>
    /// <param name="act"><see cref="DiskAct.Read"/> or <see cref="DiskAct.Write"/>.</param>
    /// <param name="path">On which path.</param>
    /// <param name="count">Bytes that are due [1].</param>
    public virtual int Bytes(DiskAct act, string path, int count)
    {
        Before(act, path);
        return count;
    }
}
