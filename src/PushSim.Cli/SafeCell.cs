namespace PushSim.Cli;

/// <summary>A text for a CSV cell: no control characters, and nothing that a spreadsheet takes for a formula.</summary>
internal static class SafeCell
{
    public static string Of(string text)
    {
        string plain = PlainText.Of(text);
        return plain.Length > 0 && "=+-@".Contains(plain[0], StringComparison.Ordinal) ? "'" + plain : plain;
    }
}
