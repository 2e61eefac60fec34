namespace PushSim.Words.Terms;

/// <summary>Sentences with numbers in them.</summary>
internal static class Phrase
{
    /// <summary>The text in invariant writing.</summary>
    public static string Text(FormattableString text) => FormattableString.Invariant(text);

    /// <summary>A force as gram-force, whole.</summary>
    /// <param name="newton">The force [N].</param>
    public static string Gram(double newton) => Text($"{newton / 9.80665 * 1000.0:0}");

    /// <summary>The text with a capital letter.</summary>
    public static string Capital(string text) => text.Length == 0 ? "" : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>"1 pull", "2 pulls".</summary>
    /// <param name="count">How many [1].</param>
    /// <param name="one">The word for one.</param>
    public static string Plural(int count, string one) => count == 1 ? $"1 {one}" : $"{count} {one}s";
}
