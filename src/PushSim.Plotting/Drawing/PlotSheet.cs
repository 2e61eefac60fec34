using OxyPlot.SkiaSharp;
using PushSim.Plotting.Svg;
using SkiaSharp;

namespace PushSim.Plotting.Drawing;

/// <summary>Charts under each other: a file as PNG, SVG or PDF, or figures of a page.</summary>
public sealed class PlotSheet
{
    /// <summary>Charts of a picture unless all are wanted [1].</summary>
    public const int Usual = 5;

    private const int PanelHeight = 260;

    // Compression of PNG, of 9: charts are mostly white, more costs time and hardly saves bytes [1].
    private const int PngLevel = 4;

    // A4 upright, the unit of PDF [pt].
    private const float PageWidth = 595.0f;
    private const float PageHeight = 842.0f;
    private const float PageMargin = 30.0f;

    private readonly IReadOnlyList<ChartDrawing> _charts;
    private readonly Lazy<PlotModel[]> _models;
    private readonly int[] _heights;
    private readonly int _width = PlotLook.File.Width;

    internal PlotSheet(IReadOnlyList<ChartDrawing> charts)
    {
        _charts = charts;
        _models = new(() => [.. charts.Select(c => c.Draw(PlotLook.File))]);
        _heights = [.. charts.Select(c => c.Height)];
    }

    /// <summary>A sheet of panels, out of what makes them anew.</summary>
    internal PlotSheet(Func<IReadOnlyList<Panel>> panels)
        : this(ChartDrawing.Of(panels))
    {
    }

    /// <summary>The same for a page.</summary>
    public IReadOnlyList<ReportFigure> Figures => [.. _charts.Select(c => new ReportFigure(c))];

    /// <summary>The charts that answer the question; the rest only where all are wanted.</summary>
    public PlotSheet Short => _charts.Count <= Usual ? this : new PlotSheet([.. _charts.Take(Usual)]);

    /// <summary>Titles of the charts, from the top.</summary>
    public IReadOnlyList<string> PanelTitles => [.. _charts.Select(c => c.Title)];

    /// <summary>Height of a panel of that many usual ones [px].</summary>
    internal static int Height(double rows) => (int)(PanelHeight * rows);

    /// <summary>Writes it as PNG, 900 px wide.</summary>
    /// <param name="stream">Receives the file.</param>
    public void WritePng(Stream stream)
    {
        using var bitmap = new SKBitmap(_width, _heights.Sum());
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        using var context = new PlotContext { SkCanvas = canvas, RenderTarget = RenderTarget.PixelGraphic, DpiScale = 1.0f };
        RenderAll(context);
        using SKPixmap dots = bitmap.PeekPixels();
        using SKData data = dots.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.NoFilters, PngLevel));
        data.SaveTo(stream);
    }

    /// <summary>Writes it as SVG, letters as shapes, so that it needs no font.</summary>
    /// <param name="stream">Receives the file.</param>
    public void WriteSvg(Stream stream)
    {
        using var context = new SvgFileContext();
        RenderAll(context);
        stream.Write(System.Text.Encoding.UTF8.GetBytes(context.File(_width, _heights.Sum())));
    }

    /// <summary>Writes it as PDF, A4 upright, no panel broken over two pages, the font inside.</summary>
    /// <param name="stream">Receives the file.</param>
    public void WritePdf(Stream stream)
    {
        // no dates: the same run gives the same bytes
        var metadata = new SKDocumentPdfMetadata(300.0f) { Creator = "PushSim", Producer = "PushSim", Title = string.Join("; ", PanelTitles) };
        using var memory = new MemoryStream();
        using (SKDocument document = SKDocument.CreatePdf(memory, metadata))
        {
            float scale = (PageWidth - (2.0f * PageMargin)) / _width;
            for (int next = 0; next < _charts.Count;)
            {
                next = WritePage(document, next, scale);
            }

            document.Close();
        }

        memory.WriteTo(stream);
    }

    // Returns the first panel of the page after it. A panel that is higher than a page is drawn smaller.
    private int WritePage(SKDocument document, int first, float scale)
    {
        float room = (PageHeight - (2.0f * PageMargin)) / scale;
        int end = first + 1;
        while (end < _charts.Count && _heights[first..(end + 1)].Sum() <= room)
        {
            end++;
        }

        using SKCanvas canvas = document.BeginPage(PageWidth, PageHeight);
        canvas.Translate(PageMargin, PageMargin);
        canvas.Scale(scale * Math.Min(1.0f, room / _heights[first..end].Sum()));
        using var context = new PlotContext { SkCanvas = canvas, RenderTarget = RenderTarget.VectorGraphic, DpiScale = 1.0f };
        Render(context, first, end);
        document.EndPage();
        return end;
    }

    private void RenderAll(IRenderContext context) => Render(context, 0, _charts.Count);

    private void Render(IRenderContext context, int first, int end)
    {
        int top = 0;
        for (int i = first; i < end; i++)
        {
            IPlotModel model = _models.Value[i];
            model.Update(true);
            model.Render(context, new OxyRect(0, top, _width, _heights[i]));
            top += _heights[i];
        }
    }
}
