using OxyPlot.Annotations;
using OxyPlot.Series;

namespace PushSim.Plotting.Drawing;

/// <summary>Words that belong to a moment; placed where the panel is emptiest.</summary>
/// <param name="Text">Words.</param>
/// <param name="X">Moment, in the unit of the horizontal axis.</param>
/// <param name="IsCentred">Whether they may lie over the moment instead of beside it.</param>
/// <param name="Level">Height of the line across the panel that they belong to instead, in the unit of the vertical axis; null for a moment.</param>
internal sealed record PlotLabel(string Text, double X, bool IsCentred, double? Level = null)
{
    private const double FontSize = 13.0;

    // Gap to the line [px].
    private const double Gap = 5.0;

    // Half the height of a text line, as a share of a panel's height [1].
    private const double HalfLine = 0.065;

    // Where the words of a line are looked for, as shares of the panel's width from the left [1].
    private static readonly double[] s_places = [0.0, 0.2, 0.4, 0.6, 0.8];

    // Heights that are tried, as shares from the bottom [1].
    private static readonly double[] s_heights = [0.9, 0.78, 0.66, 0.54, 0.42, 0.3, 0.18, 0.07];

    /// <summary>Words on a line across the whole panel.</summary>
    public static PlotLabel OfLine(string text, double level) => new(text, double.NaN, IsCentred: false, level);

    public static void PlaceAll(PlotModel model, IReadOnlyList<PlotLabel> labels, IReadOnlyList<Curve> curves, double areaWidth)
    {
        if (labels.Count == 0 || curves.Count == 0)
        {
            return;
        }

        double left = curves.Min(c => c.X[0]);
        double right = curves.Max(c => c.X[^1]);
        (double bottom, double top) = Range(model, curves);
        double pixel = (right - left) / areaWidth;
        List<OxyRect> taken = [];
        double[] levels = [.. labels.Where(l => l.Level is not null).Select(l => (l.Level!.Value - bottom) / (top - bottom))];

        // words of lines first: they have less choice
        foreach (PlotLabel label in labels.OrderBy(l => l.Level is null))
        {
            double width = (PlotFont.Width(label.Text, FontSize) + (2.0 * Gap)) * pixel;
            double? on = label.Level is double level ? (level - bottom) / (top - bottom) : null;
            (double start, double height) = Emptiest(
                label.Starts(width, left, right),
                on is double y0 ? [.. new[] { y0 + HalfLine, y0 - HalfLine }.Where(h => h is > HalfLine and < 1.0 - HalfLine).DefaultIfEmpty(y0 + HalfLine)] : s_heights,
                from => [
                    .. Obstacles(model, from, from + width).Select(y => (y - bottom) / (top - bottom)),
                    .. taken.Where(t => t.Left < from + width && t.Right > from).Select(t => t.Top),
                    .. on is null ? levels : [],
                ]);
            taken.Add(new OxyRect(start, height, width, 0.0));
            TextAnnotation words = Chart.Words(label.Text, start + (Gap * pixel), bottom + (height * (top - bottom)), HorizontalAlignment.Left, FontSize);
            words.TextColor = OxyColors.Black;
            words.Background = OxyColor.FromAColor(215, OxyColors.White);
            words.Padding = new OxyThickness(1);
            model.Annotations.Add(words);
        }
    }

    // right of the moment first, then left of it, as far as there is room
    private double[] Starts(double width, double left, double right) => IsCentred
        ? [Math.Clamp(X - (0.5 * width), left, right - width)]
        : Level is not null ? [.. s_places.Select(p => left + (p * (right - left))).Where(s => s + width <= right).DefaultIfEmpty(left)]
        : [.. new[] { X, Math.Min(X, right) - width }.Where(s => s >= left && s + width <= right + (1e-6 * width)).DefaultIfEmpty(left)];

    // a place with a line's height of room is as good as one with more: the first such is taken
    private static (double Start, double Height) Emptiest(double[] starts, double[] heights, Func<double, double[]> obstacles)
    {
        (double Start, double Height, double Room) best = (starts[0], heights[0], -1.0);
        foreach (double start in starts)
        {
            double[] taken = obstacles(start);
            foreach (double height in heights)
            {
                double room = Math.Min(2.0 * HalfLine, taken.Length == 0 ? 1.0 : taken.Min(t => Math.Abs(t - height)));
                best = room > best.Room ? (start, height, room) : best;
            }
        }

        return (best.Start, best.Height);
    }

    private static (double Bottom, double Top) Range(PlotModel model, IReadOnlyList<Curve> curves)
    {
        if (double.IsFinite(model.Axes[1].Minimum))
        {
            return (model.Axes[1].Minimum, model.Axes[1].Maximum);
        }

        return (curves.Min(c => c.Y.Min()), curves.Max(c => c.Y.Max()));
    }

    // heights of all that is drawn between two moments, with the curve's course filled in between its points
    private static IEnumerable<double> Obstacles(PlotModel model, double from, double to)
    {
        foreach (ScatterSeries scatter in model.Series.OfType<ScatterSeries>())
        {
            foreach (ScatterPoint p in scatter.Points.Where(p => p.X >= from && p.X <= to))
            {
                yield return p.Y;
            }
        }

        foreach (LineSeries line in model.Series.OfType<LineSeries>())
        {
            for (int i = 1; i < line.Points.Count; i++)
            {
                DataPoint a = line.Points[i - 1];
                DataPoint b = line.Points[i];
                if (b.X < from || a.X > to || double.IsNaN(a.Y + b.Y))
                {
                    continue;
                }

                yield return a.Y;
                yield return 0.5 * (a.Y + b.Y);
                yield return b.Y;
            }
        }
    }
}
