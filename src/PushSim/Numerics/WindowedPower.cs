using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace PushSim.Numerics;

/// <summary>Power spectrum under a Hann window, less the mean.</summary>
internal static class WindowedPower
{
    /// <summary>Mean square of the window [1].</summary>
    public const double MeanSquare = 0.375;

    /// <summary>Mean of the window [1].</summary>
    public const double Mean = 0.5;

    /// <summary>Squared magnitudes of the transform, from zero to half the sample rate: n/2 + 1 values [square of the series' unit].</summary>
    /// <param name="values">The series; a power of two of samples is fast.</param>
    public static double[] Of(ReadOnlySpan<double> values)
    {
        int n = values.Length;
        double mean = values.ToArray().Average();
        Complex[] line = new Complex[n];
        for (int i = 0; i < n; i++)
        {
            double hann = 0.5 - (0.5 * Math.Cos(2.0 * Math.PI * i / n));
            line[i] = (values[i] - mean) * hann;
        }

        Fourier.Forward(line, FourierOptions.Matlab);
        return [.. line.Take((n / 2) + 1).Select(c => (c.Real * c.Real) + (c.Imaginary * c.Imaginary))];
    }

    /// <summary>Root mean square of what lies at and above a line of the spectrum [the series' unit].</summary>
    /// <param name="power">Squared magnitudes, of one series or summed over several.</param>
    /// <param name="lowest">Number of the first line counted.</param>
    /// <param name="samples">Samples of the series [1].</param>
    public static double Swing(ReadOnlySpan<double> power, int lowest, int samples)
    {
        double high = 0.0;
        foreach (double p in power[Math.Min(lowest, power.Length)..])
        {
            high += p;
        }

        // the other half of the lines holds as much
        return Math.Sqrt(2.0 * high / (MeanSquare * samples * samples));
    }
}
