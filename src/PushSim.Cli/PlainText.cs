namespace PushSim.Cli;

/// <summary>Text from files and arguments on its way to the terminal.</summary>
internal static class PlainText
{
    /// <summary>Control characters become '?': an escape sequence in a file name must not reach the terminal.</summary>
    public static string Of(string text) =>
        text.Any(char.IsControl) ? string.Concat(text.Select(c => char.IsControl(c) ? '?' : c)) : text;
}
