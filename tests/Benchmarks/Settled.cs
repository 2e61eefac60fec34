using System.Diagnostics;

namespace PushSim.Benchmarks;

/// <summary>Best of repeated timings, which have settled once two seconds have brought nothing better by a hundredth: the JIT compiles hot methods anew in the background for
/// seconds, and a fixed count of rounds read up to 1.9 times too slow.</summary>
internal sealed class Settled
{
    // Gain that still counts [1]; time without one that ends the repeats, and the longest of all [s].
    private const double Gain = 0.99;
    private const double Quiet = 2.0;
    private const double Longest = 20.0;

    private readonly long _start = Stopwatch.GetTimestamp();
    private long _since = Stopwatch.GetTimestamp();
    private double _counted = double.MaxValue;

    /// <summary>Least timing so far, in the unit of the timings.</summary>
    public double Best { get; private set; } = double.MaxValue;

    /// <summary>Whether it falls no more, or the time is up.</summary>
    public bool IsReached => Stopwatch.GetElapsedTime(_since).TotalSeconds > Quiet || Stopwatch.GetElapsedTime(_start).TotalSeconds > Longest;

    /// <summary>Takes one timing.</summary>
    public void Add(double time)
    {
        Best = Math.Min(Best, time);
        if (time < Gain * _counted)
        {
            (_counted, _since) = (time, Stopwatch.GetTimestamp());
        }
    }
}
