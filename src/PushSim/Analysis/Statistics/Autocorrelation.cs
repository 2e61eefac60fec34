namespace PushSim.Analysis.Statistics;

/// <summary>What correlation between neighbours does to a mean: of n readings with first-order correlation rho only n (1 - rho)/(1 + rho)
/// count (first-order autoregression; Box and Jenkins, from memory). Slower correlation than that, such as a hum over many
/// readings, is not seen by it.</summary>
public static class Autocorrelation
{
    // Keeps the count above zero for a series that only drifts [1].
    private const double Most = 0.98;

    // In standard deviations of the lag-one correlation of white noise, 1/sqrt(n) [1].
    private const double Significant = 1.0;

    /// <summary>Lag-one correlation, freed of its leading bias -(1 + 4 rho)/n (Kendall 1954, from memory).</summary>
    /// <param name="residuals">Residuals in order of time [any unit].</param>
    public static double LagOne(IReadOnlyList<double> residuals)
    {
        int n = residuals.Count;
        double m = Sample.Mean(residuals);
        double own = 0.0;
        double next = 0.0;
        for (int i = 0; i < n; i++)
        {
            own += (residuals[i] - m) * (residuals[i] - m);
            next += i == 0 ? 0.0 : (residuals[i] - m) * (residuals[i - 1] - m);
        }

        if (n < 8 || own <= 0.0)
        {
            return 0.0;
        }

        double rho = next / own;
        return Math.Clamp((rho + (1.0 / n)) / (1.0 - (4.0 / n)), -Most, Most);
    }

    /// <summary>How many independent readings a series counts for; a negative correlation, which chance gives too, is not used to narrow an interval.</summary>
    /// <param name="residuals">Residuals in order of time [any unit].</param>
    public static double EffectiveCount(IReadOnlyList<double> residuals)
    {
        // within chance of none, none is taken: clipping at zero alone would widen every interval of white noise
        double rho = LagOne(residuals);
        return rho * Math.Sqrt(residuals.Count) < Significant ? residuals.Count : residuals.Count * (1.0 - rho) / (1.0 + rho);
    }
}
