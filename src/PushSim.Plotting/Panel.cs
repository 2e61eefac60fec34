using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Legends;
using OxyPlot.Series;
using PushSim.Simulation;

namespace PushSim.Plotting;

/// <summary>One panel of a picture: some channels against time (or one against another), with marks.</summary>
internal sealed class Panel
{
    // Points kept per line: two (least and greatest) for each of about as many columns as a picture is wide.
    private const int Columns = 450;

    private const double FontSize = 14.0;

    private readonly PlotModel _model;
    private readonly List<double> _values = [];
    private int _lines;

    public Panel(string title, string xTitle, string yTitle)
    {
        _model = new PlotModel
        {
            Title = title,
            TitleFontSize = FontSize + 1.0,
            TitleFontWeight = FontWeights.Bold,
            TitleHorizontalAlignment = TitleHorizontalAlignment.CenteredWithinView,
            DefaultFont = "DejaVu Sans",
            DefaultFontSize = FontSize,
            Background = OxyColors.White,
            PlotAreaBorderColor = OxyColor.FromRgb(150, 150, 150),
            Padding = new OxyThickness(6, 6, 6, 4),

            // the same left and right edge in every panel, so that time lines up
            PlotMargins = new OxyThickness(66, double.NaN, 18, double.NaN),
            Culture = System.Globalization.CultureInfo.InvariantCulture,
        };
        _model.Axes.Add(Axis(AxisPosition.Bottom, xTitle));
        _model.Axes.Add(Axis(AxisPosition.Left, yTitle));
        _model.Legends.Add(new Legend
        {
            LegendPlacement = LegendPlacement.Outside,
            LegendPosition = LegendPosition.TopCenter,
            LegendOrientation = LegendOrientation.Horizontal,
            LegendFontSize = FontSize - 1.0,
            LegendSymbolLength = 36,
            LegendPadding = 2,
            LegendMargin = 2,
        });
    }

    public PlotModel Model
    {
        get
        {
            KeepNoiseFlat();
            return _model;
        }
    }

    public Panel Add(RunResult result, Channel channel, string? label = null, double scale = 1.0) =>
        Add(result.Time, channel.Values, label ?? channel.Label, scale);

    public Panel Add(double[] x, double[] y, string label, double scale = 1.0)
    {
        var series = new LineSeries
        {
            Title = label,
            Color = Palette.Colour(_lines),
            LineStyle = Palette.Dash(_lines),
            StrokeThickness = Palette.Width(_lines),
            LineJoin = LineJoin.Round,
        };
        series.Points.AddRange(Thin(x, y, scale));
        _values.AddRange(series.Points.Select(p => p.Y));
        _model.Series.Add(series);
        _lines++;
        return this;
    }

    public Panel AddPoints(IEnumerable<(double X, double Y)> points, string label)
    {
        var series = new ScatterSeries
        {
            Title = label, MarkerType = MarkerType.Circle, MarkerSize = 2.2, MarkerFill = OxyColors.White, MarkerStroke = OxyColors.Black, MarkerStrokeThickness = 1.0,
        };
        series.Points.AddRange(points.Select(p => new ScatterPoint(p.X, p.Y)));
        _model.Series.Add(series);
        return this;
    }

    /// <summary>A labelled line at a time.</summary>
    public Panel MarkTime(double time, string label)
    {
        _model.Annotations.Add(new LineAnnotation
        {
            Type = LineAnnotationType.Vertical, X = time, Text = label, Color = Palette.Mark, LineStyle = LineStyle.Dash, StrokeThickness = 1.2,
            TextColor = Palette.Mark, FontSize = FontSize - 2.0, TextLinePosition = 0.02, TextHorizontalAlignment = HorizontalAlignment.Left, TextOrientation = AnnotationTextOrientation.Vertical,
        });
        return this;
    }

    /// <summary>A labelled level over a span of time.</summary>
    public Panel MarkLevel(double from, double to, double value, string label)
    {
        _model.Annotations.Add(new LineAnnotation
        {
            Type = LineAnnotationType.Horizontal, Y = value, MinimumX = from, MaximumX = to, Text = label, Color = OxyColors.Black, LineStyle = LineStyle.Solid,
            StrokeThickness = 1.4, TextColor = OxyColors.Black, FontSize = FontSize - 1.0, TextLinePosition = 0.5, TextVerticalAlignment = VerticalAlignment.Bottom,
        });
        return this;
    }

    /// <summary>Equal scales on both axes, for paths on the floor.</summary>
    public Panel AsMap()
    {
        _model.PlotType = PlotType.Cartesian;
        return this;
    }

    private static LinearAxis Axis(AxisPosition position, string title) => new()
    {
        Position = position,
        Title = title,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = OxyColor.FromRgb(228, 228, 228),
        TicklineColor = OxyColor.FromRgb(150, 150, 150),
        MaximumPadding = position == AxisPosition.Left ? 0.06 : 0.0,
        MinimumPadding = position == AxisPosition.Left ? 0.06 : 0.0,
        MinimumMajorStep = 1e-12,
        MajorStep = double.NaN,
        IntervalLength = position == AxisPosition.Left ? 40 : 80,
    };

    // Rounding noise around a constant would fill the panel: open it to a tenth of the value at least.
    private void KeepNoiseFlat()
    {
        if (_values.Count == 0 || _model.PlotType == PlotType.Cartesian)
        {
            return;
        }

        double low = _values.Min();
        double high = _values.Max();
        double least = Math.Max(0.1 * Math.Max(Math.Abs(low), Math.Abs(high)), 1e-3);
        if (high - low < least)
        {
            double middle = 0.5 * (low + high);
            _model.Axes[1].Minimum = middle - least;
            _model.Axes[1].Maximum = middle + least;
        }
    }

    // Least and greatest value of each column of samples, in their order.
    private static List<DataPoint> Thin(double[] x, double[] y, double scale)
    {
        List<DataPoint> points = [];
        int width = Math.Max(1, x.Length / Columns);
        for (int start = 0; start < x.Length; start += width)
        {
            int end = Math.Min(x.Length, start + width);
            int low = start;
            int high = start;
            for (int i = start; i < end; i++)
            {
                low = y[i] < y[low] ? i : low;
                high = y[i] > y[high] ? i : high;
            }

            points.Add(new DataPoint(x[Math.Min(low, high)], scale * y[Math.Min(low, high)]));
            if (low != high)
            {
                points.Add(new DataPoint(x[Math.Max(low, high)], scale * y[Math.Max(low, high)]));
            }
        }

        if (points[^1].X < x[^1])
        {
            points.Add(new DataPoint(x[^1], scale * y[^1]));
        }

        return points;
    }
}
