namespace PushSim.Plotting.Drawing;

/// <summary>A series that swings faster than a picture can show, as the mean and the band it swings in.</summary>
/// <param name="Time">Middles of its stretches.</param>
/// <param name="Low">Least value of each stretch.</param>
/// <param name="Mean">Mean of each stretch.</param>
/// <param name="High">Largest value of each stretch.</param>
/// <param name="Frequency">Crossings of the mean, two to a swing, over the stretches that swing [Hz].</param>
internal sealed record Envelope(double[] Time, double[] Low, double[] Mean, double[] High, double Frequency)
{
    // Stretches that a picture is cut into [1].
    private const int Stretches = 90;

    // Share of the span that a swing must fill to be one, and stretches of the picture that must swing [1].
    private const double LeastSwing = 0.12;
    private const double LeastStretches = 0.08;

    // Crossings of its mean from which on a stretch swings [1].
    private const int LeastCrossings = 2;

    /// <summary>The band of a series; null where it does not swing so.</summary>
    /// <param name="x">Samples, horizontal, rising.</param>
    /// <param name="y">As many samples, vertical.</param>
    public static Envelope? Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        int width = x.Count / Stretches;
        if (width < 4)
        {
            return null;
        }

        int count = x.Count / width;
        (double[] time, double[] low, double[] mean, double[] high) = (new double[count], new double[count], new double[count], new double[count]);
        double span = Span(y);
        (int swinging, int crossings, double duration) = (0, 0, 0.0);
        for (int k = 0; k < count; k++)
        {
            double[] part = [.. Enumerable.Range(k * width, width).Select(i => y[i])];
            time[k] = 0.5 * (x[k * width] + x[((k + 1) * width) - 1]);
            (low[k], mean[k], high[k]) = (part.Min(), part.Average(), part.Max());
            int crossed = Enumerable.Range(1, width - 1).Count(i => part[i] > mean[k] != part[i - 1] > mean[k]);
            if (high[k] - low[k] > LeastSwing * span && crossed >= LeastCrossings)
            {
                swinging++;
                crossings += crossed;
                duration += x[((k + 1) * width) - 1] - x[k * width];
            }
        }

        return swinging < LeastStretches * count ? null : new Envelope(time, low, mean, high, crossings / (2.0 * duration));
    }

    // without the few per cent of an impact
    private static double Span(IReadOnlyList<double> y)
    {
        double[] sorted = [.. y.Order()];
        int cut = sorted.Length / 33;
        return Math.Max(1e-9, sorted[^(cut + 1)] - sorted[cut]);
    }
}
