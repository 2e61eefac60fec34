using System.Reflection;
using SkiaSharp;

namespace PushSim.Plotting.Style;

/// <summary>The font that comes with the program, so that pictures have text, and the same text, on every system.</summary>
internal static class PlotFont
{
    /// <summary>Its name, for SVG viewers that have it.</summary>
    public const string Family = "DejaVu Sans";

    private static readonly Lazy<SKTypeface> s_typeface = new(Load);

    public static SKTypeface Typeface => s_typeface.Value;

    /// <summary>Width of one line of text [px].</summary>
    public static double Width(string text, double size)
    {
        using var paint = new SKPaint { Typeface = Typeface, TextSize = (float)size, SubpixelText = true, HintingLevel = SKPaintHinting.NoHinting };
        return paint.MeasureText(text);
    }

    private static SKTypeface Load()
    {
        // the typeface takes the data over and lives as long as the program
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("DejaVuSans.ttf")
            ?? throw new InvalidOperationException("the font is not in the assembly");
        return SKTypeface.FromData(SKData.Create(stream));
    }
}
