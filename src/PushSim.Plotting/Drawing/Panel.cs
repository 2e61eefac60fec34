using OxyPlot.Axes;
using OxyPlot.Legends;
using OxyPlot.Series;

namespace PushSim.Plotting.Drawing;

/// <summary>One panel of a picture: some series against time (or one against another), with marks.</summary>
internal sealed partial class Panel
{
    private const string TimeTitle = "Time [s]";

    // Letters of a title that fit into 900 px [1].
    private const int LongestTitle = 80;

    private readonly PlotModel _model;
    private readonly List<Curve> _curves = [];
    private readonly List<PlotLabel> _labels = [];

    private readonly List<Curve> _thin = [];

    // lines that the vertical axis must reach
    private readonly List<double> _levels = [];
    private readonly List<Series> _over = [];

    /// <summary>An empty panel.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="xTitle">Quantity and unit of the horizontal axis.</param>
    /// <param name="yTitle">Quantity and unit of the vertical axis.</param>
    public Panel(string title, string xTitle, string yTitle)
    {
        Title = PlainLabel.Of(title, LongestTitle);
        _model = Chart.Empty(Title);
        _model.Axes.Add(Axis(AxisPosition.Bottom, xTitle));
        _model.Axes.Add(Axis(AxisPosition.Left, yTitle));
        _model.Legends.OfType<Legend>().Single().LegendSymbolLength = 36;
    }

    /// <summary>An empty panel against time.</summary>
    /// <inheritdoc cref="Panel(string, string, string)"/>
    public static Panel OverTime(string title, string yTitle) => new(title, TimeTitle, yTitle);

    /// <summary>Whether its horizontal axis is time.</summary>
    public bool IsOverTime => XTitle == TimeTitle;

    /// <summary>What it shows.</summary>
    public string Title { get; }

    /// <summary>Quantity and unit of the horizontal axis.</summary>
    public string XTitle => _model.Axes[0].Title;

    /// <summary>Quantity and unit of the vertical axis; empty where it carries words.</summary>
    public string YTitle => _model.Axes[1].Title;

    /// <summary>Whether its curves are those of the two robots, which have hues of their own.</summary>
    private bool IsOfRobots { get; set; }

    /// <summary>How many usual panels high it is [1].</summary>
    public double Rows { get; private set; } = 1.0;

    /// <summary>What was added as curves.</summary>
    public IReadOnlyList<Curve> Curves => _curves;

    /// <summary>The panel with all that was added. Call once, at the end.</summary>
    public PlotModel Build(PlotLook look)
    {
        // the same left and right edge in every panel, so that time lines up; words need more room than numbers on a telephone
        KeepNoiseFlat();
        LayOutStrips(look);
        PlaceNames(look);
        TiltNames(look);
        double left = _model.Axes[1].LabelFormatter is null ? Math.Max(look.LeftMargin, NumberRoom()) : look.WordMargin;

        // names of bars on the left, or a scale of colours on the right, have made their own room already
        OxyThickness own = _model.PlotMargins;
        _model.PlotMargins = new OxyThickness(
            double.IsNaN(own.Left) ? left : Math.Max(left, own.Left), double.NaN,
            double.IsNaN(own.Right) ? PlotLook.RightMargin : Math.Max(PlotLook.RightMargin, own.Right), double.NaN);
        MakeRoomAtBarEnds(look);
        if (!look.HasTitle)
        {
            _model.Title = null;
        }

        List<Curve> drawn = Curve.MergeEqual(_curves, 2.0 * LeastSpan);
        for (int i = 0; i < drawn.Count; i++)
        {
            _model.Series.Add(Line(drawn[i], i));
        }

        _over.ForEach(_model.Series.Add);
        PlotLabel.PlaceAll(_model, _labels, [.. _curves, .. _thin], look.AreaWidth);
        return _model;
    }

    /// <summary>A curve; equal ones are drawn as one.</summary>
    /// <param name="x">Samples, horizontal, in the unit of the axis.</param>
    /// <param name="y">As many samples, vertical.</param>
    /// <param name="label">Words for the legend.</param>
    /// <param name="scale">Factor that brings the vertical ones to the unit of the axis.</param>
    public Panel Add(IReadOnlyList<double> x, IReadOnlyList<double> y, string label, double scale = 1.0)
    {
        _curves.Add(Curve.Of(PlainLabel.Of(label), x, y, scale));
        return this;
    }

    /// <summary>One of many like curves: thin and grey, named once.</summary>
    public Panel AddThin(IReadOnlyList<double> x, IReadOnlyList<double> y, string label)
    {
        var series = new LineSeries { Title = _model.Series.Any(s => s.Title == label) ? null : label, Color = Palette.Grey, StrokeThickness = 1.1 };
        series.Points.AddRange(x.Zip(y, (a, b) => new DataPoint(a, b)));
        _model.Series.Add(series);
        _thin.Add(Curve.Of(label, x, y, 1.0));
        return this;
    }

    /// <summary>Small circles, behind the curves; in the units of the axes.</summary>
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

    /// <summary>A line through given points, drawn a little above or below its values so that equal lines do not hide each other.</summary>
    public Panel AddSteps(IEnumerable<(double X, double Y)> points, string label, double shift)
    {
        int i = _model.Series.Count;
        var series = new LineSeries { Title = PlainLabel.Of(label), Color = IsOfRobots ? Palette.Robot(i) : Palette.Line(i), LineStyle = Palette.Dash(i), StrokeThickness = 3.0 };
        series.Points.AddRange(points.Select(p => new DataPoint(p.X, p.Y + shift)));
        _model.Series.Add(series);
        return this;
    }

    /// <summary>A line in pieces, drawn over all curves; a point with NaN ends a piece.</summary>
    public Panel AddPieces(IEnumerable<(double X, double Y)> points, string label, OxyColor? colour = null)
    {
        var series = new LineSeries { Title = label, Color = colour ?? Palette.Line(1), StrokeThickness = 2.6, LineStyle = LineStyle.Solid };
        series.Points.AddRange(points.Select(p => new DataPoint(p.X, p.Y)));
        _over.Add(series);
        return this;
    }

    /// <summary>Names in place of the numbers 0, 1, 2, ... of the horizontal axis; the vertical one starts at zero.</summary>
    public Panel WithNames(IReadOnlyList<string> names)
    {
        Chart.SetWords(_model.Axes[0], names);
        _names = names;
        _model.Axes[1].Minimum = 0.0;
        Rows = 1.6;
        return this;
    }

    /// <summary>Words in place of the numbers 0, 1, 2, ... of the vertical axis.</summary>
    public Panel WithWords(string[] words)
    {
        Chart.SetWords(_model.Axes[1], words);
        _model.Axes[0].Minimum = 0.0;
        return this;
    }

    /// <summary>A curve that swings faster than a picture shows: its mean as a curve, the band it swings in shaded behind it. One that does not is drawn as it is.</summary>
    /// <inheritdoc cref="Add"/>
    public Panel AddEnvelope(IReadOnlyList<double> x, IReadOnlyList<double> y, string label)
    {
        if (Envelope.Of(x, y) is not { } e)
        {
            return Add(x, y, label);
        }

        // the means end half a swing early: all panels over time have one axis
        SetEnds(_model.Axes[0], x[0], x[^1]);
        var band = new AreaSeries { Title = FormattableString.Invariant($"swings, about {e.Frequency:0} Hz"), Color = OxyColors.Transparent, Color2 = OxyColors.Transparent, Fill = OxyColor.FromAColor(70, Palette.Grey), StrokeThickness = 0.0 };
        band.Points.AddRange(e.Time.Select((t, i) => new DataPoint(t, e.High[i])));
        band.Points2.AddRange(e.Time.Select((t, i) => new DataPoint(t, e.Low[i])));
        _model.Series.Add(band);
        return Add(e.Time, e.Mean, $"{label}, mean");
    }

    /// <summary>Adds filled squares with words to the legend.</summary>
    public Panel WithKey(IReadOnlyList<(string Words, OxyColor Colour)> entries)
    {
        foreach ((string words, OxyColor colour) in entries)
        {
            _model.Series.Add(Chart.Key(words, colour, Palette.Mark));
        }

        return this;
    }

    /// <summary>Ends of the vertical axis, what lies beyond is cut off; an end that is not given follows the values.</summary>
    public Panel WithRange(double low, double high = double.NaN)
    {
        _model.Axes[1].Minimum = low;
        _model.Axes[1].Maximum = high;
        return this;
    }

    /// <summary>Ends of the horizontal axis; an end that is not given follows the values.</summary>
    public Panel WithSpan(double low, double high = double.NaN)
    {
        _model.Axes[0].Minimum = low;
        _model.Axes[0].Maximum = high;
        return this;
    }

    /// <summary>Its curves are those of the robots, the first one's first.</summary>
    public Panel OfRobots()
    {
        IsOfRobots = true;
        return this;
    }

    /// <summary>How many usual panels high.</summary>
    public Panel WithRows(double rows)
    {
        Rows = rows;
        return this;
    }

    /// <summary>Some room left and right of the curves.</summary>
    public Panel WithoutFill()
    {
        _model.Axes[0].MinimumPadding = 0.05;
        _model.Axes[0].MaximumPadding = 0.08;
        return this;
    }

    /// <summary>Whatever else the picture needs.</summary>
    public Panel With(Action<PlotModel> change)
    {
        change(_model);
        return this;
    }

    /// <summary>Equal scales on both axes, for paths on the floor.</summary>
    /// <param name="rows">How many usual panels high.</param>
    public Panel AsMap(double rows = 1.0)
    {
        Rows = rows;
        _model.PlotType = PlotType.Cartesian;
        _model.Axes[0].MinimumPadding = 0.04;
        _model.Axes[0].MaximumPadding = 0.04;
        return this;
    }

    private static LinearAxis Axis(AxisPosition position, string title)
    {
        LinearAxis axis = Chart.Axis(position, title);
        axis.MaximumPadding = axis.MinimumPadding = position == AxisPosition.Left ? 0.06 : 0.0;
        axis.MinimumMajorStep = 1e-12;
        axis.IntervalLength = position == AxisPosition.Left ? 40 : 80;
        return axis;
    }

    private LineSeries Line(Curve curve, int i)
    {
        var series = new LineSeries
        {
            Title = curve.Label,
            Color = IsOfRobots ? Palette.Robot(i) : Palette.Line(i),
            LineStyle = Palette.Dash(i),
            StrokeThickness = Palette.Width(i),
            LineJoin = LineJoin.Round,
        };
        series.Points.AddRange(curve.Points);
        return series;
    }
}
