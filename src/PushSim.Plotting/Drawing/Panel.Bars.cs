using OxyPlot.Annotations;
using OxyPlot.Series;

namespace PushSim.Plotting.Drawing;

// Bars: over names with intervals, and lying beside words.
internal sealed partial class Panel
{
    // A number with its sign and a gap before it [px].
    private const double NumberWidth = 52.0;

    private (double Low, double High)? _barEnds;

    /// <summary>Bars from low to high with a dot at the value, one a place 0, 1, 2, ... of the horizontal axis, under their names.</summary>
    public Panel AddBars(IReadOnlyList<(double Value, double Low, double High)> bars, string label, double shift, int look)
    {
        var dots = new ScatterSeries
        {
            Title = label, MarkerType = look == 0 ? MarkerType.Circle : MarkerType.Triangle, MarkerSize = 3.5, MarkerFill = Palette.Line(look), MarkerStroke = Palette.Line(look),
        };
        for (int i = 0; i < bars.Count; i++)
        {
            (double value, double low, double high) = bars[i];
            if (double.IsFinite(value))
            {
                dots.Points.Add(new ScatterPoint(i + shift, value));
            }

            // an open end is drawn to the value, no further
            if (double.IsFinite(low) || double.IsFinite(high))
            {
                _model.Series.Add(Chart.Segment(i + shift, double.IsFinite(low) ? low : value, i + shift, double.IsFinite(high) ? high : value, Palette.Line(look), 3.0));
            }
        }

        _model.Series.Add(dots);
        return this;
    }

    /// <summary>Bars from the left, one under the other, the first on top, each with its name on the axis and its number at its end.</summary>
    /// <param name="bars">Name, value and the text at its end.</param>
    /// <param name="leftMargin">Room for the names [px].</param>
    public Panel AddBars(IReadOnlyList<(string Name, double Value, string Text)> bars, double leftMargin)
    {
        var series = new RectangleBarSeries { FillColor = Palette.Ink, StrokeThickness = 0.0 };
        for (int i = 0; i < bars.Count; i++)
        {
            double row = bars.Count - 1 - i;
            series.Items.Add(new RectangleBarItem(0.0, row - 0.32, bars[i].Value, row + 0.32));
            _model.Annotations.Add(Chart.Words(" " + bars[i].Text, bars[i].Value, row, HorizontalAlignment.Left));
        }

        _model.Series.Add(series);
        _ = WithWords([.. bars.Reverse().Select(b => b.Name)]);
        _model.Axes[0].Maximum = Math.Max(1e-12, 1.2 * bars.Max(b => b.Value));
        _model.Axes[1].MajorGridlineStyle = LineStyle.None;
        _model.PlotMargins = new OxyThickness(leftMargin, double.NaN, 18, double.NaN);
        Rows = (95.0 + (26.0 * bars.Count)) / 260.0;
        return this;
    }

    /// <summary>Horizontal bars with a word each, from the bottom up, in place of curves.</summary>
    /// <param name="bars">Word and value of each bar.</param>
    /// <param name="rows">How many usual panels high.</param>
    public Panel WithBars(IEnumerable<(string Word, double Value)> bars, double rows)
    {
        (string Word, double Value)[] all = [.. bars];
        Rows = rows;
        Chart.SetWords(_model.Axes[1], [.. all.Select(b => b.Word)], edge: 0.6);
        _model.Axes[1].MajorGridlineStyle = LineStyle.None;
        _model.PlotMargins = new OxyThickness(228, double.NaN, 18, double.NaN);
        double low = Math.Min(0.0, all.Min(b => b.Value));
        double high = Math.Max(0.0, all.Max(b => b.Value));
        _barEnds = (low, high);
        for (int i = 0; i < all.Length; i++)
        {
            double value = all[i].Value;
            Band(Math.Min(0.0, value), Math.Max(0.0, value), i - 0.36, i + 0.36, value > 0.0 ? Palette.Ink : Palette.Grey);
            TextAnnotation number = Chart.Words(value.ToString("+0.0;-0.0", CultureInfo.InvariantCulture), value, i, value > 0.0 ? HorizontalAlignment.Left : HorizontalAlignment.Right);
            number.Offset = new ScreenVector(value > 0.0 ? 5.0 : -5.0, 0.0);
            _model.Annotations.Add(number);
        }

        _model.Annotations.Add(new LineAnnotation { Type = LineAnnotationType.Vertical, X = 0.0, Color = Palette.Mark, LineStyle = LineStyle.Solid, StrokeThickness = 1.2 });
        return this;
    }

    // Room for the numbers at the ends of bars, which are as wide on a narrow picture as on a wide one.
    private void MakeRoomAtBarEnds(PlotLook look)
    {
        if (_barEnds is (double low, double high))
        {
            double area = look.Width - (2.0 * PlotLook.Padding) - _model.PlotMargins.Left - _model.PlotMargins.Right;
            double room = (high - low) * NumberWidth / Math.Max(NumberWidth, area - (2.0 * NumberWidth));
            WithSpan(low < 0.0 ? low - room : 0.0, high > 0.0 ? high + room : 0.0);
        }
    }
}
