using OxyPlot;
using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace PushSim.Plotting;

/// <summary>Panels under each other, written as PNG or SVG.</summary>
public sealed class Picture
{
    private const int Width = 900;

    private readonly IReadOnlyList<(PlotModel Model, int Height)> _panels;

    internal Picture(IReadOnlyList<(PlotModel Model, int Height)> panels) => _panels = panels;

    /// <summary>Titles of the panels, from the top.</summary>
    public IReadOnlyList<string> Titles => [.. _panels.Select(p => p.Model.Title)];

    private int Height => _panels.Sum(p => p.Height);

    /// <summary>Writes it as PNG, 900 px wide.</summary>
    /// <param name="stream">Receives the file.</param>
    public void WritePng(Stream stream)
    {
        using var bitmap = new SKBitmap(Width, Height);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        using var context = new PlotContext { SkCanvas = canvas, RenderTarget = RenderTarget.PixelGraphic, DpiScale = 1.0f };
        Render(context);
        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        data.SaveTo(stream);
    }

    /// <summary>Writes it as SVG.</summary>
    /// <param name="stream">Receives the file.</param>
    public void WriteSvg(Stream stream)
    {
        using var measure = new PlotContext { RenderTarget = RenderTarget.VectorGraphic };
        using var memory = new MemoryStream();
        using (var context = new SvgRenderContext(memory, Width, Height, true, measure, OxyColors.White))
        {
            Render(context);
            context.Complete();
            context.Flush();
        }

        memory.WriteTo(stream);
    }

    private void Render(IRenderContext context)
    {
        int top = 0;
        foreach ((PlotModel panel, int height) in _panels)
        {
            IPlotModel model = panel;
            model.Update(true);
            model.Render(context, new OxyRect(0, top, Width, height));
            top += height;
        }
    }
}
