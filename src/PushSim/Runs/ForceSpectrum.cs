using System.Numerics;
using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Spectrum of one wheel's tyre force over the settled part of a run: drive and sideways force together.</summary>
/// <param name="Wheel">Name of the wheel.</param>
/// <param name="Amplitudes">Amplitude at each frequency of <see cref="TurnResult.Frequencies"/> [N].</param>
/// <param name="Swing">Root mean square of all that lies above the lowest frequency of chatter [N].</param>
/// <param name="Peak">Frequency of the strongest line there [Hz].</param>
public sealed record ForceSpectrum(string Wheel, double[] Amplitudes, double Swing, double Peak)
{
    /// <summary>Below this a swing is the robot's own motion, not its tyres [Hz].</summary>
    public const double LowestFrequency = 15.0;

    private const int FewestSamples = 64;

    /// <summary>Samples of a window that the transform takes: the last power of two of them; 0 if there are too few.</summary>
    internal static int Length(int samples)
    {
        int n = (int)BitOperations.RoundUpToPowerOf2((uint)(samples + 1)) / 2;
        return n < FewestSamples ? 0 : n;
    }

    /// <summary>Frequencies of a transform, from 0 to half the sample rate [Hz].</summary>
    internal static double[] FrequenciesOf(int n, double rate) => [.. Enumerable.Range(0, (n / 2) + 1).Select(k => k * rate / n)];

    /// <summary>Spectrum of a wheel's tyre force over samples first..first + n - 1.</summary>
    internal static ForceSpectrum Of(WheelTrace wheel, int first, int n, double rate) =>
        Of(wheel.Name, wheel.LongitudinalForce.Values.Slice(first, n), wheel.LateralForce.Values.Slice(first, n), rate);

    /// <summary>Spectrum of two forces at right angles, sampled at the rate.</summary>
    internal static ForceSpectrum Of(string wheel, ReadOnlySpan<double> along, ReadOnlySpan<double> across, double rate)
    {
        int n = along.Length;
        double[] power = [.. WindowedPower.Of(along).Zip(WindowedPower.Of(across), (a, b) => a + b)];
        int lowest = (int)Math.Ceiling(LowestFrequency * n / rate);
        int best = lowest;
        for (int k = lowest; k < power.Length; k++)
        {
            best = power[k] > power[best] ? k : best;
        }

        return new ForceSpectrum(wheel, [.. power.Select(p => 2.0 * Math.Sqrt(p) / (WindowedPower.Mean * n))], WindowedPower.Swing(power, lowest, n), best * rate / n);
    }
}
