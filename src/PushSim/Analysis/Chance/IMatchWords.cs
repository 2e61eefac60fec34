using PushSim.Binding;

namespace PushSim.Analysis.Chance;

/// <summary>Keys and words of kept matches, which the engine does not form.</summary>
public interface IMatchWords
{
    /// <summary>Key of what bound a robot.</summary>
    string Key(BindingKind kind);

    /// <summary>The kind of a key; null if there is none.</summary>
    BindingKind? Parse(string key);

    /// <summary>Why a match failed; empty if it did not.</summary>
    string Cause(MatchEnd end);
}
