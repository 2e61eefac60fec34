namespace PushSim.Analysis.Compare;

/// <summary>
/// Tones of a recording: mean power spectrum of half-overlapped pieces under a Hann window (Welch, IEEE Trans. Audio Electroacoustics 15, 1967), peaks that stand out of the median around
/// them. A phone's sound says nothing of forces, only of frequencies.
/// </summary>
public static class SoundSpectrum
{
    /// <summary>Least rate of a recording [Hz].</summary>
    public const double LeastRate = 4000.0;

    /// <summary>Least length of a recording [s].</summary>
    public const double LeastLength = 0.5;

    // Length of a piece, which sets how fine frequencies are told [s]; tones between these are looked for [Hz]: below, hands and wind; above, no tyre rings that is told here.
    private const double Piece = 0.5;
    private const double Lowest = 15.0;
    private const double Highest = 1500.0;

    // A tone stands this far out of the median of an octave around it [dB]; of noise hardly one bin in a thousand does over ten pieces.
    private const double Standing = 12.0;

    // How far a multiple may lie from where it should, and neighbours that belong to one tone [1].
    private const double Near = 0.03;
    private const double Apart = 0.06;

    private const int MostPeaks = 6;

    /// <summary>The tones, loudest first.</summary>
    /// <param name="samples">One channel.</param>
    /// <param name="rate">Its rate [Hz].</param>
    public static IReadOnlyList<SoundPeak> Peaks(double[] samples, double rate)
    {
        int n = 1;
        while (n < Piece * rate && 2 * n <= samples.Length)
        {
            n *= 2;
        }

        double[] power = Power(samples, n);
        double step = rate / n;
        int first = Math.Max(2, (int)(Lowest / step)), last = Math.Min(power.Length - 2, (int)(5.0 * Highest / step));
        List<(int Bin, double Level)> found = [];
        for (int i = first; i <= last; i++)
        {
            double level = 10.0 * Math.Log10(power[i] / Background(power, i));
            if (power[i] >= power[i - 1] && power[i] > power[i + 1] && level > Standing)
            {
                found.Add((i, level));
            }
        }

        List<(int Bin, double Level)> loud = [];
        foreach ((int Bin, double Level) f in found.OrderByDescending(f => power[f.Bin]))
        {
            if (loud.All(l => Math.Abs(l.Bin - f.Bin) > Math.Max(3.0, Apart * l.Bin)))
            {
                loud.Add(f);
            }
        }

        return [.. loud.Where(l => l.Bin * step <= Highest).Take(MostPeaks).Select(l => new SoundPeak(
            step * Middle(power, l.Bin), step * Width(power, l.Bin), l.Level, Enumerable.Range(2, 4).Count(k => loud.Any(o => Math.Abs((o.Bin / (double)l.Bin) - k) < Near * k))))];
    }

    private static double[] Power(double[] samples, int n)
    {
        double[] sum = new double[(n / 2) + 1];
        for (int from = 0; from + n <= samples.Length; from += n / 2)
        {
            double[] piece = WindowedPower.Of(samples.AsSpan(from, n));
            for (int i = 0; i < sum.Length; i++)
            {
                sum[i] += piece[i];
            }
        }

        return sum;
    }

    // median of an octave around a bin
    private static double Background(double[] power, int bin)
    {
        int from = Math.Max(1, Math.Min((int)(bin / 1.42), bin - 6)), to = Math.Min(power.Length - 1, Math.Max((int)(bin * 1.42), bin + 6));
        double[] near = power[from..(to + 1)];
        Array.Sort(near);
        return Math.Max(1e-300, near[near.Length / 2]);
    }

    // the top of the parabola through the logarithms of three bins
    private static double Middle(double[] power, int i)
    {
        (double a, double b, double c) = (Math.Log(power[i - 1]), Math.Log(power[i]), Math.Log(power[i + 1]));
        double curve = a - (2.0 * b) + c;
        return i + (curve < 0.0 ? 0.5 * (a - c) / curve : 0.0);
    }

    private static double Width(double[] power, int i)
    {
        int low = i, high = i;
        while (low > 1 && power[low - 1] > 0.5 * power[i])
        {
            low--;
        }

        while (high < power.Length - 2 && power[high + 1] > 0.5 * power[i])
        {
            high++;
        }

        return high - low + 1;
    }
}
