using OxyPlot.Annotations;

namespace PushSim.Plotting.Drawing;

/// <content>Marks on a panel: lines, levels, bands and notes.</content>
internal sealed partial class Panel
{
    /// <summary>A labelled line at a time.</summary>
    public Panel MarkTime(double time, string label)
    {
        _model.Annotations.Add(new LineAnnotation
        {
            Type = LineAnnotationType.Vertical, X = time, Color = Palette.Mark, LineStyle = LineStyle.Dash, StrokeThickness = 1.2,
        });
        _labels.Add(new PlotLabel(label, time, IsCentred: false));
        return this;
    }

    /// <summary>A labelled level over a span of time.</summary>
    public Panel MarkLevel(double from, double to, double value, string label)
    {
        _model.Annotations.Add(new LineAnnotation
        {
            Type = LineAnnotationType.Horizontal, Y = value, MinimumX = from, MaximumX = to, Color = OxyColors.Black, LineStyle = LineStyle.Solid,
            StrokeThickness = 1.4,
        });
        _labels.Add(new PlotLabel(label, 0.5 * (from + to), IsCentred: true));
        return this;
    }

    /// <summary>A robot's line on the floor, across the whole panel, in the robot's colour.</summary>
    /// <param name="value">Where it lies, in the unit of the vertical axis.</param>
    /// <param name="label">Its words.</param>
    /// <param name="robot">0 the first robot, 1 its opponent [1].</param>
    public Panel MarkLine(double value, string label, int robot) => MarkLine(value, label, Palette.Robot(robot), Palette.Dash(robot));

    /// <summary>A level that is no robot's, across the whole panel.</summary>
    /// <inheritdoc cref="MarkLine(double, string, int)"/>
    public Panel MarkLine(double value, string label) => MarkLine(value, label, Palette.Mark, LineStyle.Dash);

    private Panel MarkLine(double value, string label, OxyColor colour, LineStyle dash)
    {
        _model.Annotations.Add(new LineAnnotation { Type = LineAnnotationType.Horizontal, Y = value, Color = colour, LineStyle = dash, StrokeThickness = 1.8 });
        _labels.Add(PlotLabel.OfLine(PlainLabel.Of(label), value));
        _levels.Add(value);
        return this;
    }

    /// <summary>Shades a span of the horizontal axis behind the curves.</summary>
    public Panel Shade(double from, double to, OxyColor colour) => Band(from, to, double.NegativeInfinity, double.PositiveInfinity, OxyColor.FromAColor(70, colour));

    /// <summary>A filled rectangle; infinite edges reach to the border.</summary>
    public Panel Band(double from, double to, double low, double high, OxyColor colour)
    {
        _model.Annotations.Add(Chart.Box(from, to, low, high, colour, AnnotationLayer.BelowSeries));
        return this;
    }

    /// <summary>A point with words beside it.</summary>
    public Panel AddNote(double x, double y, string text)
    {
        _model.Annotations.Add(new PointAnnotation
        {
            X = x, Y = y, Size = 4.0, Fill = OxyColors.Black, Text = text, FontSize = Chart.FontSize - 2.0, TextHorizontalAlignment = HorizontalAlignment.Left,
            TextVerticalAlignment = VerticalAlignment.Top, TextMargin = 3.0,
        });
        return this;
    }
}
