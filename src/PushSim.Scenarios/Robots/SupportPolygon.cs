namespace PushSim.Scenarios.Robots;

/// <summary>Whether a point stands inside the convex hull of the wheels' contacts (monotone chain).</summary>
internal static class SupportPolygon
{
    /// <summary>Distance from the point to the nearest edge, negative outside; NaN when the contacts span no area [m].</summary>
    public static double Margin(IReadOnlyList<(double X, double Y)> contacts, double x, double y)
    {
        List<(double X, double Y)> hull = Hull(contacts);
        if (hull.Count < 3)
        {
            return double.NaN;
        }

        double least = double.PositiveInfinity;
        for (int i = 0; i < hull.Count; i++)
        {
            (double X, double Y) a = hull[i];
            (double X, double Y) b = hull[(i + 1) % hull.Count];
            double length = Math.Sqrt(((b.X - a.X) * (b.X - a.X)) + ((b.Y - a.Y) * (b.Y - a.Y)));
            least = Math.Min(least, Cross(a, b, (x, y)) / length);
        }

        return least;
    }

    // Counter-clockwise, no three in a line.
    private static List<(double X, double Y)> Hull(IReadOnlyList<(double X, double Y)> points)
    {
        List<(double X, double Y)> sorted = [.. points.Distinct().Order()];
        List<(double X, double Y)> lower = Chain(sorted);
        sorted.Reverse();
        List<(double X, double Y)> upper = Chain(sorted);
        return sorted.Count < 3 ? [] : [.. lower.SkipLast(1), .. upper.SkipLast(1)];
    }

    private static List<(double X, double Y)> Chain(List<(double X, double Y)> sorted)
    {
        List<(double X, double Y)> chain = [];
        foreach ((double X, double Y) p in sorted)
        {
            while (chain.Count >= 2 && Cross(chain[^2], chain[^1], p) <= 1e-12)
            {
                chain.RemoveAt(chain.Count - 1);
            }

            chain.Add(p);
        }

        return chain;
    }

    private static double Cross((double X, double Y) a, (double X, double Y) b, (double X, double Y) p) =>
        ((b.X - a.X) * (p.Y - a.Y)) - ((b.Y - a.Y) * (p.X - a.X));
}
