using OxyPlot.Axes;
using OxyPlot.Series;
using PushSim.Analysis.Turning;
using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>The picture of a stability map: growth as colour, its border as a line, the ring criterion's as a dashed one, simulated points over it.</summary>
public static class StabilityMapPlot
{
    private const double Rows = 2.2;

    // Growth beyond this is drawn like it [1/s].
    private const double Strongest = 100.0;

    // From quiet to loud, ever darker: neither hue is a robot's.
    private static readonly OxyColor s_quiet = OxyColor.FromRgb(250, 250, 245);
    private static readonly OxyColor s_border = OxyColor.FromRgb(205, 190, 150);
    private static readonly OxyColor s_loud = OxyColor.FromRgb(140, 60, 110);

    /// <summary>The picture.</summary>
    /// <param name="map">The map.</param>
    /// <param name="xTitle">First input with its unit.</param>
    /// <param name="yTitle">Second input with its unit.</param>
    public static PlotSheet Of(StabilityMap map, string xTitle, string yTitle) =>
        new(() => [new Panel("Where the turn chatters by itself", xTitle, yTitle).WithRows(Rows).With(m => Fill(m, map))]);

    private static void Fill(PlotModel model, StabilityMap map)
    {
        model.Axes[0] = AxisOf(model.Axes[0], map.X);
        model.Axes[1] = AxisOf(model.Axes[1], map.Y);
        model.Axes.Add(new LinearColorAxis
        {
            Position = AxisPosition.Right, Minimum = -Scale(Strongest), Maximum = Scale(Strongest), MajorStep = 0.5 * Scale(Strongest), MinorTickSize = 0.0,
            LabelFormatter = v => Math.Sinh(v).ToString("0", CultureInfo.InvariantCulture), Title = "Growth of a small swing [1/s]",
            Palette = OxyPalette.Interpolate(200, s_quiet, s_border, s_loud), HighColor = s_loud, LowColor = s_quiet, TitleFontSize = 13.0,
        });
        model.PlotMargins = new OxyThickness(84, double.NaN, 84, double.NaN);
        model.PlotAreaBackground = OxyColor.FromRgb(215, 215, 215);
        var cells = new RectangleSeries { LabelFontSize = 0.0, CanTrackerInterpolatePoints = false };
        double[] xEdges = Edges(map.X);
        double[] yEdges = Edges(map.Y);
        foreach ((int i, int j, StabilityPoint p) in Cells(map).Where(c => double.IsFinite(c.Point.Growth)))
        {
            cells.Items.Add(new RectangleItem(xEdges[i], xEdges[i + 1], yEdges[j], yEdges[j + 1], Scale(Math.Clamp(p.Growth, -Strongest, Strongest))));
        }

        model.Series.Add(cells);
        AddBorder(model, map, p => Scale(p.Growth), 0.0, "border of chatter", LineStyle.Solid);
        AddBorder(model, map, p => p.RingMargin - 1.0, 0.0, "tread ring alone", LineStyle.Dash);
        AddPoints(model, map, true, "simulation grows", MarkerType.Triangle, Palette.OnShade);
        AddPoints(model, map, false, "simulation dies out", MarkerType.Circle, OxyColor.FromRgb(254, 254, 254));
    }

    private static IEnumerable<(int I, int J, StabilityPoint Point)> Cells(StabilityMap map) =>
        from i in Enumerable.Range(0, map.X.Length) from j in Enumerable.Range(0, map.Y.Length) where map.Points[i, j] is not null select (i, j, map.Points[i, j]!);

    // Swings die out at a few per second at most and may grow at hundreds: both must show.
    private static double Scale(double growth) => Math.Asinh(growth);

    private static Axis AxisOf(Axis plain, double[] values)
    {
        Axis axis = StabilityMap.IsLogarithmic(values[0], values[^1]) ? new LogarithmicAxis() : new LinearAxis();
        axis.Position = plain.Position;
        axis.Title = plain.Title;
        axis.AxisTitleDistance = plain.AxisTitleDistance;
        axis.TicklineColor = plain.TicklineColor;
        double[] edges = Edges(values);
        axis.Minimum = Math.Min(edges[0], edges[^1]);
        axis.Maximum = Math.Max(edges[0], edges[^1]);
        return axis;
    }

    // Half-way between the values, on the axis' own scale.
    private static double[] Edges(double[] v)
    {
        bool isLog = StabilityMap.IsLogarithmic(v[0], v[^1]);
        double[] t = [.. v.Select(a => isLog ? Math.Log(a) : a)];
        double[] edges = new double[v.Length + 1];
        for (int i = 0; i <= v.Length; i++)
        {
            edges[i] = i == 0 ? t[0] - (0.5 * (t[1] - t[0])) : i == v.Length ? t[^1] + (0.5 * (t[^1] - t[^2])) : 0.5 * (t[i - 1] + t[i]);
        }

        return [.. edges.Select(e => isLog ? Math.Exp(e) : e)];
    }

    private static void AddBorder(PlotModel model, StabilityMap map, Func<StabilityPoint, double> of, double level, string label, LineStyle style)
    {
        double[,] data = new double[map.X.Length, map.Y.Length];
        for (int i = 0; i < map.X.Length; i++)
        {
            for (int j = 0; j < map.Y.Length; j++)
            {
                data[i, j] = map.Points[i, j] is { } p ? of(p) : double.NaN;
            }
        }

        model.Series.Add(new ContourSeries
        {
            ColumnCoordinates = map.X, RowCoordinates = map.Y, Data = data, ContourLevels = [level], LabelStep = 0, LineStyle = style, StrokeThickness = 2.4,
            ContourColors = [Palette.OnShade], Color = Palette.OnShade, LabelBackground = OxyColors.Undefined, FontSize = 0.1, TextColor = OxyColors.Transparent,
        });

        // contours have no entry in the legend: a line without points has
        model.Series.Add(new LineSeries { Title = label, Color = Palette.OnShade, LineStyle = style, StrokeThickness = 2.4 });
    }

    private static void AddPoints(PlotModel model, StabilityMap map, bool grows, string label, MarkerType marker, OxyColor fill)
    {
        // a scatter series would take its colours from the axis of the growth
        var series = new LineSeries { Title = label, Color = OxyColors.Transparent, LineStyle = LineStyle.None, MarkerType = marker, MarkerSize = 5.5, MarkerFill = fill, MarkerStroke = Palette.OnShade, MarkerStrokeThickness = 1.2 };
        series.Points.AddRange(Cells(map).Where(c => c.Point.Simulated == grows).Select(c => new DataPoint(map.X[c.I], map.Y[c.J])));
        model.Series.Add(series);
    }
}
