using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>Two tyres compared.</summary>
/// <param name="First">Name of the first.</param>
/// <param name="Second">Name of the second.</param>
/// <param name="Test">Welch's test of first less second [1].</param>
/// <param name="Adjusted">Its probability after Holm's correction over all pairs [1].</param>
/// <param name="Spread">Standard deviation from pull to pull, pooled over the tyres [1].</param>
/// <param name="Strictest">Level that the strictest pair must meet [1].</param>
/// <param name="Tyres">Tyres that are compared in all [1].</param>
public sealed record TyrePair(string First, string Second, WelchTest Test, double Adjusted, double Spread, double Strictest, int Tyres)
{
    /// <summary>Whether the first may grip better by any amount.</summary>
    public bool IsHighOpen { get; init; }

    /// <summary>Whether the second may grip better by any amount.</summary>
    public bool IsLowOpen { get; init; }

    /// <summary>The difference with its own interval, without the ends that are open [1].</summary>
    public Interval Difference => Open(Test.Difference);

    /// <summary>The difference with an interval of which, in 95 of 100 experiments, those of all pairs hold at once, without the ends that are open [1].</summary>
    public Interval Together => Open(RangeTest.Of(Test, Tyres).Difference);

    /// <summary>Pulls of each that find a difference as large as the one seen, at the strictest level [1].</summary>
    public int PullsToSee => TTestPower.Count(Test.Difference.Value / Spread, TyreComparison.Power, Strictest);

    /// <summary>Whether they differ beyond what scatter explains.</summary>
    public bool IsToldApart => Adjusted <= TyreComparison.Level;

    private Interval Open(Interval i) => new(i.Value, IsLowOpen ? double.NaN : i.Low, IsHighOpen ? double.NaN : i.High);
}
