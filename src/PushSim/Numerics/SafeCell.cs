namespace PushSim.Cli.Shared;

/// <summary>A text for a CSV cell: no control characters, and nothing that a spreadsheet takes for a formula.</summary>
internal static class SafeCell
{
    // Also as wide letters, which spreadsheets of some languages take alike
    private const string Signs = "=+-@\uFF1D\uFF0B\uFF0D\uFF20";

    public static string Of(string text)
    {
        string plain = PlainText.Of(text);

        // what has no width or is a blank is dropped by some before they look
        ReadOnlySpan<char> seen = plain.AsSpan().TrimStart(" \u00A0\u3000\u200B\u200C\u200D\u2060\uFEFF");
        return seen.Length > 0 && Signs.Contains(seen[0], StringComparison.Ordinal) ? "'" + plain : plain;
    }
}
