using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>
/// Chatter in the settled last part of a run: the strongest line, above 15 Hz, of the wheels' tyre forces, where the forces
/// swing by more than a stated share of the load they carry.
/// </summary>
internal static class ChatterFinder
{
    // Standard deviation of a tyre force, as a share of its mean load, above which it is chatter [1]. A quiet turn shows under 0.01.
    private const double Threshold = 0.05;

    // Below this a swing is the robot's own motion, not its tyres [Hz].
    private const double LowestFrequency = 15.0;

    private const double Share = 0.4;

    public static double? Find(RunHistory history)
    {
        int last = history.Time.Length - 1;
        int from = history.IndexAt(history.Time[last] * (1.0 - Share));

        // a power of two, where the transform is fast
        int n = (int)BitOperations.RoundUpToPowerOf2((uint)(last - from + 2)) / 2;
        from = last - n + 1;
        if (n < 64)
        {
            return null;
        }

        double rate = 1.0 / (history.Time[1] - history.Time[0]);
        double[] power = new double[(n / 2) + 1];
        bool isLoud = false;
        for (int i = 0; i < history.Scenario.Robot.Wheels.Count; i++)
        {
            double load = RunHistory.Mean(history.Wheel(i, "load_n"), from, last);
            foreach (string what in new[] { "lateral_force_n", "longitudinal_force_n" })
            {
                ReadOnlySpan<double> values = history.Wheel(i, what).AsSpan(from, n);
                if (Deviation(values) > Threshold * load)
                {
                    isLoud |= AddSpectrum(values, rate, power) > Threshold * load;
                }
            }
        }

        if (!isLoud)
        {
            return null;
        }

        int lowest = (int)Math.Ceiling(LowestFrequency * n / rate);
        int best = lowest;
        for (int k = lowest; k < power.Length; k++)
        {
            best = power[k] > power[best] ? k : best;
        }

        return best * rate / n;
    }

    private static double Deviation(ReadOnlySpan<double> values)
    {
        double sum = 0.0;
        double squares = 0.0;
        foreach (double v in values)
        {
            sum += v - values[0];
            squares += (v - values[0]) * (v - values[0]);
        }

        return Math.Sqrt(Math.Max(0.0, (squares / values.Length) - (sum / values.Length * (sum / values.Length))));
    }

    // Adds the windowed power of a series; returns the root mean square of what lies above the lowest frequency.
    private static double AddSpectrum(ReadOnlySpan<double> values, double rate, double[] power)
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
        double high = 0.0;
        for (int k = 0; k < power.Length; k++)
        {
            double p = line[k].Magnitude * line[k].Magnitude;
            power[k] += p;
            high += k * rate / n >= LowestFrequency ? p : 0.0;
        }

        // two sides, mean square of the Hann window 3/8
        return Math.Sqrt(2.0 * high / (0.375 * n * n));
    }
}
