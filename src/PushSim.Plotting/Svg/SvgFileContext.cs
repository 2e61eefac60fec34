using System.Text;
using SkiaSharp;

namespace PushSim.Plotting.Svg;

/// <summary>
/// SVG as a file: its own colours, and letters as shapes of the bundled font, each drawn once and used where it stands. So the
/// picture is the same on every system, also on one without fonts; the words are there as labels for a screen reader and a search.
/// </summary>
internal sealed class SvgFileContext() : SvgContext("clip"), IDisposable
{
    // Size at which the letters are drawn; any size would do, this one gives short numbers [px].
    private const float DrawnSize = 100.0f;

    private readonly StringBuilder _letters = new();
    private readonly Dictionary<ushort, float> _widths = [];
    private readonly SKFont _font = new(PlotFont.Typeface, DrawnSize) { Subpixel = true, Hinting = SKFontHinting.None };

    /// <summary>The whole file.</summary>
    public string File(int width, int height) => string.Create(
        CultureInfo.InvariantCulture,
        $"""
        <?xml version="1.0" encoding="utf-8"?>
        <svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="{width}" height="{height}" viewBox="0 0 {width} {height}">
        <defs>{_letters}</defs>
        <rect width="{width}" height="{height}" fill="#ffffff"/>
        {Content}
        </svg>

        """).ReplaceLineEndings("\n");

    /// <inheritdoc/>
    protected override void Write(string text, ScreenPoint p, OxyColor fill, double fontSize, double rotation, HorizontalAlignment horizontal, VerticalAlignment vertical)
    {
        ushort[] glyphs = PlotFont.Typeface.GetGlyphs(text);
        double width = glyphs.Sum(g => (double)Width(g));
        double scale = fontSize / DrawnSize;
        double x = horizontal switch
        {
            HorizontalAlignment.Left => 0.0,
            HorizontalAlignment.Center => -0.5 * width,
            _ => -width,
        };
        double y = Drop(vertical, fontSize) / scale;
        string turn = rotation == 0.0 ? "" : $" rotate({Short(rotation)})";
        Out.Append(
            CultureInfo.InvariantCulture,
            $"<g role=\"img\" aria-label=\"{HtmlText.Of(text)}\" fill=\"{Hex(fill)}\" transform=\"translate({Short(p.X)} {Short(p.Y)}){turn} scale({scale:0.####})\">");
        foreach (ushort glyph in glyphs)
        {
            Out.Append(CultureInfo.InvariantCulture, $"<use xlink:href=\"#g{glyph}\" x=\"{x:0.#}\" y=\"{y:0.#}\"/>");
            x += Width(glyph);
        }

        Out.Append("</g>");
    }

    /// <inheritdoc/>
    protected override void Colours(OxyColor fill, OxyColor stroke)
    {
        Out.Append(CultureInfo.InvariantCulture, $" fill=\"{(fill.IsUndefined() ? "none" : Hex(fill))}\"");
        if (!stroke.IsUndefined())
        {
            Out.Append(CultureInfo.InvariantCulture, $" stroke=\"{Hex(stroke)}\"");
        }
    }

    public void Dispose() => _font.Dispose();

    // draws the letter when it is met first
    private float Width(ushort glyph)
    {
        if (!_widths.TryGetValue(glyph, out float width))
        {
            float[] widths = [0.0f];
            _font.GetGlyphWidths([glyph], widths, []);
            width = widths[0];
            _widths.Add(glyph, width);
            using SKPath? shape = _font.GetGlyphPath(glyph);
            _letters.Append(CultureInfo.InvariantCulture, $"<path id=\"g{glyph}\" d=\"{shape?.ToSvgPathData()}\"/>");
        }

        return width;
    }
}
