namespace PushSim.Words.Answers;

/// <summary>A key with its unit as words for an axis: those of the catalogue of answers, "pull_plateau_n" is "Pull, steady [N]"; of another key its own, "win_share" is "Win share [1]".</summary>
public static class KeyWords
{
    // longer endings first
    private static readonly (string Ending, string Unit)[] Units =
    [
        ("_m_per_s", "m/s"), ("_rad_per_s", "rad/s"), ("_n_m", "N m"), ("_a_s", "A s"), ("_degc", "°C"), ("_mm3", "mm³"), ("_hz", "Hz"), ("_ms", "ms"), ("_n", "N"), ("_m", "m"), ("_s", "s"), ("_a", "A"), ("_v", "V"), ("_j", "J"),
        ("_rad", "rad"),
    ];

    /// <summary>The unit of a key; empty for a pure number.</summary>
    /// <param name="key">Not empty.</param>
    public static string UnitOf(string key) => Array.Find(Units, u => key.EndsWith(u.Ending, StringComparison.Ordinal)).Unit ?? "";

    /// <summary>The words of a key; without a unit that is known it is a pure number, [1].</summary>
    /// <param name="key">Not empty.</param>
    public static string Of(string key)
    {
        (string ending, string unit) = Array.Find(Units, u => key.EndsWith(u.Ending, StringComparison.Ordinal));
        string words = AnswerCatalogue.Named(key)?.Words ?? (ending is null ? key : key[..^ending.Length]).Replace('_', ' ').Replace(".", ", ", StringComparison.Ordinal);
        return $"{char.ToUpperInvariant(words[0])}{words[1..]} [{unit ?? "1"}]";
    }
}
