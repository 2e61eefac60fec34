using System.Globalization;
using System.Text;
using Spectre.Console;

namespace PushSim.Cli.Shared;

/// <summary>Text from files and arguments on its way to the terminal.</summary>
internal static class PlainText
{
    /// <summary>Control characters become '?': an escape sequence in a file name must not reach the terminal. So do marks that turn the reading direction, breaks of lines, and half characters.</summary>
    public static string Of(string text)
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

    /// <summary>The same for a line with marks of style, in which brackets of the text stay brackets.</summary>
    public static string Marked(string text) => Markup.Escape(Of(text));

    private static bool IsHarmful(char c) => char.GetUnicodeCategory(c) is
        UnicodeCategory.Control or UnicodeCategory.Surrogate or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        || c is '\u061C' or '\u200E' or '\u200F' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
