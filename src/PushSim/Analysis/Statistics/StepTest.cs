namespace PushSim.Analysis.Statistics;

/// <summary>Looks for one step of the level of a series. The place is where two means leave the least squares; the probability is Pettitt's, by ranks, which an odd
/// value does not mislead (Appl. Statist. 28:126, 1979, from memory).
/// <code>
/// U_t = sum over i up to t and j after t of sign(x_i - x_j)       K = max |U_t|       p = 2 exp(-6 K^2 / (n^3 + n^2))
/// </code></summary>
/// <param name="After">Values before the step [1].</param>
/// <param name="F">Gain of squares by the step over what is left for each degree of freedom, n - 2 of them [1].</param>
/// <param name="K">Pettitt's greatest count [1].</param>
/// <param name="P">Two-sided probability if there were no step, an upper estimate for few values [1].</param>
public readonly record struct StepTest(int After, double F, int K, double P)
{
    /// <summary>Share of the squares that the step explains, of a series of a given length [1].</summary>
    /// <param name="count">Values of the series [1].</param>
    public double Explains(int count) => double.IsInfinity(F) ? 1.0 : F / (F + count - 2.0);

    /// <summary>Tests a series in order of time; at least three values.</summary>
    /// <param name="values">The series [any unit].</param>
    public static StepTest Of(IReadOnlyList<double> values)
    {
        int n = values.Count;
        double mean = Sample.Mean(values);
        double whole = values.Sum(v => (v - mean) * (v - mean));
        (int after, double gain) = (0, -1.0);
        int k = 0;
        double sum = 0.0;
        int u = 0;
        for (int t = 1; t < n; t++)
        {
            double x = values[t - 1];
            sum += x - mean;
            u += values.Sum(v => Math.Sign(x - v));
            double squares = sum * sum * n / ((double)t * (n - t));
            (after, gain) = squares > gain ? (t, squares) : (after, gain);
            k = Math.Max(k, Math.Abs(u));
        }

        double p = Math.Min(1.0, 2.0 * Math.Exp(-6.0 * k * k / (Math.Pow(n, 3.0) + ((double)n * n))));
        return new StepTest(after, (n - 2) * gain / (whole - gain), k, p);
    }
}
