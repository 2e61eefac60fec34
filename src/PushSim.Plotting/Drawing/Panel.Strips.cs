using OxyPlot.Annotations;
using OxyPlot.Series;

namespace PushSim.Plotting.Drawing;

// A map at several moments: a strip a moment, one under the other over one horizontal axis, so that nothing hides anything.
internal sealed partial class Panel
{
    // Room above the outlines of a strip for its words, below them, and for the words of the lines over all [px].
    private const double StripHead = 24.0;
    private const double StripFoot = 8.0;
    private const double LineHead = 20.0;

    // Least height of the outlines in a strip, and most height of all strips [px].
    private const double LeastStrip = 24.0;
    private const double MostStrips = 410.0;

    // Left and right of the outlines, as a share of what they span [1].
    private const double SideShare = 0.05;

    private IReadOnlyList<MapStrip> _strips = [];
    private IReadOnlyList<MapLine> _floorLines = [];

    /// <summary>Draws a map in strips, the first moment on top, both axes in one scale. The panel shows nothing else.</summary>
    /// <param name="strips">What stands where at each moment, at least one.</param>
    /// <param name="lines">Lines across all strips.</param>
    public Panel WithStrips(IReadOnlyList<MapStrip> strips, IReadOnlyList<MapLine> lines)
    {
        (_strips, _floorLines) = (strips, lines);
        _model.PlotType = PlotType.Cartesian;
        (double left, double right, double bottom, double top) = Extent();
        double outlines = Math.Clamp((top - bottom) * PlotLook.File.AreaWidth / (right - left), LeastStrip, (MostStrips / strips.Count) - StripHead - StripFoot);
        Rows = (RoomAboveAndBelow + LineHead + (strips.Count * (outlines + StripHead + StripFoot))) / PlotSheet.Height(1.0);
        return this;
    }

    private (double Left, double Right, double Bottom, double Top) Extent()
    {
        (double X, double Y)[] all = [.. _strips.SelectMany(s => s.Shapes).SelectMany(s => s.Outline.Concat(s.Within.SelectMany(l => l)))];
        double left = all.Select(p => p.X).Concat(_floorLines.Select(l => l.X)).Min();
        double right = all.Select(p => p.X).Concat(_floorLines.Select(l => l.X)).Max();
        double side = SideShare * (right - left);
        return (left - side, right + side, all.Min(p => p.Y), all.Max(p => p.Y));
    }

    // Room in px is room in metres once the scale is known, which is the picture's own.
    private void LayOutStrips(PlotLook look)
    {
        if (_strips.Count == 0)
        {
            return;
        }

        (double left, double right, double bottom, double top) = Extent();
        double height = PlotSheet.Height(Rows) - RoomAboveAndBelow;
        double strip = (height - LineHead) / _strips.Count;
        double scale = Math.Min(look.AreaWidth / (right - left), Math.Max(1.0, strip - StripHead - StripFoot) / (top - bottom));
        double middle = 0.5 * (left + right);
        double half = 0.5 * look.AreaWidth / scale;
        SetEnds(_model.Axes[0], middle - half, middle + half);
        SetEnds(_model.Axes[1], 0.0, height / scale);
        _model.Axes[1].LabelFormatter = _ => "";
        _model.Axes[1].MajorTickSize = _model.Axes[1].MinorTickSize = 0.0;
        _model.Axes[1].MajorGridlineStyle = LineStyle.None;
        foreach (MapLine line in _floorLines)
        {
            AddFloorLine(line, (height - (0.5 * LineHead)) / scale, line.X < middle);
        }

        for (int k = 0; k < _strips.Count; k++)
        {
            double foot = (_strips.Count - 1 - k) * strip / scale;
            double free = (strip - StripHead - StripFoot) / scale;
            double shift = foot + (StripFoot / scale) + (0.5 * (free - (top - bottom))) - bottom;
            AddShapes(_strips[k], shift, isNamed: k == _strips.Count - 1);
            if (k > 0)
            {
                _model.Annotations.Add(new LineAnnotation { Type = LineAnnotationType.Horizontal, Y = foot + (strip / scale), Color = Palette.Grid, LineStyle = LineStyle.Solid, StrokeThickness = 1.0 });
            }

            TextAnnotation words = Chart.Words(_strips[k].Words, middle - half, foot + ((strip - (0.5 * StripHead)) / scale), HorizontalAlignment.Left);
            words.Offset = new ScreenVector(6.0, 0.0);
            words.Background = OxyColor.FromAColor(215, OxyColors.White);
            words.Padding = new OxyThickness(1);
            _model.Annotations.Add(words);
        }
    }

    private void AddFloorLine(MapLine line, double height, bool isLeft)
    {
        _model.Annotations.Add(new LineAnnotation
        {
            Type = LineAnnotationType.Vertical, X = line.X, Color = Palette.Robot(line.Robot), LineStyle = Palette.Dash(line.Robot), StrokeThickness = 1.8, Layer = AnnotationLayer.BelowSeries,
        });
        TextAnnotation words = Chart.Words(PlainLabel.Of(line.Words), line.X, height, isLeft ? HorizontalAlignment.Left : HorizontalAlignment.Right);
        words.Offset = new ScreenVector(isLeft ? 6.0 : -6.0, 0.0);
        _model.Annotations.Add(words);
    }

    private void AddShapes(MapStrip strip, double shift, bool isNamed)
    {
        foreach (MapShape shape in strip.Shapes)
        {
            _model.Series.Add(Line(shape.Outline.Append(shape.Outline[0]), isNamed ? PlainLabel.Of(shape.Name) : null, Palette.Dash(shape.Robot)));
            foreach (IReadOnlyList<(double X, double Y)> within in shape.Within)
            {
                _model.Series.Add(Line(within, null, LineStyle.Solid));
            }

            LineSeries Line(IEnumerable<(double X, double Y)> points, string? title, LineStyle dash)
            {
                var line = new LineSeries { Title = title, Color = Palette.Robot(shape.Robot), LineStyle = dash, StrokeThickness = 2.0 };
                line.Points.AddRange(points.Select(p => new DataPoint(p.X, p.Y + shift)));
                return line;
            }
        }
    }

    private static void SetEnds(OxyPlot.Axes.Axis axis, double low, double high) => (axis.Minimum, axis.Maximum, axis.MinimumPadding, axis.MaximumPadding) = (low, high, 0.0, 0.0);
}
