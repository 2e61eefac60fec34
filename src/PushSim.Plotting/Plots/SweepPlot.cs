using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using PushSim.Analysis.Sweep;
using PushSim.Plotting.Drawing;
using PushSim.Simulation;
using PushSim.Words.Answers;

namespace PushSim.Plotting.Plots;

/// <summary>The picture of a sweep: a curve, dots over names, or a map with contours.</summary>
public static class SweepPlot
{
    private const int CurveHeight = 360;
    private const int MapHeight = 560;
    private const int Levels = 9;

    // Sizes of the numbers in the cells of a map that are tried [px], and the room that a cell has beside its number [px].
    private static readonly double[] s_sizes = [13.0, 12.0, 11.0, 10.0];
    private const double Beside = 4.0;

    // Above and below the area of a map: legend, numbers and title of the axis [px].
    private const double RoomAboveAndBelow = 110.0;

    // Line around the best cell [px].
    private const double BestThickness = 3.0;

    private static readonly OxyColor s_least = OxyColor.FromRgb(252, 250, 252);
    private static readonly OxyColor s_most = OxyColor.FromRgb(176, 128, 166);

    // Share of the way to the line from which on it is drawn [1].
    private const double NearLine = 0.6;

    // Numbers on a vertical axis, about [1].
    private const double Ticks = 5.0;

    /// <summary>One input: a curve of each asked quantity with its best point and the range that is as good.</summary>
    /// <param name="input">The input.</param>
    /// <param name="curves">Title of the axis, values (null where there is none), the intervals if there are any, the best if there is one.</param>
    /// <param name="shove">Rule of the shoves, drawn with the ground gained; null for none.</param>
    public static PlotSheet OfOne(SweepInput input, IReadOnlyList<(string Title, IReadOnlyList<double?> Values, IReadOnlyList<(double Low, double High)?>? Intervals, Optimum? Best)> curves, ShoveSettings? shove = null) => new(
        [.. curves.Select(c => new ChartDrawing(
            CurveTitle(input, c.Title),
            Words(CurveTitle(input, c.Title), c.Values, c.Best is Optimum b ? input.Texts[b.Index] : null),
            CurveHeight,
            look => One(look, input, c.Title, c.Values, c.Intervals, c.Best, c.Title == SweepTable.Ground ? shove : null)))]);

    /// <summary>Two inputs: a map of each asked quantity.</summary>
    /// <param name="across">Input along the horizontal axis.</param>
    /// <param name="up">Input along the vertical axis.</param>
    /// <param name="maps">Title and values by (across, up); null where there is none.</param>
    public static PlotSheet OfTwo(SweepInput across, SweepInput up, IReadOnlyList<(string Title, double?[,] Values, (int Across, int Up)? Best)> maps) => new(
        [.. maps.Select(m => new ChartDrawing(
            KeyWords.Of(m.Title),
            Words($"{KeyWords.Of(m.Title)} over {across.Key} and {up.Key}", [.. m.Values.Cast<double?>()], m.Best is (int i, int j) ? $"{across.Texts[i]}, {up.Texts[j]}" : null),
            MapHeight,
            look => Two(look, across, up, m.Title, m.Values, m.Best)))]);

    private static string CurveTitle(SweepInput input, string title) => $"{KeyWords.Of(title)} against {input.Key}";

    private static string Words(string what, IReadOnlyList<double?> values, string? best) => FormattableString.Invariant(
        $"Plot: {what}: from {Figure(values.Where(v => v is not null).Min())} to {Figure(values.Where(v => v is not null).Max())}{(best is null ? "" : $"; best at {best}")}.");

    private static string Figure(double? value) => value is double v ? PlainNumber.Of(v, 4) : "-";

    private static string AxisTitle(SweepInput input) => input.Numbers is null ? input.Key : $"{input.Key} [{(input.Unit.Length == 0 ? "1" : input.Unit)}]";

    internal static PlotModel One(PlotLook look, SweepInput input, string title, IReadOnlyList<double?> values, IReadOnlyList<(double Low, double High)?>? intervals, Optimum? best, ShoveSettings? shove = null)
    {
        PlotModel model = Chart.Model(look, CurveTitle(input, title), NumberWidth([.. values.OfType<double>(), .. intervals?.OfType<(double Low, double High)>().SelectMany(i => new[] { i.Low, i.High }) ?? []]));
        double[] x = Positions(input);
        model.Axes.Add(input.Numbers is null ? Chart.WordAxis(look, AxisPosition.Bottom, AxisTitle(input), input.Texts) : Chart.Axis(AxisPosition.Bottom, AxisTitle(input)));
        LinearAxis vertical = Chart.Axis(AxisPosition.Left, KeyWords.Of(title));
        vertical.MaximumPadding = 0.12;
        vertical.MinimumPadding = 0.08;
        model.Axes.Add(vertical);
        if (shove is not null)
        {
            AddRule(model, vertical, shove, [.. values.OfType<double>()]);
        }

        if (best is not null && input.Numbers is not null)
        {
            model.Annotations.Add(new RectangleAnnotation { MinimumX = best.Low, MaximumX = best.High, Fill = OxyColor.FromAColor(40, Palette.Line(1)), Layer = AnnotationLayer.BelowSeries });
        }

        var line = new LineSeries
        {
            Color = Palette.Ink, StrokeThickness = input.Numbers is null ? 0.0 : 2.4, MarkerType = MarkerType.Circle, MarkerSize = input.Numbers is null ? 6.0 : 3.5, MarkerFill = Palette.Ink,
        };
        line.Points.AddRange(values.Select((v, i) => new DataPoint(x[i], v ?? double.NaN)));
        for (int i = 0; intervals is not null && i < intervals.Count; i++)
        {
            if (intervals[i] is (double low, double high))
            {
                model.Series.Add(Chart.Segment(x[i], low, x[i], high, Palette.Grey, 1.6));
            }
        }

        model.Series.Add(line);
        if (best is not null)
        {
            model.Annotations.Add(new PointAnnotation
            {
                X = x[best.Index], Y = best.Value, Shape = MarkerType.Diamond, Size = 8, Fill = Palette.Ink, Text = "best", FontSize = Chart.FontSize - 1.0,
                TextVerticalAlignment = VerticalAlignment.Bottom,
                TextHorizontalAlignment = best.Index == 0 ? HorizontalAlignment.Left : best.Index == values.Count - 1 ? HorizontalAlignment.Right : HorizontalAlignment.Center,
            });
        }

        return model;
    }

    // The band in which nobody wins and, where shoves come near them, the lines.
    private static void AddRule(PlotModel model, LinearAxis vertical, ShoveSettings shove, double[] ground)
    {
        double[] lines = [.. new[] { -shove.Line, shove.Line }.Where(line => Array.Exists(ground, g => g / line > NearLine))];
        double[] shown = [.. ground, .. lines, -shove.DecidingGround, shove.DecidingGround];
        (vertical.Minimum, vertical.Maximum) = (shown.Min() - (vertical.MinimumPadding * (shown.Max() - shown.Min())), shown.Max() + (vertical.MaximumPadding * (shown.Max() - shown.Min())));
        model.Annotations.Add(new RectangleAnnotation
        {
            MinimumY = -shove.DecidingGround, MaximumY = shove.DecidingGround, Fill = OxyColor.FromAColor(60, Palette.Grey), Layer = AnnotationLayer.BelowSeries,
            Text = "stalemate", FontSize = Chart.FontSize - 2.0, TextColor = Palette.Mark,
        });
        foreach (double line in lines)
        {
            model.Annotations.Add(new LineAnnotation { Type = LineAnnotationType.Horizontal, Y = line, Color = Palette.Mark, LineStyle = LineStyle.Dash, StrokeThickness = 1.2, Text = "line", FontSize = Chart.FontSize - 2.0, TextColor = Palette.Mark });
        }
    }

    // Room for the numbers of a vertical axis [px]: values that lie close together have many decimals.
    private static double NumberWidth(double[] values)
    {
        double span = values.Length == 0 ? 0.0 : values.Max() - values.Min();
        if (!(span > 0.0))
        {
            return 0.0;
        }

        string format = "F" + Math.Clamp((int)Math.Ceiling(-Math.Log10(span / Ticks)), 0, 9).ToString(CultureInfo.InvariantCulture);
        return Chart.RoomFor([.. new[] { values.Min(), values.Max() }.Select(v => v.ToString(format, CultureInfo.InvariantCulture))]);
    }

    internal static PlotModel Two(PlotLook look, SweepInput across, SweepInput up, string title, double?[,] values, (int Across, int Up)? best)
    {
        PlotModel model = Chart.Model(look, KeyWords.Of(title), NameWidth(up));
        (double[] x, double[] y) = (Positions(across), Positions(up));
        model.Axes.Add(MapAxis(look, AxisPosition.Bottom, across));
        model.Axes.Add(MapAxis(look, AxisPosition.Left, up));
        double low = values.Cast<double?>().Min() ?? double.PositiveInfinity;
        double high = values.Cast<double?>().Max() ?? double.NegativeInfinity;
        double[,] z = new double[x.Length, y.Length];
        for (int i = 0; i < x.Length; i++)
        {
            for (int j = 0; j < y.Length; j++)
            {
                z[i, j] = values[i, j] ?? double.NaN;
            }
        }

        // numbers in the cells say it all: lines without names would only strike them through
        double size = NumberSize(look, model, x, y, z);
        for (int i = 0; i < x.Length; i++)
        {
            for (int j = 0; j < y.Length; j++)
            {
                AddCell(model, (x, i), (y, j), z[i, j], low, high, best == (i, j));
                if (size > 0.0 && !double.IsNaN(z[i, j]))
                {
                    TextAnnotation number = Chart.Words(Number(z[i, j]), x[i], y[j], HorizontalAlignment.Center, size);
                    number.TextColor = Palette.OnShade;
                    model.Annotations.Add(number);
                }
            }
        }

        if (size == 0.0 && high >= low)
        {
            model.Series.Add(Chart.Key("least " + Number(low), s_least, Palette.Mark));
            model.Series.Add(Chart.Key("most " + Number(high), s_most, Palette.Mark));
        }

        if (size == 0.0 && across.Numbers is not null && up.Numbers is not null && high > low && x.Length > 2 && y.Length > 2)
        {
            double step = StepOf(low, high);
            model.Series.Add(new ContourSeries
            {
                ColumnCoordinates = x, RowCoordinates = y, Data = z, Color = Palette.OnShade, StrokeThickness = 1.2, ContourLevels = LevelsOf(low, high, step),
                LabelFormatString = "0.######", LabelStep = 1000000,
            });

            // contours have no entry in the legend: a line without points has
            model.Series.Add(new LineSeries { Title = "a line every " + Number(step), Color = Palette.Mark, StrokeThickness = 1.2 });
        }

        if (best is (int bi, int bj))
        {
            model.Series.Add(Chart.Key("best " + Number(z[bi, bj]), OxyColors.Transparent, Palette.Ink, BestThickness));
        }

        return model;
    }

    private static string Number(double value) => PlainNumber.Of(value, 3);

    // Size of the numbers that fit into every cell [px]; zero where none does.
    private static double NumberSize(PlotLook look, PlotModel model, double[] x, double[] y, double[,] z)
    {
        double width = Narrowest(x) * (look.Width - model.PlotMargins.Left - model.PlotMargins.Right - model.Padding.Left - model.Padding.Right);
        double height = Narrowest(y) * (MapHeight - RoomAboveAndBelow);
        string[] texts = [.. z.Cast<double>().Where(double.IsFinite).Select(Number)];
        return s_sizes.FirstOrDefault(size => height > size + Beside && texts.All(t => PlotFont.Width(t, size) + Beside <= width));
    }

    // The narrowest cell, as a share of all [1].
    private static double Narrowest(double[] at) => Enumerable.Range(0, at.Length).Min(i => Math.Abs(Edge(at, i, 1) - Edge(at, i, -1)))
        / Math.Abs(Edge(at, at.Length - 1, 1) - Edge(at, 0, -1));

    // Places of the values along an axis: the numbers themselves, or 0, 1, 2, ... for names.
    private static double[] Positions(SweepInput input) => input.Numbers is null ? [.. Enumerable.Range(0, input.Texts.Count).Select(i => (double)i)] : [.. input.Numbers];

    // Room for names beside a map [px].
    private static double NameWidth(SweepInput input) => input.Numbers is null ? Chart.RoomFor(input.Texts) : 0.0;

    private static LinearAxis MapAxis(PlotLook look, AxisPosition position, SweepInput input)
    {
        if (input.Numbers is null)
        {
            return Chart.WordAxis(look, position, AxisTitle(input), input.Texts, position == AxisPosition.Left ? NameWidth(input) : 0.0);
        }

        LinearAxis axis = Chart.Axis(position, AxisTitle(input));
        (axis.MinimumPadding, axis.MaximumPadding) = (0.0, 0.0);
        (double[] at, int last) = (Positions(input), input.Texts.Count - 1);
        axis.Minimum = Math.Min(Edge(at, 0, -1), Edge(at, last, 1));
        axis.Maximum = Math.Max(Edge(at, 0, -1), Edge(at, last, 1));
        axis.MajorGridlineStyle = LineStyle.None;
        return axis;
    }

    private static void AddCell(PlotModel model, (double[] At, int I) x, (double[] At, int I) y, double value, double low, double high, bool isBest)
    {
        if (double.IsNaN(value))
        {
            return;
        }

        double share = high > low ? (value - low) / (high - low) : 0.5;
        model.Annotations.Add(Cell(OxyColor.Interpolate(s_least, s_most, share), AnnotationLayer.BelowSeries));
        if (isBest)
        {
            RectangleAnnotation frame = Cell(OxyColors.Transparent, AnnotationLayer.AboveSeries);
            (frame.Stroke, frame.StrokeThickness) = (Palette.Ink, BestThickness);
            model.Annotations.Add(frame);
        }

        RectangleAnnotation Cell(OxyColor fill, AnnotationLayer layer)
        {
            (double left, double right) = Ends(x.At, x.I);
            (double bottom, double top) = Ends(y.At, y.I);
            return Chart.Box(left, right, bottom, top, fill, layer);
        }

        static (double Low, double High) Ends(double[] at, int i) => (Math.Min(Edge(at, i, -1), Edge(at, i, 1)), Math.Max(Edge(at, i, -1), Edge(at, i, 1)));
    }

    // Half way to the neighbour, or as far as to the other neighbour at an end.
    private static double Edge(double[] at, int i, int side)
    {
        int j = i + side;
        double half = at.Length == 1 ? 0.5 * side : j >= 0 && j < at.Length ? 0.5 * (at[j] - at[i]) : 0.5 * (at[i] - at[i - side]);
        return at[i] + half;
    }

    // A round step from level to level.
    private static double StepOf(double low, double high)
    {
        double raw = (high - low) / Levels;
        double power = Math.Pow(10.0, Math.Floor(Math.Log10(raw)));
        return power * (raw / power < 1.5 ? 1.0 : raw / power < 3.5 ? 2.0 : raw / power < 7.5 ? 5.0 : 10.0);
    }

    private static double[] LevelsOf(double low, double high, double step)
    {
        List<double> levels = [];
        for (double level = Math.Ceiling(low / step) * step; level < high; level += step)
        {
            levels.Add(Math.Abs(level) < 1e-9 * step ? 0.0 : level);
        }

        return [.. levels];
    }
}
