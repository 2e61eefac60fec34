using System.Text;

namespace PushSim.Numerics;

/// <summary>A text for a CSV cell: no control characters, and nothing that a spreadsheet takes for a formula.</summary>
public static class SafeCell
{
    // Also as wide letters, which spreadsheets of some languages take alike
    private const string Signs = "=+-@\uFF1D\uFF0B\uFF0D\uFF20";

    /// <summary>The text, with an apostrophe before what could be a formula.</summary>
    public static string Of(string text)
    {
        string plain = Plain(text);

        // what has no width or is a blank is dropped by some before they look
        ReadOnlySpan<char> seen = plain.AsSpan().TrimStart(" \u00A0\u3000\u200B\u200C\u200D\u2060\uFEFF");
        return seen.Length > 0 && Signs.Contains(seen[0], StringComparison.Ordinal) ? "'" + plain : plain;
    }

    /// <summary>Control characters become '?': an escape sequence in a file name must not reach the terminal. So do marks that turn the reading direction, breaks of lines, and half characters.</summary>
    public static string Plain(string text)
    {
        if (!text.AsSpan().ContainsAnyExceptInRange(' ', '~'))
        {
            return text;
        }

        var plain = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            bool isPair = i + 1 < text.Length && char.IsSurrogatePair(text[i], text[i + 1]);
            if (isPair)
            {
                plain.Append(text[i++]).Append(text[i]);
            }
            else
            {
                plain.Append(IsHarmful(text[i]) ? '?' : text[i]);
            }
        }

        return plain.ToString();
    }

    private static bool IsHarmful(char c) => char.GetUnicodeCategory(c) is
        UnicodeCategory.Control or UnicodeCategory.Surrogate or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        || c is '\u061C' or '\u200E' or '\u200F' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
