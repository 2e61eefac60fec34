using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Chatter in the settled last part of a run: the strongest line, above 15 Hz, of the wheels' tyre forces, where the forces
/// swing by more than a stated share of the load they carry.</summary>
internal static class ChatterFinder
{
    // Standard deviation of a tyre force, as a share of its mean load, above which it is chatter [1]. A quiet turn shows under 0.01.
    private const double Threshold = 0.05;

    private const double Share = 0.4;

    public static double? Find(RunHistory history)
    {
        int last = history.Time.Length - 1;
        int from = history.IndexAt(history.Time[last] * (1.0 - Share));

        int n = ForceSpectrum.Length(last - from + 1);
        if (n == 0)
        {
            return null;
        }

        from = last - n + 1;

        double rate = 1.0 / (history.Time[1] - history.Time[0]);
        int lowest = (int)Math.Ceiling(ForceSpectrum.LowestFrequency * n / rate);
        double[] power = new double[(n / 2) + 1];
        bool isLoud = false;
        foreach (WheelTrace wheel in history.Trace.Wheels)
        {
            double load = wheel.Load.Mean(from, last);
            foreach (Series force in new[] { wheel.LateralForce, wheel.LongitudinalForce })
            {
                ReadOnlySpan<double> values = force.Values.Slice(from, n);
                if (Deviation(values) > Threshold * load)
                {
                    double[] own = WindowedPower.Of(values);
                    isLoud |= WindowedPower.Swing(own, lowest, n) > Threshold * load;
                    for (int k = 0; k < power.Length; k++)
                    {
                        power[k] += own[k];
                    }
                }
            }
        }

        if (!isLoud)
        {
            return null;
        }

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
}
