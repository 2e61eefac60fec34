using PushSim.Analysis.Statistics;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>The picture of a league: a square of win shares, and the scores with their intervals.</summary>
public static class LadderPlot
{
    private const string SquareTitle = "Matches won by the robot on the left against the one below [%]";
    private const string ScoreTitle = "Score with 95 % interval; 400 points more are odds of ten to one";
    private const string OpenTitle = "Score with 95 % interval, dotted where it has no end; 400 points more are odds of ten to one";

    // Room beyond all finite ends, for those that are open [shares of the range].
    private const double OpenRoom = 0.06;

    // Room for the names of robots [px].
    private const double NameWidth = 150.0;

    // Ends of the scale: dark enough for white numbers.
    private static readonly OxyColor s_won = OxyColor.FromRgb(0, 130, 102);
    private static readonly OxyColor s_lost = OxyColor.FromRgb(150, 70, 128);

    /// <summary>The picture; robots in the order of the ranking.</summary>
    /// <param name="robots">Names.</param>
    /// <param name="winShares">Win share of row over column [1]; null on the diagonal.</param>
    /// <param name="scores">Score and its interval [points].</param>
    public static PlotSheet Of(IReadOnlyList<string> robots, IReadOnlyList<IReadOnlyList<double?>> winShares, IReadOnlyList<(double Score, double Low, double High)> scores) => new(
    [
        new ChartDrawing(SquareTitle, $"Plot: {SquareTitle}: {string.Join("; ", robots.Select((r, i) => $"{r} {string.Join(", ", winShares[i].Select(s => s is double v ? FormattableString.Invariant($"{100.0 * v:0}") : "-"))}"))}.", 150 + (62 * robots.Count), look => Square(look, robots, winShares)),
        new ChartDrawing(TitleOf(scores), $"Plot: {TitleOf(scores)}: {string.Join(", ", robots.Select((r, i) => FormattableString.Invariant($"{r} {scores[i].Score:0} ({IntervalWords.Of(new Interval(scores[i].Score, scores[i].Low, scores[i].High), "0")})")))}.", 110 + (34 * robots.Count), look => Scores(look, robots, scores)),
    ]);

    private static PlotModel Square(PlotLook look, IReadOnlyList<string> robots, IReadOnlyList<IReadOnlyList<double?>> shares)
    {
        int n = robots.Count;
        PlotModel model = Chart.Model(look, SquareTitle, NameWidth);
        model.Axes.Add(Chart.WordAxis(look, AxisPosition.Bottom, "against", robots, NameWidth));
        model.Axes.Add(Chart.WordAxis(look, AxisPosition.Left, "wins of", [.. robots.Reverse()], NameWidth));
        for (int row = 0; row < n; row++)
        {
            for (int column = 0; column < n; column++)
            {
                int y = n - 1 - row;
                double? share = shares[row][column];
                OxyColor fill = share is double s ? Shade(s) : OxyColor.FromRgb(235, 235, 235);
                RectangleAnnotation cell = Chart.Box(column - 0.5, column + 0.5, y - 0.5, y + 0.5, fill);
                (cell.Stroke, cell.StrokeThickness) = (OxyColors.White, 2.0);
                model.Annotations.Add(cell);
                if (share is double value)
                {
                    double size = Math.Min(Chart.FontSize + 2.0, (look.Width - NameWidth - 40.0) / (2.2 * n));
                    TextAnnotation number = Chart.Words(FormattableString.Invariant($"{100.0 * value:0}"), column, y, HorizontalAlignment.Center, size);
                    number.TextColor = Palette.On(fill);
                    model.Annotations.Add(number);
                }
            }
        }

        return model;
    }

    /// <summary>Purple for lost, white for even, green for won; the numbers tell it in grey. The ends are no colours of lines, which a dark page changes: numbers on them would not change with them.</summary>
    /// <param name="share">Share of wins [1].</param>
    internal static OxyColor Shade(double share)
    {
        OxyColor end = share >= 0.5 ? s_won : s_lost;
        return OxyColor.Interpolate(OxyColor.FromRgb(250, 250, 250), end, Math.Min(1.0, 2.0 * Math.Abs(share - 0.5)));
    }

    private static string TitleOf(IReadOnlyList<(double Score, double Low, double High)> scores) => scores.Any(s => !double.IsFinite(s.Low) || !double.IsFinite(s.High)) ? OpenTitle : ScoreTitle;

    private static PlotModel Scores(PlotLook look, IReadOnlyList<string> robots, IReadOnlyList<(double Score, double Low, double High)> scores)
    {
        PlotModel model = Chart.Model(look, TitleOf(scores), NameWidth);
        model.Axes.Add(Chart.Axis(AxisPosition.Bottom, "Score [points]"));
        model.Axes.Add(Chart.WordAxis(look, AxisPosition.Left, "", [.. robots.Reverse()], NameWidth));
        var points = new ScatterSeries { MarkerType = MarkerType.Circle, MarkerSize = 5.0, MarkerFill = Palette.Ink };
        double[] ends = [.. scores.SelectMany(s => (double[])[s.Score, s.Low, s.High]).Where(double.IsFinite)];
        double room = OpenRoom * (ends.Max() - ends.Min());
        for (int i = 0; i < robots.Count; i++)
        {
            int y = robots.Count - 1 - i;
            (double score, double low, double high) = scores[i];
            model.Series.Add(Chart.Segment(double.IsFinite(low) ? low : score, y, double.IsFinite(high) ? high : score, y, Palette.Ink, 2.4));
            if (!double.IsFinite(low))
            {
                model.Series.Add(Open(ends.Min() - room, score, y));
            }

            if (!double.IsFinite(high))
            {
                model.Series.Add(Open(score, ends.Max() + room, y));
            }

            points.Points.Add(new ScatterPoint(score, y));
        }

        model.Series.Add(points);
        return model;
    }

    private static LineSeries Open(double from, double to, int y)
    {
        LineSeries line = Chart.Segment(from, y, to, y, Palette.Ink, 1.6);
        line.LineStyle = LineStyle.Dot;
        return line;
    }
}
