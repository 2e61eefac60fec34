namespace PushSim.Analysis.Chance;

/// <summary>Keeps finished matches in memory, for a program that has no folder.</summary>
public sealed class MatchMemory : IMatchStore
{
    private readonly Dictionary<string, StringWriter> _texts = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public IEnumerable<string> Names => _texts.Keys;

    /// <inheritdoc/>
    public TextReader? Open(string name) => _texts.TryGetValue(name, out StringWriter? text) ? new StringReader(text.ToString()) : null;

    /// <inheritdoc/>
    public TextWriter Begin(string name, Action<TextWriter> start)
    {
        var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        start(text);
        return _texts[name] = text;
    }

    /// <inheritdoc/>
    public void Remove(string name) => _texts.Remove(name);
}
