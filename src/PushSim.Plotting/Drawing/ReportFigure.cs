using System.Text;
using PushSim.Plotting.Svg;

namespace PushSim.Plotting.Drawing;

/// <summary>A plot of a page: the same panel drawn for a desk and for a telephone, and its content in words for those who cannot see it.</summary>
public sealed class ReportFigure
{
    // Curves described one by one in the words for a screen reader [1].
    private const int MostCurves = 8;

    private readonly string _title;
    private readonly string _words;
    private readonly int _height;
    private readonly bool _isOverTime;
    private readonly Func<PlotLook, PlotModel> _draw;
    private (string Desk, string Phone)? _drawn;

    private ReportFigure(string title, string words, int height, bool isOverTime, Func<PlotLook, PlotModel> draw) =>
        (_title, _words, _height, _isOverTime, _draw) = (title, words, height, isOverTime, draw);

    /// <summary>The plots of any command, out of what makes its panels anew each time.</summary>
    internal static IReadOnlyList<ReportFigure> Of(Func<IReadOnlyList<Panel>> panels)
    {
        // a panel is built once, so each drawing takes its own
        IReadOnlyList<Panel> desk = panels();
        IReadOnlyList<Panel> phone = panels();
        return [.. desk.Select((p, i) => new ReportFigure(p.Title, Words(p), PlotSheet.Height(p.Rows), p.IsOverTime, look => (look == PlotLook.Phone ? phone[i] : p).Build(look)))];
    }

    /// <summary>Charts that are no panels.</summary>
    internal static IReadOnlyList<ReportFigure> Of(IReadOnlyList<ChartDrawing> charts) => [.. charts.Select(c => new ReportFigure(c.Title, c.Words, c.Height, isOverTime: false, c.Draw))];

    /// <summary>Writes heading and both drawings.</summary>
    internal void Write(TextWriter html, int number)
    {
        string id = FormattableString.Invariant($"p{number}");
        html.WriteLine($"<figure><h3 id=\"{id}\">{HtmlText.Of(_title)}</h3>");
        string words = HtmlText.Of(_words);
        (string desk, string phone) = _drawn ??= (Draw(PlotLook.Page, id + "d", "desk", words), Draw(PlotLook.Phone, id + "p", "phone", words));
        html.WriteLine(desk);
        html.WriteLine(phone);
        html.WriteLine("</figure>");
    }

    private string Draw(PlotLook look, string id, string kind, string words)
    {
        PlotModel model = _draw(look);
        var context = new SvgPageContext(id);
        ((IPlotModel)model).Update(true);
        ((IPlotModel)model).Render(context, new OxyRect(0, 0, look.Width, _height));
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg class=\"plot {kind}\" viewBox=\"0 0 {look.Width} {_height}\" role=\"img\" aria-label=\"{words}\"");
        OxyRect area = model.PlotArea;
        if (_isOverTime)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $" data-left=\"{area.Left:0.##}\" data-right=\"{area.Right:0.##}\" data-from=\"{model.Axes[0].ActualMinimum:0.######}\" data-to=\"{model.Axes[0].ActualMaximum:0.######}\"");
        }

        svg.Append('>').Append(context.Content);
        if (_isOverTime)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path class=\"now\" d=\"M0 {area.Top:0.#}V{area.Bottom:0.#}\"/>");
        }

        return svg.Append("</svg>").ToString();
    }

    private static string Words(Panel panel)
    {
        var words = new StringBuilder();
        words.Append(CultureInfo.InvariantCulture, $"Plot: {panel.Title}; {(panel.YTitle.Length > 0 ? panel.YTitle : "words")} against {panel.XTitle}.");
        foreach (Curve curve in panel.Curves.Take(MostCurves))
        {
            words.Append(CultureInfo.InvariantCulture, $" {curve.Label}: from {curve.Y.Min():0.##} to {curve.Y.Max():0.##}, at the end {curve.Y[^1]:0.##}.");
        }

        return words.ToString();
    }
}
