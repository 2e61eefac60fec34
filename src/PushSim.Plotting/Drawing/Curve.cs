namespace PushSim.Plotting.Drawing;

/// <summary>One curve before it is drawn.</summary>
/// <param name="Label">Words for the legend.</param>
/// <param name="Points">Thinned points to draw.</param>
/// <param name="X">All samples, horizontal.</param>
/// <param name="Y">All samples, vertical, in the unit of the axis.</param>
internal sealed record Curve(string Label, IReadOnlyList<DataPoint> Points, IReadOnlyList<double> X, IReadOnlyList<double> Y)
{
    // Curves closer than this share of the panel's span everywhere are less than a line's width apart [1].
    private const double Equal = 0.005;

    // Points kept per line: two (least and greatest) for each of about as many columns as a picture is wide.
    private const int Columns = 450;

    /// <summary>A curve of samples, thinned to what a picture can show.</summary>
    /// <param name="label">Words for the legend.</param>
    /// <param name="x">Samples, horizontal.</param>
    /// <param name="y">As many samples, vertical.</param>
    /// <param name="scale">Factor that brings them to the unit of the axis.</param>
    public static Curve Of(string label, IReadOnlyList<double> x, IReadOnlyList<double> y, double scale) => new(label, Thin(x, y, scale), x, scale == 1.0 ? y : [.. y.Select(v => scale * v)]);

    /// <summary>
    /// Draws curves that lie on each other once, under all their names: overlaid dashes of several colours read as a colour that
    /// is in no legend. The first name leads: "battery (same: controller right)". Where the names would not fit, a second one leaves out
    /// the words that it shares with the first ("grip of the front tyres (same: rear tyres)"), and more are counted.
    /// </summary>
    /// <param name="curves">All curves of a panel.</param>
    /// <param name="leastSpan">The panel spans at least this, in the unit of its vertical axis.</param>
    public static List<Curve> MergeEqual(IReadOnlyList<Curve> curves, double leastSpan)
    {
        if (curves.Count == 0)
        {
            return [];
        }

        List<List<Curve>> merged = [];

        double span = Math.Max(leastSpan, curves.Max(c => c.Y.Max()) - curves.Min(c => c.Y.Min()));
        foreach (Curve curve in curves)
        {
            int twin = merged.FindIndex(m => ReferenceEquals(m[0].X, curve.X) && Distance(m[0].Y, curve.Y) <= Equal * span);
            if (twin < 0)
            {
                merged.Add([curve]);
            }
            else
            {
                merged[twin].Add(curve);
            }
        }

        return [.. merged.Select(m => m.Count == 1 ? m[0] : m[0] with { Label = Name([.. m.Select(c => c.Label)]) })];
    }

    private static string Name(string[] names)
    {
        string all = $"{names[0]} (same: {string.Join(", ", names[1..])})";
        if (!Fits(all) && names.Length == 2)
        {
            all = $"{names[0]} (same: {WithoutShared(names[1], names[0])})";
        }

        string counted = FormattableString.Invariant($"{names[0]} (same: {names.Length - 1} other{(names.Length > 2 ? "s" : "")})");
        return Fits(all) ? all : Fits(counted) ? counted : FormattableString.Invariant($"{names[0]} ({names.Length - 1} more)");
    }

    // a legend stands in the middle above the area and may take both margins for its symbol
    private static bool Fits(string name) => PlotFont.Width(name, Chart.FontSize - 1.0) <= PlotLook.Phone.AreaWidth;

    private static string WithoutShared(string name, string first)
    {
        string[] words = name.Split(' ');
        return string.Join(' ', words.Skip(words.Zip(first.Split(' ')).TakeWhile(p => p.First == p.Second).Count()));
    }

    private static double Distance(IReadOnlyList<double> a, IReadOnlyList<double> b)
    {
        double distance = 0.0;
        for (int i = 0; i < a.Count; i++)
        {
            distance = Math.Max(distance, Math.Abs(a[i] - b[i]));
        }

        return distance;
    }

    // Least and greatest value of each column of samples, in their order.
    private static List<DataPoint> Thin(IReadOnlyList<double> x, IReadOnlyList<double> y, double scale)
    {
        List<DataPoint> points = [];
        int width = Math.Max(1, x.Count / Columns);
        for (int start = 0; start < x.Count; start += width)
        {
            int end = Math.Min(x.Count, start + width);
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
