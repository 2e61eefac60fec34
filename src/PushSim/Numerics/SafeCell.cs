using System.Text;

namespace PushSim.Numerics;

/// <summary>A text for a CSV cell: no control characters, and nothing that a spreadsheet takes for a formula.</summary>
public static class SafeCell
{
    // Also as wide and small letters, which spreadsheets of some languages take alike
    private const string Signs = "=+-@\uFF1D\uFF0B\uFF0D\uFF20\uFE66\uFE62\uFE63\uFE6B";

    // Letters that show nothing (fillers of Hangul, blank of Braille, joiner of graphemes), and selectors of variants
    private const string Blanks = "\u115F\u1160\u3164\uFFA0\u2800\u034F\u17B4\u17B5";

    // Marks above or below one letter: two are in use (a vowel's sign and a tone's), more climb over the lines around
    private const int MostMarks = 2;

    /// <summary>The text, with an apostrophe before what could be a formula.</summary>
    public static string Of(string text)
    {
        string plain = Plain(text);

        // what shows nothing is dropped by some before they look; where it was no danger to a terminal it is still in the text, else it is a '?' now
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (!IsUnseen(rune))
            {
                return rune.IsBmp && Signs.Contains((char)rune.Value, StringComparison.Ordinal) ? "'" + plain : plain;
            }
        }

        return plain;
    }

    /// <summary>
    /// Control characters become '?': an escape sequence in a file name must not reach the terminal. So do marks that turn the reading direction, breaks of lines, half characters, what
    /// has no width, and marks that have no letter or are one too many on it. The length stays.
    /// </summary>
    public static string Plain(string text)
    {
        if (!text.AsSpan().ContainsAnyExceptInRange(' ', '~'))
        {
            return text;
        }

        var plain = new StringBuilder(text.Length);
        int marks = MostMarks;
        for (int i = 0; i < text.Length;)
        {
            bool isWhole = Rune.TryGetRuneAt(text, i, out Rune rune);
            int length = isWhole ? rune.Utf16SequenceLength : 1;
            marks = !isWhole ? MostMarks : IsMark(rune) ? marks + 1 : 0;
            if (!isWhole || IsHarmful(rune) || marks > MostMarks)
            {
                plain.Append('?', length);
            }
            else
            {
                plain.Append(text, i, length);
            }

            i += length;
        }

        return plain.ToString();
    }

    private static bool IsUnseen(Rune r) => IsMark(r) || Rune.IsWhiteSpace(r) || Rune.GetUnicodeCategory(r) is UnicodeCategory.Format or UnicodeCategory.Control
        || (r.IsBmp && Blanks.Contains((char)r.Value, StringComparison.Ordinal));

    private static bool IsMark(Rune r) => Rune.GetUnicodeCategory(r) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark;

    private static bool IsHarmful(Rune r) => Rune.GetUnicodeCategory(r) is UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Format
        || (r.IsBmp && Blanks.Contains((char)r.Value, StringComparison.Ordinal));
}
