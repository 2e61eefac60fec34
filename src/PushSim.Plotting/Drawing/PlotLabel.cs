using OxyPlot.Annotations;
using OxyPlot.Series;

namespace PushSim.Plotting.Drawing;

/// <summary>Words that belong to a moment; placed where the panel is emptiest.</summary>
/// <param name="Text">Words.</param>
/// <param name="X">Moment, in the unit of the horizontal axis.</param>
/// <param name="IsCentred">Whether they may lie over the moment instead of beside it.</param>
internal sealed record PlotLabel(string Text, double X, bool IsCentred)
{
    private const double FontSize = 13.0;

    // Gap to the line [px].
    private const double Gap = 5.0;

    // Half the height of a text line, as a share of a panel's height [1].
    private const double HalfLine = 0.065;

    // Heights that are tried, as shares from the bottom [1].
    private static readonly double[] s_heights = [0.9, 0.78, 0.66, 0.54, 0.42, 0.3, 0.18, 0.07];

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
        foreach (PlotLabel label in labels)
        {
            double width = (PlotFont.Width(label.Text, FontSize) + (2.0 * Gap)) * pixel;
            (double start, double height) = Emptiest(
                label.Starts(width, left, right),
                from => [
                    .. Obstacles(model, from, from + width).Select(y => (y - bottom) / (top - bottom)),
                    .. taken.Where(t => t.Left < from + width && t.Right > from).Select(t => t.Top),
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
        : [.. new[] { X, X - width }.Where(s => s >= left && s + width <= right).DefaultIfEmpty(left)];

    // a place with a line's height of room is as good as one with more: the first such is taken
    private static (double Start, double Height) Emptiest(double[] starts, Func<double, double[]> obstacles)
    {
        (double Start, double Height, double Room) best = (starts[0], s_heights[0], -1.0);
        foreach (double start in starts)
        {
            double[] taken = obstacles(start);
            foreach (double height in s_heights)
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
