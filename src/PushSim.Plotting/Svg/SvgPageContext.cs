namespace PushSim.Plotting.Svg;

/// <summary>
/// SVG inside a page: classes for colours, so that the page's style decides them and a dark page or paper gets its own (shades stay as they are), and text as
/// text in the reader's font. No style attributes: the page's content-security-policy refuses them.
/// </summary>
/// <param name="id">Begins every id it makes; unique in the page.</param>
internal sealed class SvgPageContext(string id) : SvgContext(id)
{
    /// <inheritdoc/>
    protected override void Write(string text, ScreenPoint p, OxyColor fill, double fontSize, double rotation, HorizontalAlignment horizontal, VerticalAlignment vertical)
    {
        double drop = Drop(vertical, fontSize);
        string anchor = horizontal switch
        {
            HorizontalAlignment.Left => "",
            HorizontalAlignment.Center => " text-anchor=\"middle\"",
            _ => " text-anchor=\"end\"",
        };
        string place = rotation == 0.0
            ? $"x=\"{Short(p.X)}\" y=\"{Short(p.Y + drop)}\""
            : $"y=\"{Short(drop)}\" transform=\"translate({Short(p.X)} {Short(p.Y)}) rotate({Short(rotation)})\"";
        string on = fill == OxyColors.White ? " class=\"on-dark\"" : fill == Palette.OnShade ? " class=\"on-light\"" : "";
        Out.Append(CultureInfo.InvariantCulture, $"<text{on}{anchor} font-size=\"{Short(fontSize)}\" {place}>{HtmlText.Of(text)}</text>");
    }

    /// <inheritdoc/>
    protected override void Colours(OxyColor fill, OxyColor stroke)
    {
        string[] classes = [.. new[] { Class("f-", fill), Class("s-", stroke) }.OfType<string>()];
        Out.Append(classes.Length > 0 ? $" class=\"{string.Join(' ', classes)}\"" : "").Append(Shade("fill", fill)).Append(Shade("stroke", stroke));
    }

    private static string? Class(string use, OxyColor colour) => colour.IsUndefined() || Palette.Name(colour) is not string name ? null : use + name;

    private static string Shade(string attribute, OxyColor colour) => colour.IsUndefined() || Palette.Name(colour) is not null ? "" : $" {attribute}=\"{Hex(colour)}\"";
}
