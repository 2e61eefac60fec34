using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Legends;
using OxyPlot.Series;

namespace PushSim.Plotting.Drawing;

/// <summary>Looks shared by all pictures, and the parts of those that are no panels.</summary>
internal static class Chart
{
    /// <summary>Usual size of letters [px].</summary>
    public const double FontSize = 14.0;

    // Width of a letter in the middle [px], and the largest share of the width that names beside a chart may take [1].
    private const double Letter = 7.4;
    private const double MostOfWidth = 0.38;

    // Half of a cap at the end of an interval, in steps from bar to bar [1].
    private const double CapHalf = 0.14;

    // Of a vertical axis' title with the blanks to both sides [px].
    private const double TitleRoom = 34.0;

    /// <summary>An empty picture in the usual look, its legend above it.</summary>
    /// <param name="title">Its title; null for none.</param>
    public static PlotModel Empty(string? title)
    {
        var model = new PlotModel
        {
            Title = title,
            TitleFontSize = FontSize + 2.0,
            TitleFontWeight = FontWeights.Normal,
            TitleHorizontalAlignment = TitleHorizontalAlignment.CenteredWithinView,
            DefaultFont = PlotFont.Family,
            DefaultFontSize = FontSize,
            Background = OxyColors.White,
            PlotAreaBorderColor = Palette.Rule,
            Padding = new OxyThickness(PlotLook.Padding, 6, PlotLook.Padding, 4),
            Culture = CultureInfo.InvariantCulture,
        };
        model.Legends.Add(new Legend
        {
            LegendPlacement = LegendPlacement.Outside,
            LegendPosition = LegendPosition.TopCenter,
            LegendOrientation = LegendOrientation.Horizontal,
            LegendFontSize = FontSize - 1.0,
            LegendPadding = 2,
            LegendMargin = 2,
        });
        return model;
    }

    /// <summary>An empty chart.</summary>
    /// <param name="look">Where it is shown.</param>
    /// <param name="title">Its title; left out where a page prints it.</param>
    /// <param name="left">Room asked for beside it [px].</param>
    public static PlotModel Model(PlotLook look, string title, double left = 0.0)
    {
        PlotModel model = Empty(look.HasTitle ? title : null);
        model.PlotMargins = new OxyThickness(LeftMargin(look, left), double.NaN, 26, double.NaN);
        return model;
    }

    /// <summary>An axis with numbers.</summary>
    public static LinearAxis Axis(AxisPosition position, string title) => new()
    {
        Position = position,
        Title = title,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = Palette.Grid,
        TicklineColor = Palette.Rule,
        AxisTitleDistance = 10,
        MaximumPadding = 0.02,
        MinimumPadding = 0.02,
        IntervalLength = position is AxisPosition.Left ? 45 : 80,
    };

    /// <summary>Words at 0, 1, 2, ... in place of numbers, shortened or upright where they would not fit.</summary>
    /// <param name="look">Where it is shown.</param>
    /// <param name="position">Side of the chart.</param>
    /// <param name="title">Title of the axis.</param>
    /// <param name="words">The words.</param>
    /// <param name="left">Room beside the chart, as given to <see cref="Model"/> [px].</param>
    public static LinearAxis WordAxis(PlotLook look, AxisPosition position, string title, IReadOnlyList<string> words, double left = 0.0)
    {
        bool isBelow = position == AxisPosition.Bottom;
        double room = isBelow ? (look.Width - LeftMargin(look, left) - 40.0) / words.Count : LeftMargin(look, left) - (title.Length > 0 ? TitleRoom : 12.0);
        bool isTight = words.Max(w => PlotFont.Width(w, FontSize)) > room;

        // beside the chart the end of a name says more than its beginning; below it there is room for the whole of it upright
        string[] shown = [.. words.Select(w => isTight && !isBelow ? Ending(w, room) : w)];
        var axis = new LinearAxis { Position = position, Title = title, MajorTickSize = 0.0, AxisTitleDistance = 10, Angle = isTight && isBelow ? -90.0 : 0.0 };
        SetWords(axis, shown);
        return axis;
    }

    /// <summary>Puts words in place of the numbers 0, 1, 2, ... of an axis.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="words">The words, at least one.</param>
    /// <param name="edge">Room before the first and behind the last, in steps from word to word [1].</param>
    public static void SetWords(Axis axis, IReadOnlyList<string> words, double edge = 0.5)
    {
        axis.Minimum = -edge;
        axis.Maximum = words.Count - 1 + edge;
        axis.MajorStep = 1.0;
        axis.MinorTickSize = 0.0;
        axis.LabelFormatter = v => v >= 0.0 && v < words.Count && v == Math.Floor(v) ? words[(int)v] : "";
    }

    /// <summary>Room that the longest of some words and a title take beside a chart [px].</summary>
    public static double RoomFor(IReadOnlyList<string> words) => (words.Max(w => w.Length) * Letter) + TitleRoom + Letter;

    /// <summary>Words level with a point, in the usual size or another.</summary>
    public static TextAnnotation Words(string text, double x, double y, HorizontalAlignment side, double size = FontSize - 1.0) => new()
    {
        Text = text, TextPosition = new DataPoint(x, y), TextHorizontalAlignment = side, TextVerticalAlignment = VerticalAlignment.Middle, StrokeThickness = 0.0, FontSize = size,
    };

    /// <summary>A filled rectangle; infinite edges reach to the border.</summary>
    public static RectangleAnnotation Box(double left, double right, double low, double high, OxyColor fill, AnnotationLayer layer = AnnotationLayer.AboveSeries) => new()
    {
        MinimumX = left, MaximumX = right, MinimumY = low, MaximumY = high, Fill = fill, Layer = layer, StrokeThickness = 0.0,
    };

    /// <summary>A straight line between two points.</summary>
    public static LineSeries Segment(double fromX, double fromY, double toX, double toY, OxyColor colour, double thickness)
    {
        var line = new LineSeries { Color = colour, StrokeThickness = thickness };
        line.Points.AddRange([new DataPoint(fromX, fromY), new DataPoint(toX, toY)]);
        return line;
    }

    /// <summary>The interval of a bar that lies: a line from its low to its high end with a cap at each.</summary>
    public static void AddWhisker(PlotModel model, double low, double high, double y)
    {
        model.Series.Add(Segment(low, y, high, y, OxyColors.Black, 1.6));
        foreach (double end in (double[])[low, high])
        {
            model.Series.Add(Segment(end, y - CapHalf, end, y + CapHalf, OxyColors.Black, 1.6));
        }
    }

    /// <summary>A filled square with words in the legend.</summary>
    public static ScatterSeries Key(string words, OxyColor fill, OxyColor stroke, double thickness = 0.8) => new()
    {
        Title = words, MarkerType = MarkerType.Square, MarkerSize = 6.0, MarkerFill = fill, MarkerStroke = stroke, MarkerStrokeThickness = thickness,
    };

    // Room for the vertical axis [px]: as asked, but no more than a good third of a telephone.
    private static double LeftMargin(PlotLook look, double left) => Math.Max(look.LeftMargin, Math.Min(left, MostOfWidth * look.Width));

    // as many letters from the end as there is room for
    private static string Ending(string text, double room)
    {
        string shown = text;
        for (int first = 1; PlotFont.Width(shown, FontSize) > room && first < text.Length - 3; first++)
        {
            shown = "…" + text[first..];
        }

        return shown;
    }
}
