using System.Text;

namespace PushSim.Plotting.Svg;

/// <summary>Draws panels as SVG with short numbers; colours and text are left to the kind of SVG.</summary>
/// <param name="id">Begins every id it makes; unique in the document.</param>
internal abstract class SvgContext(string id) : ClippingRenderContext
{
    // Baseline below the top and above the bottom of a line of text, as shares of the font's size; from the bundled font's tables [1].
    protected const double Ascent = 0.928;
    protected const double Descent = 0.236;

    private int _clips;

    /// <summary>What was drawn, without the svg element around it.</summary>
    public string Content => Out.ToString();

    /// <summary>Receives what is drawn.</summary>
    protected StringBuilder Out { get; } = new();

    /// <inheritdoc/>
    public override void DrawLine(
        IList<ScreenPoint> points, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[] dashArray, LineJoin lineJoin)
    {
        if (points.Count < 2 || !stroke.IsVisible() || thickness <= 0.0)
        {
            return;
        }

        Out.Append("<path");
        Look(OxyColors.Undefined, stroke, thickness, dashArray);
        Path(points);
        Out.Append("\"/>");
    }

    /// <inheritdoc/>
    public override void DrawPolygon(
        IList<ScreenPoint> points, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode, double[] dashArray, LineJoin lineJoin)
    {
        if (points.Count == 0 || (!fill.IsVisible() && !stroke.IsVisible()))
        {
            return;
        }

        Out.Append("<path");
        Look(fill, stroke, thickness, dashArray);
        Path(points);
        Out.Append("z\"/>");
    }

    /// <inheritdoc/>
    public override void DrawRectangle(OxyRect rectangle, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode)
    {
        // the ground is there already
        if (fill == OxyColors.White)
        {
            fill = OxyColors.Undefined;
        }

        if (!fill.IsVisible() && !stroke.IsVisible())
        {
            return;
        }

        Out.Append("<rect");
        Look(fill, stroke, thickness, null);
        Out.Append(CultureInfo.InvariantCulture, $" x=\"{Short(rectangle.Left)}\" y=\"{Short(rectangle.Top)}\" width=\"{Short(rectangle.Width)}\" height=\"{Short(rectangle.Height)}\"/>");
    }

    /// <inheritdoc/>
    public override void DrawEllipse(OxyRect extents, OxyColor fill, OxyColor stroke, double thickness, EdgeRenderingMode edgeRenderingMode)
    {
        Out.Append("<ellipse");
        Look(fill, stroke, thickness, null);
        Out.Append(CultureInfo.InvariantCulture, $" cx=\"{Short(extents.Center.X)}\" cy=\"{Short(extents.Center.Y)}\" rx=\"{Short(0.5 * extents.Width)}\" ry=\"{Short(0.5 * extents.Height)}\"/>");
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

        Write(text, p, fill, fontSize, rotation, horizontalAlignment, verticalAlignment);
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
        Out.Append(CultureInfo.InvariantCulture, $"<clipPath id=\"{name}\"><rect x=\"{Short(clippingRectangle.Left)}\" y=\"{Short(clippingRectangle.Top)}\" width=\"{Short(clippingRectangle.Width)}\" height=\"{Short(clippingRectangle.Height)}\"/></clipPath><g clip-path=\"url(#{name})\">");
    }

    /// <inheritdoc/>
    protected override void ResetClip() => Out.Append("</g>");

    /// <summary>Visible text that hangs on a point.</summary>
    protected abstract void Write(string text, ScreenPoint p, OxyColor fill, double fontSize, double rotation, HorizontalAlignment horizontal, VerticalAlignment vertical);

    /// <summary>Attributes of fill and line; undefined is none.</summary>
    protected abstract void Colours(OxyColor fill, OxyColor stroke);

    /// <summary>From the point that text hangs on down to its first baseline [px].</summary>
    protected static double Drop(VerticalAlignment alignment, double fontSize) => fontSize * alignment switch
    {
        VerticalAlignment.Top => Ascent,
        VerticalAlignment.Middle => 0.5 * (Ascent - Descent),
        _ => -Descent,
    };

    /// <summary>A colour as SVG writes it, without its opacity.</summary>
    protected static string Hex(OxyColor colour) => FormattableString.Invariant($"#{colour.R:x2}{colour.G:x2}{colour.B:x2}");

    /// <summary>A number with two decimals at most.</summary>
    protected static string Short(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    // Attributes of fill and line, with their opacity and width; dashes count in widths of their line.
    private void Look(OxyColor fill, OxyColor stroke, double thickness, double[]? dashes)
    {
        Colours(fill.IsVisible() ? fill : OxyColors.Undefined, stroke.IsVisible() && thickness > 0.0 ? stroke : OxyColors.Undefined);
        if (fill.IsVisible() && fill.A < byte.MaxValue)
        {
            Out.Append(CultureInfo.InvariantCulture, $" fill-opacity=\"{fill.A / 255.0:0.##}\"");
        }

        if (!stroke.IsVisible())
        {
            return;
        }

        if (thickness != 1.0)
        {
            Out.Append(CultureInfo.InvariantCulture, $" stroke-width=\"{Short(thickness)}\"");
        }

        if (stroke.A < byte.MaxValue)
        {
            Out.Append(CultureInfo.InvariantCulture, $" stroke-opacity=\"{stroke.A / 255.0:0.##}\"");
        }

        if (dashes is { Length: > 0 })
        {
            Out.Append(" stroke-dasharray=\"").AppendJoin(' ', dashes.Select(d => Short(d * thickness))).Append('"');
        }
    }

    // relative steps of tenths of a pixel: a third of the length of full coordinates
    private void Path(IList<ScreenPoint> points)
    {
        (long x, long y) = (Tenths(points[0].X), Tenths(points[0].Y));
        Out.Append(" d=\"M").Append(Tenth(x)).Append(' ').Append(Tenth(y)).Append('l');
        for (int i = 1; i < points.Count; i++)
        {
            (long nextX, long nextY) = (Tenths(points[i].X), Tenths(points[i].Y));
            string dy = Tenth(nextY - y);
            Out.Append(i > 1 ? " " : "").Append(Tenth(nextX - x)).Append(dy[0] == '-' ? "" : " ").Append(dy);
            (x, y) = (nextX, nextY);
        }
    }

    // far outside the panel is far enough: an impact would need a long number
    private static long Tenths(double value) => (long)Math.Round(Math.Clamp(double.IsFinite(value) ? value : 0.0, -1e5, 1e5) * 10.0);

    private static string Tenth(long tenths) => Short(0.1 * tenths);
}
