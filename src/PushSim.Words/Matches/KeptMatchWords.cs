using PushSim.Analysis.Chance;

namespace PushSim.Words.Matches;

/// <summary>Keys and words of kept matches.</summary>
public sealed class KeptMatchWords : IMatchWords
{
    private KeptMatchWords()
    {
    }

    /// <summary>The one of them.</summary>
    public static KeptMatchWords Instance { get; } = new();

    /// <inheritdoc/>
    public string Key(BindingKind kind) => BindingTable.Key(kind);

    /// <inheritdoc/>
    public BindingKind? Parse(string key) => BindingTable.Parse(key);

    /// <inheritdoc/>
    public string Cause(MatchEnd end) => MatchWords.Cause(end);
}
