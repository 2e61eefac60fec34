using System.Text;

namespace PushSim.Plotting.Style;

/// <summary>Names from files on their way into a picture or a page.</summary>
public static class PlainLabel
{
    /// <summary>Letters of a name that are shown in a picture or a table's head [1]; longer ones would push everything else aside.</summary>
    public const int Longest = 40;

    // Stands for every character that has no shape of its own.
    private const string NoShape = "\uFFFD";

    /// <summary>
    /// The text without control characters, direction switches, lone surrogates and what else XML forbids or a reader cannot see,
    /// cut at a number of letters.
    /// </summary>
    /// <param name="text">Any text.</param>
    /// <param name="longest">Letters kept [1].</param>
    public static string Of(string text, int longest = Longest)
    {
        var plain = new StringBuilder(Math.Min(text.Length, longest) + 1);
        int letters = 0;
        TextElementEnumerator element = StringInfo.GetTextElementEnumerator(text);
        while (element.MoveNext())
        {
            if (letters++ == longest)
            {
                return plain.Append('…').ToString();
            }

            foreach (Rune rune in element.GetTextElement().EnumerateRunes())
            {
                // a rune is a replacement itself where the text had half a pair
                plain.Append(IsShown(rune) ? rune.ToString() : NoShape);
            }
        }

        return plain.ToString();
    }

    private static bool IsShown(Rune rune) => Rune.GetUnicodeCategory(rune) is not
        (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned or UnicodeCategory.Surrogate);
}
