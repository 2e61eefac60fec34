using OxyPlot;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Plots;
using PushSim.Plotting.Style;
using SkiaSharp;
using Xunit;

namespace PushSim.Plotting.Tests.Style;

public class PlotFontTests
{
    [Fact]
    public void The_font_in_the_assembly_has_all_letters_of_our_labels()
    {
        Assert.Equal("DejaVu Sans", PlotFont.Typeface.FamilyName);
        Assert.DoesNotContain((ushort)0, PlotFont.Typeface.GetGlyphs("Speed [m/s²] 0123456789 -+.,:%=()°³·µΩ"));
    }

    [Fact]
    public void Its_licence_comes_with_it()
    {
        using Stream? licence = typeof(RunPlot).Assembly.GetManifestResourceStream("LICENSE-DejaVu.txt");
        Assert.NotNull(licence);
        Assert.Contains("Bitstream Vera", new StreamReader(licence).ReadToEnd());
    }

    // Families that systems do have, beside one that none has: all give our own font's width
    [Theory]
    [InlineData("No Such Family")]
    [InlineData("DejaVu Serif")]
    [InlineData("DejaVu Sans Mono")]
    public void Text_is_measured_with_our_font_whatever_the_family(string family)
    {
        using var plot = new PlotContext { RenderTarget = OxyPlot.SkiaSharp.RenderTarget.VectorGraphic };
        IRenderContext context = plot;
        using var paint = new SKPaint { Typeface = PlotFont.Typeface, TextSize = 20.0f, SubpixelText = true, HintingLevel = SKPaintHinting.NoHinting };
        Assert.Equal(paint.MeasureText("iiiiWWWW"), context.MeasureText("iiiiWWWW", family, 20.0, 400.0).Width, 1e-3);
    }

    // A family that no system has: the names must not be looked up
    [Theory]
    [InlineData(0.0)]
    [InlineData(-90.0)]
    public void Text_has_ink_where_it_was_measured_whatever_the_family(double rotation)
    {
        using var bitmap = new SKBitmap(400, 400);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        using var plot = new PlotContext { SkCanvas = canvas, RenderTarget = OxyPlot.SkiaSharp.RenderTarget.PixelGraphic, DpiScale = 1.0f };
        IRenderContext context = plot;
        const string text = "Speed [m/s]";
        OxySize size = context.MeasureText(text, "No Such Family", 20.0, 400.0);
        context.DrawText(new ScreenPoint(200, 200), text, OxyColors.Black, "No Such Family", 20.0, 400.0, rotation, HorizontalAlignment.Center, VerticalAlignment.Middle);
        double halfWidth = 1.0 + (0.5 * (rotation == 0.0 ? size.Width : size.Height));
        double halfHeight = 1.0 + (0.5 * (rotation == 0.0 ? size.Height : size.Width));
        int inside = 0;
        int outside = 0;
        for (int y = 0; y < 400; y++)
        {
            for (int x = 0; x < 400; x++)
            {
                bool isDark = bitmap.GetPixel(x, y).Red < 128;
                bool isInside = Math.Abs(x + 0.5 - 200) <= halfWidth && Math.Abs(y + 0.5 - 200) <= halfHeight;
                inside += isDark && isInside ? 1 : 0;
                outside += isDark && !isInside ? 1 : 0;
            }
        }

        Assert.True(inside > 200, $"{inside} dark pixels");
        Assert.Equal(0, outside);
    }
}
