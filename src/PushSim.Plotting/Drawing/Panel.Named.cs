using OxyPlot.Annotations;
using OxyPlot.Series;

namespace PushSim.Plotting.Drawing;

// Points, some with a name beside them where no other name and no other point is; names below the panel.
internal sealed partial class Panel
{
    // From a point to its name, half of a point, and the height of a line of words [px].
    private const double NameGap = 7.0;
    private const double PointHalf = 5.0;
    private const double NameHeight = 15.0;

    // Room about the points, as a share of what they span [1].
    private const double PointEdge = 0.1;

    // Slopes of names below the panel, least first [deg].
    private static readonly double[] s_tilts = [0.0, 25.0, 50.0, 90.0];

    private IReadOnlyList<(double X, double Y, string Name)> _named = [];
    private IReadOnlyList<string> _names = [];

    /// <summary>Points, those with a name in ink, the others in grey.</summary>
    public Panel AddNamed(IReadOnlyList<(double X, double Y, string Name)> points)
    {
        _named = points;
        foreach (IGrouping<bool, (double X, double Y, string Name)> part in points.GroupBy(p => p.Name.Length > 0).OrderBy(g => g.Key))
        {
            OxyColor colour = part.Key ? Palette.Ink : Palette.Grey;
            var series = new ScatterSeries { MarkerType = MarkerType.Circle, MarkerSize = part.Key ? 4.5 : 3.0, MarkerFill = colour, MarkerStroke = colour };
            series.Points.AddRange(part.Select(p => new ScatterPoint(p.X, p.Y)));
            _model.Series.Add(series);
        }

        return this;
    }

    // names below lie as level as they fit: level ones beside each other, tilted ones a line apart and begun within the picture
    private void TiltNames(PlotLook look)
    {
        if (_names.Count == 0)
        {
            return;
        }

        double step = look.AreaWidth / _names.Count;
        double[] wide = [.. _names.Select(n => PlotFont.Width(n, Chart.FontSize))];
        _model.Axes[0].Angle = -s_tilts.First(tilt =>
        {
            (double sine, double cosine) = Math.SinCos(tilt * Math.PI / 180.0);
            return tilt == 0.0 ? wide.Max() + NameGap <= step
                : tilt == s_tilts[^1] || (step * sine >= NameHeight && wide.Select((w, i) => w * cosine <= look.LeftMargin + ((i + 0.5) * step)).All(fits => fits));
        });
    }

    private void PlaceNames(PlotLook look)
    {
        if (_named.Count == 0)
        {
            return;
        }

        (double left, double width) = SetRange(_model.Axes[0], [.. _named.Select(p => p.X)]);
        (double bottom, double height) = SetRange(_model.Axes[1], [.. _named.Select(p => p.Y)]);
        double across = look.AreaWidth / width;
        double up = (PlotSheet.Height(Rows) - RoomAboveAndBelow) / height;
        List<OxyRect> taken = [.. _named.Select(p => new OxyRect(((p.X - left) * across) - PointHalf, ((p.Y - bottom) * up) - PointHalf, 2.0 * PointHalf, 2.0 * PointHalf))];
        foreach ((double x, double y, string name) in _named.Where(p => p.Name.Length > 0).OrderByDescending(p => p.Y))
        {
            string text = PlainLabel.Of(name);
            double wide = PlotFont.Width(text, Chart.FontSize - 2.0);
            (double px, double py) = ((x - left) * across, (y - bottom) * up);
            (HorizontalAlignment Side, double Dx, double Dy)[] places =
            [
                (HorizontalAlignment.Left, NameGap, 0.0), (HorizontalAlignment.Right, -NameGap, 0.0), (HorizontalAlignment.Center, 0.0, NameGap + (0.5 * NameHeight)), (HorizontalAlignment.Center, 0.0, -NameGap - (0.5 * NameHeight)),
                (HorizontalAlignment.Left, NameGap, NameHeight), (HorizontalAlignment.Right, -NameGap, NameHeight), (HorizontalAlignment.Left, NameGap, -NameHeight), (HorizontalAlignment.Right, -NameGap, -NameHeight),
            ];
            (HorizontalAlignment Side, double Dx, double Dy) best = places.FirstOrDefault(p => IsFree(Box(p)), places[0]);
            taken.Add(Box(best));
            TextAnnotation words = Chart.Words(text, x, y, best.Side, Chart.FontSize - 2.0);
            words.Offset = new ScreenVector(best.Dx, -best.Dy);
            _model.Annotations.Add(words);

            OxyRect Box((HorizontalAlignment Side, double Dx, double Dy) p)
            {
                double from = px + p.Dx - (p.Side == HorizontalAlignment.Left ? 0.0 : p.Side == HorizontalAlignment.Right ? wide : 0.5 * wide);
                return new OxyRect(from, py + p.Dy - (0.5 * NameHeight), wide, NameHeight);
            }

            bool IsFree(OxyRect box) => box.Left >= 0.0 && box.Right <= look.AreaWidth
                && taken.TrueForAll(t => box.Left >= t.Right || t.Left >= box.Right || box.Top >= t.Bottom || t.Top >= box.Bottom);
        }
    }

    private static (double From, double Span) SetRange(OxyPlot.Axes.Axis axis, double[] values)
    {
        double span = Math.Max(values.Max() - values.Min(), 1e-9 + (0.1 * Math.Abs(values.Max())));
        double from = Math.Max(values.Min() - (PointEdge * span), values.Min() >= 0.0 ? 0.0 : double.NegativeInfinity);
        SetEnds(axis, from, values.Max() + (PointEdge * span));
        return (from, values.Max() + (PointEdge * span) - from);
    }
}
