using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Legends;

namespace PushSim.Plotting;

/// <summary>Looks shared by charts that are no time histories.</summary>
internal static class Chart
{
    public const double FontSize = 14.0;

    private static readonly OxyColor s_grid = OxyColor.FromRgb(228, 228, 228);
    private static readonly OxyColor s_line = OxyColor.FromRgb(150, 150, 150);

    public static PlotModel Model(string title, double left = 84)
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
            PlotAreaBorderColor = s_line,
            Padding = new OxyThickness(6, 6, 6, 4),
            PlotMargins = new OxyThickness(left, double.NaN, 26, double.NaN),
            Culture = System.Globalization.CultureInfo.InvariantCulture,
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

    public static LinearAxis Axis(AxisPosition position, string title) => new()
    {
        Position = position,
        Title = title,
        MajorGridlineStyle = LineStyle.Solid,
        MajorGridlineColor = s_grid,
        TicklineColor = s_line,
        AxisTitleDistance = 10,
        MaximumPadding = 0.02,
        MinimumPadding = 0.02,
        IntervalLength = position is AxisPosition.Left ? 45 : 80,
    };

    /// <summary>Words at 0, 1, 2, ... in place of numbers.</summary>
    public static LinearAxis WordAxis(AxisPosition position, string title, IReadOnlyList<string> words, double angle = 0.0) => new()
    {
        Position = position,
        Title = title,
        Minimum = -0.5,
        Maximum = words.Count - 0.5,
        MajorStep = 1.0,
        MinorTickSize = 0.0,
        MajorTickSize = 0.0,
        Angle = angle,
        AxisTitleDistance = 10,
        LabelFormatter = v => v >= 0.0 && v < words.Count && v == Math.Floor(v) ? words[(int)v] : "",
    };

    /// <summary>Values at 0, 1, 2, ... as bars, each with words at its end.</summary>
    public static void AddBars(PlotModel model, IReadOnlyList<double> values, IReadOnlyList<string> labels)
    {
        for (int i = 0; i < values.Count; i++)
        {
            model.Annotations.Add(new RectangleAnnotation
            {
                MinimumX = 0.0, MaximumX = values[i], MinimumY = i - 0.34, MaximumY = i + 0.34, Fill = OxyColor.FromAColor(150, Palette.Colour(0)), Stroke = Palette.Colour(0), StrokeThickness = 1.0,
            });
            model.Annotations.Add(new TextAnnotation
            {
                Text = labels[i], TextPosition = new DataPoint(values[i], i), Offset = new ScreenVector(6, 0), TextHorizontalAlignment = HorizontalAlignment.Left,
                TextVerticalAlignment = VerticalAlignment.Middle, StrokeThickness = 0.0, FontSize = FontSize - 1.0,
            });
        }
    }
}
