using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace PushSim.Plotting.Style;

/// <summary>Text on its way into a page or an SVG file.</summary>
internal static class HtmlText
{
    private static readonly HtmlEncoder s_encoder = HtmlEncoder.Create(UnicodeRanges.All);

    /// <summary>Escaped for an element's content or a quoted attribute; without invisible characters, cut at a length.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="longest">Letters kept [1]: a sentence is never longer, a name made to do harm may be.</param>
    public static string Of(string text, int longest = 2000) => s_encoder.Encode(PlainLabel.Of(text, longest));
}
