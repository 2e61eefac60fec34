using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using PushSim.Analysis.Chance;
using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Tests.Analysis;

/// <summary>Matches with a truth in closed form: the first robot wins where a weighted sum of normal scores, drawn as those of real matches are, lies above a cut. Five scores are unknown once, three are others in
/// each match. Of the kind "product" it wins where two scores have the same sign, so that no single score tells anything and blocks of draws gain nothing.</summary>
internal sealed class PlausiblePair(ulong seed, string kind, double cut) : IMatchRunner, IMatchSource
{
    private const int Once = 5;
    private const int All = 8;

    private static readonly DrawFactor[] s_factors = [.. Enumerable.Range(0, All).Select(i => new DrawFactor($"cause {i}", 1.0, i >= Once))];

    // standard deviation of what is unknown once and of what varies [1]
    private readonly double _once = kind switch { "mostly unknown" => 1.0, "one cause" => 1.0, _ => 0.6 };
    private readonly double _each = kind switch { "mostly unknown" => 0.3, "one cause" => 1e-3, _ => 0.8 };

    public ScenarioSettings? Match(long number, out string cause) => throw new NotSupportedException();

    public void Run(IMatchSource source, IReadOnlyList<long> numbers, Action<MatchEnd> done, int threads, CancellationToken cancel)
    {
        foreach (long number in numbers)
        {
            done(End(number));
        }
    }

    public MatchEnd End(long number)
    {
        bool isWon = kind == "product" ? Z(0, number) * Z(1, number) > 0.0 : Sum(number) > cut;
        return new MatchEnd(number, isWon ? 0 : 1, ShoveEnding.Line, isWon ? 0.5 : -0.5, 1.0, BindingKind.Tyre, BindingKind.Motor);
    }

    public Tally Drawn(long matches) => Tally.Of(Enumerable.Range(0, (int)matches).Select(n => End(n)));

    /// <summary>The share of bouts that it wins, by the normal distribution and quadrature.</summary>
    public double BestOf(int matches) => kind == "product" ? (matches == 1 ? 0.5 : throw new NotSupportedException()) : GaussLegendreRule.Integrate(
        u => Normal.PDF(0.0, 1.0, u) * (1.0 - Binomial.CDF(Math.Clamp(Normal.CDF(0.0, 1.0, ((_once * u) - cut) / _each), 0.0, 1.0), matches, matches / 2)), -8.0, 8.0, 128);

    private double Sum(long number)
    {
        double once = 0.0;
        double each = 0.0;
        if (kind == "one cause")
        {
            once = Z(0, number) * Math.Sqrt(Once);
        }
        else
        {
            for (int i = 0; i < Once; i++)
            {
                once += Z(i, number);
            }
        }

        for (int i = Once; i < All; i++)
        {
            each += Z(i, number);
        }

        return (_once * once / Math.Sqrt(Once)) + (_each * each / Math.Sqrt(All - Once));
    }

    private double Z(int i, long number) => NormalQuantile.Of(s_factors[i].Uniform(seed, number));
}
