using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace PushSim.Plotting.Drawing;

/// <summary>
/// The plotting library's raster context with its text replaced: it looks fonts up by name on the system and draws nothing when
/// there is none; this one draws with <see cref="PlotFont"/>. Naming the interface again makes its calls come here.
/// </summary>
internal sealed class PlotContext : SkiaRenderContext, IRenderContext
{
    /// <inheritdoc cref="IRenderContext.DrawText"/>
    public new void DrawText(
        ScreenPoint p,
        string text,
        OxyColor fill,
        string? fontFamily = null,
        double fontSize = 10,
        double fontWeight = 400,
        double rotation = 0,
        HorizontalAlignment horizontalAlignment = HorizontalAlignment.Left,
        VerticalAlignment verticalAlignment = VerticalAlignment.Top,
        OxySize? maxSize = null)
    {
        if (string.IsNullOrEmpty(text) || !fill.IsVisible())
        {
            return;
        }

        using SKPaint paint = Paint(fontSize);
        paint.Color = new SKColor(fill.R, fill.G, fill.B, fill.A);
        SKFontMetrics metrics = paint.FontMetrics;
        string[] lines = text.Split('\n');
        float height = metrics.Descent - metrics.Ascent;
        float top = -Share(verticalAlignment) * height * lines.Length;
        SkCanvas.Save();
        SkCanvas.Translate((float)p.X * DpiScale, (float)p.Y * DpiScale);
        SkCanvas.RotateDegrees((float)rotation);
        for (int i = 0; i < lines.Length; i++)
        {
            float left = -Share(horizontalAlignment) * paint.MeasureText(lines[i]);
            SkCanvas.DrawText(lines[i], left, top + (i * height) - metrics.Ascent, paint);
        }

        SkCanvas.Restore();
    }

    /// <inheritdoc cref="IRenderContext.MeasureText"/>
    public new OxySize MeasureText(string text, string? fontFamily = null, double fontSize = 10, double fontWeight = 500)
    {
        if (string.IsNullOrEmpty(text))
        {
            return OxySize.Empty;
        }

        using SKPaint paint = Paint(fontSize);
        SKFontMetrics metrics = paint.FontMetrics;
        string[] lines = text.Split('\n');
        return new OxySize(
            lines.Max(line => paint.MeasureText(line)) / DpiScale,
            (metrics.Descent - metrics.Ascent) * lines.Length / DpiScale);
    }

    // no hinting: it depends on how the font library was built, and the pictures are compared as bytes
    private SKPaint Paint(double fontSize) => new()
    {
        Typeface = PlotFont.Typeface,
        TextSize = (float)fontSize * DpiScale,
        IsAntialias = true,
        SubpixelText = true,
        HintingLevel = SKPaintHinting.NoHinting,
    };

    private static float Share(HorizontalAlignment alignment) => alignment switch
    {
        HorizontalAlignment.Left => 0.0f,
        HorizontalAlignment.Center => 0.5f,
        _ => 1.0f,
    };

    private static float Share(VerticalAlignment alignment) => alignment switch
    {
        VerticalAlignment.Top => 0.0f,
        VerticalAlignment.Middle => 0.5f,
        _ => 1.0f,
    };
}
