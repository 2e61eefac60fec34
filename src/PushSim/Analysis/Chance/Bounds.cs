namespace PushSim.Analysis.Chance;

/// <summary>The two ends of a confidence interval; one with a middle is a <see cref="Statistics.Interval"/>.</summary>
/// <param name="Low">Lower end [unit of the value].</param>
/// <param name="High">Upper end [unit of the value].</param>
public readonly record struct Bounds(double Low, double High)
{
    /// <summary>Half of its width [unit of the value].</summary>
    public double HalfWidth => 0.5 * (High - Low);

    /// <summary>Whether a value lies in it, ends included.</summary>
    /// <param name="value">The value [unit of the interval].</param>
    public bool Holds(double value) => value >= Low && value <= High;
}
