using System.Globalization;
using System.Text;
using OxyPlot;

namespace PushSim.Plotting.Report;

/// <summary>
/// Draws a panel as SVG inside a page: short numbers, and classes for colours, so that the page's style decides them and a dark
/// page or paper gets its own. No style attributes: the page's content-security-policy refuses them.
/// </summary>
/// <param name="id">Begins every id it makes; unique in the page.</param>
internal sealed class SvgContext(string id) : ClippingRenderContext
{
    // Baseline below the top and above the bottom of a line of text, as shares of the font's size; from the bundled font's tables [1].
    private const double Ascent = 0.928;
    private const double Descent = 0.236;

    private readonly StringBuilder _svg = new();
    private int _clips;

    /// <summary>What was drawn, without the svg element around it.</summary>
    public string Content => _svg.ToString();

    /// <inheritdoc/>
    public override void DrawLine(
        IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[] dashArray, LineJoin lineJoin)
    {
        if (points.Count < 2 || !stroke.IsVisible() || thickness <= 0.0)
        {
            return;
        }

        _svg.Append("<path");
        Stroke(stroke, thickness, dashArray);
        Path(points);
        _svg.Append("\"/>");
    }

    /// <inheritdoc/>
    public override void DrawPolygon(
        IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[] dashArray, LineJoin lineJoin)
    {
        if (points.Count == 0 || (!fill.IsVisible() && !stroke.IsVisible()))
        {
            return;
        }

        _svg.Append("<path");
        Both(fill, stroke, thickness, dashArray);
        Path(points);
        _svg.Append("z\"/>");
    }

    /// <inheritdoc/>
    public override void DrawRectangle(OxyRect rectangle, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode)
    {
        // the page is the background
        if (fill == OxyColors.White)
        {
            fill = OxyColors.Undefined;
        }

        if (!fill.IsVisible() && !stroke.IsVisible())
        {
            return;
        }

        _svg.Append("<rect");
        Both(fill, stroke, thickness, null);
        _svg.Append(CultureInfo.InvariantCulture, $" x=\"{Short(rectangle.Left)}\" y=\"{Short(rectangle.Top)}\" width=\"{Short(rectangle.Width)}\" height=\"{Short(rectangle.Height)}\"/>");
    }

    /// <inheritdoc/>
    public override void DrawEllipse(OxyRect extents, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode)
    {
        _svg.Append("<ellipse");
        Both(fill, stroke, thickness, null);
        _svg.Append(CultureInfo.InvariantCulture, $" cx=\"{Short(extents.Center.X)}\" cy=\"{Short(extents.Center.Y)}\" rx=\"{Short(0.5 * extents.Width)}\" ry=\"{Short(0.5 * extents.Height)}\"/>");
    }

    /// <inheritdoc/>
    public override void DrawText(
        ScreenPoint p,
        string text,
        OxyColor fill,
        string? fontFamily,
        double fontSize,
        double fontWeight,
        double rotation,
        HorizontalAlignment horizontalAlignment,
        VerticalAlignment verticalAlignment,
        OxySize? maxSize)
    {
        if (string.IsNullOrEmpty(text) || !fill.IsVisible())
        {
            return;
        }

        double drop = fontSize * verticalAlignment switch
        {
            VerticalAlignment.Top => Ascent,
            VerticalAlignment.Middle => 0.5 * (Ascent - Descent),
            _ => -Descent,
        };
        _svg.Append("<text");
        Anchor(horizontalAlignment);
        _svg.Append(CultureInfo.InvariantCulture, $" font-size=\"{Short(fontSize)}\"");
        _svg.Append(rotation == 0.0
            ? string.Create(CultureInfo.InvariantCulture, $" x=\"{Short(p.X)}\" y=\"{Short(p.Y + drop)}\">")
            : string.Create(CultureInfo.InvariantCulture, $" y=\"{Short(drop)}\" transform=\"translate({Short(p.X)} {Short(p.Y)}) rotate({Short(rotation)})\">"));
        _svg.Append(HtmlText.Of(text)).Append("</text>");
    }

    /// <inheritdoc/>
    public override OxySize MeasureText(string text, string? fontFamily, double fontSize, double fontWeight)
    {
        if (string.IsNullOrEmpty(text))
        {
            return OxySize.Empty;
        }

        string[] lines = text.Split('\n');
        return new OxySize(lines.Max(l => PlotFont.Width(l, fontSize)), lines.Length * fontSize * (Ascent + Descent));
    }

    /// <inheritdoc/>
    protected override void SetClip(OxyRect clippingRectangle)
    {
        string name = FormattableString.Invariant($"{id}-{_clips++}");
        _svg.Append(CultureInfo.InvariantCulture, $"<clipPath id=\"{name}\"><rect x=\"{Short(clippingRectangle.Left)}\" y=\"{Short(clippingRectangle.Top)}\" width=\"{Short(clippingRectangle.Width)}\" height=\"{Short(clippingRectangle.Height)}\"/></clipPath><g clip-path=\"url(#{name})\">");
    }

    /// <inheritdoc/>
    protected override void ResetClip() => _svg.Append("</g>");

    private void Anchor(HorizontalAlignment alignment)
    {
        if (alignment != HorizontalAlignment.Left)
        {
            _svg.Append(alignment == HorizontalAlignment.Center ? " text-anchor=\"middle\"" : " text-anchor=\"end\"");
        }
    }

    private void Both(OxyColor fill, OxyColor stroke, double thickness, double[]? dashes)
    {
        if (!fill.IsVisible())
        {
            Stroke(stroke, thickness, dashes);
            return;
        }

        _svg.Append(CultureInfo.InvariantCulture, $" class=\"f-{Palette.Name(fill)}");
        _svg.Append(stroke.IsVisible() && thickness > 0.0 ? $" s-{Palette.Name(stroke)}\"" : "\"");
        if (fill.A < byte.MaxValue)
        {
            _svg.Append(CultureInfo.InvariantCulture, $" fill-opacity=\"{fill.A / 255.0:0.##}\"");
        }

        Thickness(stroke, thickness, dashes);
    }

    private void Stroke(OxyColor stroke, double thickness, double[]? dashes)
    {
        _svg.Append(CultureInfo.InvariantCulture, $" class=\"s-{Palette.Name(stroke)}\"");
        Thickness(stroke, thickness, dashes);
    }

    // dashes count in widths of their line
    private void Thickness(OxyColor stroke, double thickness, double[]? dashes)
    {
        if (!stroke.IsVisible())
        {
            return;
        }

        if (thickness != 1.0)
        {
            _svg.Append(CultureInfo.InvariantCulture, $" stroke-width=\"{Short(thickness)}\"");
        }

        if (stroke.A < byte.MaxValue)
        {
            _svg.Append(CultureInfo.InvariantCulture, $" stroke-opacity=\"{stroke.A / 255.0:0.##}\"");
        }

        if (dashes is { Length: > 0 })
        {
            _svg.Append(" stroke-dasharray=\"").AppendJoin(' ', dashes.Select(d => Short(d * thickness))).Append('"');
        }
    }

    // relative steps of tenths of a pixel: a third of the length of full coordinates
    private void Path(IList<ScreenPoint> points)
    {
        (long x, long y) = (Tenths(points[0].X), Tenths(points[0].Y));
        _svg.Append(" d=\"M").Append(Tenth(x)).Append(' ').Append(Tenth(y)).Append('l');
        for (int i = 1; i < points.Count; i++)
        {
            (long nextX, long nextY) = (Tenths(points[i].X), Tenths(points[i].Y));
            string dy = Tenth(nextY - y);
            _svg.Append(i > 1 ? " " : "").Append(Tenth(nextX - x)).Append(dy[0] == '-' ? "" : " ").Append(dy);
            (x, y) = (nextX, nextY);
        }
    }

    // far outside the panel is far enough: an impact would need a long number
    private static long Tenths(double value) => (long)Math.Round(Math.Clamp(double.IsFinite(value) ? value : 0.0, -1e5, 1e5) * 10.0);

    private static string Tenth(long tenths) => Short(0.1 * tenths);

    private static string Short(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);
}
