using System.Text;
using PushSim.Plotting.Svg;

namespace PushSim.Plotting.Drawing;

/// <summary>A plot of a page: the same chart drawn for a desk and for a telephone, and its content in words for those who cannot see it.</summary>
public sealed class ReportFigure
{
    private readonly ChartDrawing _chart;
    private (string Desk, string Phone)? _drawn;

    internal ReportFigure(ChartDrawing chart) => _chart = chart;

    /// <summary>What it shows.</summary>
    internal string Title => _chart.Title;

    /// <summary>Writes both drawings without a heading, the one for a desk as wide as it stands in a card.</summary>
    internal void WriteHero(TextWriter html)
    {
        string words = HtmlText.Of(_chart.Words);
        html.WriteLine(Draw(PlotLook.Hero, "hd", "desk", words));
        html.WriteLine(Draw(PlotLook.Phone, "hp", "phone", words));
    }

    /// <summary>Writes heading and both drawings.</summary>
    internal void Write(TextWriter html, int number)
    {
        string id = FormattableString.Invariant($"p{number}");
        html.WriteLine($"<figure><h3 id=\"{id}\">{HtmlText.Of(_chart.Title)}</h3>");
        string words = HtmlText.Of(_chart.Words);
        (string desk, string phone) = _drawn ??= (Draw(PlotLook.Page, id + "d", "desk", words), Draw(PlotLook.Phone, id + "p", "phone", words));
        html.WriteLine(desk);
        html.WriteLine(phone);
        html.WriteLine("</figure>");
    }

    private string Draw(PlotLook look, string id, string kind, string words)
    {
        PlotModel model = _chart.Draw(look);
        var context = new SvgPageContext(id);
        ((IPlotModel)model).Update(true);
        ((IPlotModel)model).Render(context, new OxyRect(0, 0, look.Width, _chart.Height));
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg class=\"plot {kind}\" viewBox=\"0 0 {look.Width} {_chart.Height}\" role=\"img\" aria-label=\"{words}\"");
        OxyRect area = model.PlotArea;
        if (_chart.IsOverTime)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $" data-left=\"{area.Left:0.##}\" data-right=\"{area.Right:0.##}\" data-from=\"{model.Axes[0].ActualMinimum:0.######}\" data-to=\"{model.Axes[0].ActualMaximum:0.######}\"");
        }

        svg.Append('>').Append(context.Content);
        if (_chart.IsOverTime)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path class=\"now\" d=\"M0 {area.Top:0.#}V{area.Bottom:0.#}\"/>");
        }

        return svg.Append("</svg>").ToString();
    }
}
