using OxyPlot;

namespace PushSim.Plotting;

/// <summary>One curve before it is drawn.</summary>
/// <param name="Label">Words for the legend.</param>
/// <param name="Points">Thinned points to draw.</param>
/// <param name="X">All samples, horizontal.</param>
/// <param name="Y">All samples, vertical, in the unit of the axis.</param>
internal sealed record Curve(string Label, IReadOnlyList<DataPoint> Points, double[] X, double[] Y)
{
    // Curves closer than this share of the panel's span everywhere are less than a line's width apart [1].
    private const double Equal = 0.005;

    /// <summary>
    /// Draws curves that lie on each other once, under all their names: overlaid dashes of several colours read as a colour that
    /// is in no legend.
    /// </summary>
    /// <param name="curves">All curves of a panel.</param>
    /// <param name="leastSpan">The panel spans at least this, in the unit of its vertical axis.</param>
    public static List<Curve> MergeEqual(IReadOnlyList<Curve> curves, double leastSpan)
    {
        List<Curve> merged = [];
        if (curves.Count == 0)
        {
            return merged;
        }

        double span = Math.Max(leastSpan, curves.Max(c => c.Y.Max()) - curves.Min(c => c.Y.Min()));
        foreach (Curve curve in curves)
        {
            int twin = merged.FindIndex(m => ReferenceEquals(m.X, curve.X) && Distance(m.Y, curve.Y) <= Equal * span);
            if (twin < 0)
            {
                merged.Add(curve);
            }
            else
            {
                merged[twin] = merged[twin] with { Label = merged[twin].Label + " = " + curve.Label };
            }
        }

        return merged;
    }

    private static double Distance(double[] a, double[] b)
    {
        double distance = 0.0;
        for (int i = 0; i < a.Length; i++)
        {
            distance = Math.Max(distance, Math.Abs(a[i] - b[i]));
        }

        return distance;
    }
}
