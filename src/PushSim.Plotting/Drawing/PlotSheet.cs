using OxyPlot.SkiaSharp;
using PushSim.Plotting.Svg;
using SkiaSharp;

namespace PushSim.Plotting.Drawing;

/// <summary>Panels under each other as a file: PNG, SVG or PDF.</summary>
public sealed class PlotSheet
{
    private const int PanelHeight = 260;

    // A4 upright, the unit of PDF [pt].
    private const float PageWidth = 595.0f;
    private const float PageHeight = 842.0f;
    private const float PageMargin = 30.0f;

    private readonly PlotModel[] _panels;
    private readonly int[] _heights;
    private readonly int _width;

    internal PlotSheet(IReadOnlyList<Panel> panels)
        : this(panels, PlotLook.File)
    {
    }

    internal PlotSheet(IReadOnlyList<Panel> panels, PlotLook look)
    {
        _panels = [.. panels.Select(p => p.Build(look))];
        _heights = [.. panels.Select(p => Height(p.Rows))];
        _width = look.Width;
    }

    /// <summary>A sheet of charts that are no panels.</summary>
    internal PlotSheet(IReadOnlyList<ChartDrawing> charts)
    {
        _panels = [.. charts.Select(c => c.Draw(PlotLook.File))];
        _heights = [.. charts.Select(c => c.Height)];
        _width = PlotLook.File.Width;
    }

    /// <summary>Titles of the panels, from the top.</summary>
    public IReadOnlyList<string> PanelTitles => [.. _panels.Select(p => p.Title)];

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
        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
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
            for (int next = 0; next < _panels.Length;)
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
        while (end < _panels.Length && _heights[first..(end + 1)].Sum() <= room)
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

    private void RenderAll(IRenderContext context) => Render(context, 0, _panels.Length);

    private void Render(IRenderContext context, int first, int end)
    {
        int top = 0;
        for (int i = first; i < end; i++)
        {
            IPlotModel model = _panels[i];
            model.Update(true);
            model.Render(context, new OxyRect(0, top, _width, _heights[i]));
            top += _heights[i];
        }
    }
}
