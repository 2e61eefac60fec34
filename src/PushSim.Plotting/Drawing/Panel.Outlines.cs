using OxyPlot.Annotations;
using OxyPlot.Series;

namespace PushSim.Plotting.Drawing;

// Outlines of things on a map at several moments, each with its time beside all of them.
internal sealed partial class Panel
{
    // From one row of words to the next, from the nearest row to the outlines, and between two words of a row [px].
    private const double RowHeight = 17.0;
    private const double RowGap = 14.0;
    private const double WordGap = 8.0;

    // Left and right of the outlines, as a share of what they span [1].
    private const double SideShare = 0.05;

    private readonly List<Outline> _outlines = [];

    /// <summary>A closed outline on a map; later moments are drawn stronger. Its words stand outside all outlines, with a line that leads to it.</summary>
    /// <param name="corners">Its corners.</param>
    /// <param name="label">Whose it is.</param>
    /// <param name="look">Which line look; words of look 0 stand above, others below.</param>
    /// <param name="moment">Number of the moment, from 0.</param>
    /// <param name="moments">Number of moments.</param>
    /// <param name="text">Its words, for example the time.</param>
    /// <param name="within">Open lines within it, as its nose and wheels.</param>
    public Panel AddOutline(IEnumerable<(double X, double Y)> corners, string label, int look, int moment, int moments, string text, IEnumerable<IEnumerable<(double X, double Y)>>? within = null)
    {
        (double X, double Y)[] c = [.. corners];
        byte alpha = (byte)(110 + (145 * moment / Math.Max(1, moments - 1)));
        var series = new LineSeries
        {
            Title = moment == moments - 1 ? PlainLabel.Of(label) : null,
            Color = OxyColor.FromAColor(alpha, Palette.Robot(look)),
            LineStyle = look == 0 ? LineStyle.Solid : LineStyle.Dash,
            StrokeThickness = 1.0 + (1.6 * moment / Math.Max(1, moments - 1)),
        };
        series.Points.AddRange(c.Append(c[0]).Select(p => new DataPoint(p.X, p.Y)));
        _model.Series.Add(series);
        foreach (IEnumerable<(double X, double Y)> line in within ?? [])
        {
            var part = new LineSeries { Color = series.Color, StrokeThickness = series.StrokeThickness };
            part.Points.AddRange(line.Select(p => new DataPoint(p.X, p.Y)));
            _model.Series.Add(part);
        }

        _outlines.Add(new Outline(c, look, text));
        return this;
    }

    // Both axes have one scale, so room in px above and below is room in metres once that scale is known.
    private void LayOutOutlines(PlotLook look)
    {
        if (_outlines.Count == 0)
        {
            return;
        }

        (double X, double Y)[] all = [.. _outlines.SelectMany(o => o.Corners)];
        (double left, double right) = (all.Min(p => p.X), all.Max(p => p.X));
        (double bottom, double top) = (all.Min(p => p.Y), all.Max(p => p.Y));
        double room = RowGap + (RowHeight * _outlines.GroupBy(o => o.Look).Max(g => g.Count()));
        double side = SideShare * (right - left);
        double height = PlotSheet.Height(Rows) - RoomAboveAndBelow;
        double scale = Math.Min(look.AreaWidth / (right - left + (2.0 * side)), Math.Max(0.2 * height, height - (2.0 * room)) / (top - bottom));
        foreach (IGrouping<int, Outline> whose in _outlines.GroupBy(o => o.Look))
        {
            AddWords([.. whose], whose.Key == 0 ? 1 : -1, whose.Key == 0 ? top : bottom, 1.0 / scale);
        }

        _model.Axes[0].Minimum = left - side;
        _model.Axes[0].Maximum = right + side;
        _model.Axes[1].Minimum = bottom - (room / scale);
        _model.Axes[1].Maximum = top + (room / scale);
    }

    // Words hang on the line to their outline's outermost corner, on the side away from the outline's end, which is right of it above and left below.
    // They are placed from that side: each on the nearest row on which no later line crosses it and no word is met.
    private void AddWords(Outline[] outlines, int up, double edge, double pixel)
    {
        List<(double X, int Row)> placed = [];
        foreach ((Outline outline, (double X, double Y) corner) in outlines.Select(o => (o, Outermost(o.Corners, up))).OrderByDescending(o => up * o.Item2.X))
        {
            double reach = (PlotFont.Width(outline.Text, Chart.FontSize - 2.0) + WordGap) * pixel;
            int row = placed.Where(p => up * (p.X - corner.X) < reach).Select(p => p.Row + 1).DefaultIfEmpty(0).Max();
            placed.Add((corner.X, row));
            double y = edge + (up * (RowGap + (RowHeight * row)) * pixel);
            var line = new PolylineAnnotation { Color = OxyColor.FromAColor(160, Palette.Robot(outline.Look)), LineStyle = LineStyle.Solid, StrokeThickness = 1.0 };
            line.Points.Add(new DataPoint(corner.X, corner.Y));
            line.Points.Add(new DataPoint(corner.X, y + (up * 0.3 * RowHeight * pixel)));
            _model.Annotations.Add(line);
            TextAnnotation words = Chart.Words(outline.Text, corner.X, y, up > 0 ? HorizontalAlignment.Left : HorizontalAlignment.Right, Chart.FontSize - 2.0);
            words.Offset = new ScreenVector(up * 3.0, 0.0);
            _model.Annotations.Add(words);
        }
    }

    // The highest corner, or the lowest; of two alike the one at the end away from the words.
    private static (double X, double Y) Outermost((double X, double Y)[] corners, int up)
    {
        double edge = corners.Max(c => up * c.Y);
        double alike = 1e-3 * (corners.Max(c => c.Y) - corners.Min(c => c.Y));
        return corners.Where(c => up * c.Y > edge - alike).MinBy(c => up * c.X);
    }

    private sealed record Outline((double X, double Y)[] Corners, int Look, string Text);
}
