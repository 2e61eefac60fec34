namespace PushSim.Analysis.Chance;

/// <summary>Where journals are kept by name: a folder, or memory.</summary>
public interface IMatchStore
{
    /// <summary>All names that there are.</summary>
    IEnumerable<string> Names { get; }

    /// <summary>Opens what is kept under a name; null if nothing is.</summary>
    Stream? Open(string name);

    /// <summary>Opens it to be added to; made if it is not there. What is written reaches the disk at intervals and when it is closed.</summary>
    /// <param name="name">The name.</param>
    /// <param name="length">Bytes that stay; what comes after them is cut off [1].</param>
    Stream Append(string name, long length);

    /// <summary>Gives what is kept another name; nothing may be kept under that.</summary>
    void Rename(string from, string to);

    /// <summary>Removes what was begun under a name and never finished.</summary>
    void Remove(string name);

    /// <summary>Whether somebody is adding to what is kept under a name.</summary>
    bool IsHeld(string name);
}
