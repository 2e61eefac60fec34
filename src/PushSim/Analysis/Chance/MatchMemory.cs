namespace PushSim.Analysis.Chance;

/// <summary>Keeps journals in memory, for a program that has no folder.</summary>
public sealed class MatchMemory : IMatchStore
{
    private readonly Dictionary<string, MemoryStream> _texts = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public IEnumerable<string> Names => _texts.Keys;

    /// <inheritdoc/>
    public Stream? Open(string name) => _texts.TryGetValue(name, out MemoryStream? text) ? new MemoryStream(text.ToArray(), writable: false) : null;

    /// <inheritdoc/>
    public Stream Append(string name, long length)
    {
        var text = new MemoryStream();
        if (_texts.TryGetValue(name, out MemoryStream? old))
        {
            text.Write(old.ToArray().AsSpan(0, (int)length));
        }

        return _texts[name] = text;
    }

    /// <inheritdoc/>
    public void Rename(string from, string to)
    {
        _texts.Add(to, _texts[from]);
        _texts.Remove(from);
    }

    /// <inheritdoc/>
    public void Remove(string name) => _texts.Remove(name);

    /// <inheritdoc/>
    public bool IsHeld(string name) => false;
}
