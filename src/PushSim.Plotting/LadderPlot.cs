using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace PushSim.Plotting;

/// <summary>The picture of a league: a square of win shares, and the scores with their intervals.</summary>
public static class LadderPlot
{
    /// <summary>The picture; robots in the order of the ranking.</summary>
    /// <param name="robots">Names.</param>
    /// <param name="winShares">Win share of row over column [1]; null on the diagonal.</param>
    /// <param name="scores">Score and its interval [points].</param>
    public static PlotSheet Of(IReadOnlyList<string> robots, IReadOnlyList<IReadOnlyList<double?>> winShares, IReadOnlyList<(double Score, double Low, double High)> scores) =>
        new([(Square(robots, winShares), 150 + (62 * robots.Count)), (Scores(robots, scores), 110 + (34 * robots.Count))]);

    private static PlotModel Square(IReadOnlyList<string> robots, IReadOnlyList<IReadOnlyList<double?>> shares)
    {
        int n = robots.Count;
        PlotModel model = Chart.Model("Matches won by the robot on the left against the one below [%]", left: 150);
        model.Axes.Add(Chart.WordAxis(AxisPosition.Bottom, "against", robots));
        model.Axes.Add(Chart.WordAxis(AxisPosition.Left, "wins of", [.. robots.Reverse()]));
        for (int row = 0; row < n; row++)
        {
            for (int column = 0; column < n; column++)
            {
                int y = n - 1 - row;
                double? share = shares[row][column];
                OxyColor fill = share is double s ? Shade(s) : OxyColor.FromRgb(235, 235, 235);
                model.Annotations.Add(new RectangleAnnotation
                {
                    MinimumX = column - 0.5, MaximumX = column + 0.5, MinimumY = y - 0.5, MaximumY = y + 0.5, Fill = fill, Stroke = OxyColors.White, StrokeThickness = 2.0,
                });
                if (share is double value)
                {
                    model.Annotations.Add(new TextAnnotation
                    {
                        Text = FormattableString.Invariant($"{100.0 * value:0}"), TextPosition = new DataPoint(column, y), TextVerticalAlignment = VerticalAlignment.Middle, StrokeThickness = 0.0,
                        FontSize = Chart.FontSize + 2.0, TextColor = Math.Abs(value - 0.5) > 0.3 ? OxyColors.White : OxyColors.Black,
                    });
                }
            }
        }

        return model;
    }

    // orange for lost, white for even, blue for won
    private static OxyColor Shade(double share)
    {
        OxyColor end = share >= 0.5 ? Palette.Colour(0) : Palette.Colour(1);
        return OxyColor.Interpolate(OxyColors.White, end, Math.Min(1.0, 2.0 * Math.Abs(share - 0.5)));
    }

    private static PlotModel Scores(IReadOnlyList<string> robots, IReadOnlyList<(double Score, double Low, double High)> scores)
    {
        PlotModel model = Chart.Model("Score with 95 % interval", left: 150);
        model.Axes.Add(Chart.Axis(AxisPosition.Bottom, "Score [points; 400 more are odds of ten to one]"));
        model.Axes.Add(Chart.WordAxis(AxisPosition.Left, "", [.. robots.Reverse()]));
        var points = new ScatterSeries { MarkerType = MarkerType.Circle, MarkerSize = 5.0, MarkerFill = Palette.Colour(0) };
        for (int i = 0; i < robots.Count; i++)
        {
            int y = robots.Count - 1 - i;
            var line = new LineSeries { Color = Palette.Colour(0), StrokeThickness = 2.4 };
            line.Points.Add(new DataPoint(scores[i].Low, y));
            line.Points.Add(new DataPoint(scores[i].High, y));
            model.Series.Add(line);
            points.Points.Add(new ScatterPoint(scores[i].Score, y));
        }

        model.Series.Add(points);
        return model;
    }
}
