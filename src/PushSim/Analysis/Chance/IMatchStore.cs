namespace PushSim.Analysis.Chance;

/// <summary>Where finished matches are kept by name: a folder, or memory.</summary>
public interface IMatchStore
{
    /// <summary>All names that there are.</summary>
    IEnumerable<string> Names { get; }

    /// <summary>Opens what is kept under a name; null if nothing is.</summary>
    TextReader? Open(string name);

    /// <summary>Begins a text anew; what was kept under the name stays until the start is whole.</summary>
    /// <param name="name">The name.</param>
    /// <param name="start">Writes its start; its lines end with one line feed.</param>
    /// <returns>Adds to it, row by row as they come.</returns>
    TextWriter Begin(string name, Action<TextWriter> start);

    /// <summary>Removes what is kept under a name.</summary>
    void Remove(string name);
}
