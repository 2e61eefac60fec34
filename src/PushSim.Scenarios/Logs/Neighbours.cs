namespace PushSim.Scenarios.Logs;

/// <summary>
/// Tells whether numbers without a time follow each other as the samples of one log do. Von Neumann's ratio, the mean squared step over the variance, is about 2 for numbers in no order,
/// with a spread of 2 sqrt((n - 2)/(n^2 - 1)) (von Neumann 1941, Annals of Mathematical Statistics 12; from memory).
/// </summary>
internal static class Neighbours
{
    // Fewer say nothing [1].
    private const int Fewest = 8;

    // Standard deviations under which chance does not bring the ratio: one table of a thousand or fewer [1].
    private const double Unlikely = 3.3;

    // Readings this far below the greatest are slack, which no person writes down as a pull [1].
    private const double Slack = 0.2;

    /// <summary>Whether neighbours are alike.</summary>
    /// <param name="values">The numbers in order [any unit].</param>
    public static bool AreAlike(IReadOnlyList<double> values)
    {
        int n = values.Count;
        if (n < Fewest)
        {
            return false;
        }

        double mean = values.Average();
        double variance = values.Sum(v => (v - mean) * (v - mean));
        double steps = values.Zip(values.Skip(1), (a, b) => (b - a) * (b - a)).Sum();
        double spread = 2.0 * Math.Sqrt((n - 2.0) / (((double)n * n) - 1.0));
        return variance > 0.0 && (steps / variance) - 2.0 < -Unlikely * spread;
    }

    /// <summary>Whether some of them are slack.</summary>
    public static bool HaveSlack(IReadOnlyList<double> values)
    {
        double most = values.Max(Math.Abs);
        return values.Count(v => Math.Abs(v) < Slack * most) >= 2;
    }
}
