using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Plan;

/// <summary>A plan of pull tests: how often each tyre is pulled so that a difference that matters is found, and in which order. Every block has each tyre
/// once, in an order drawn by chance, so that a slow change of floor, battery or cell falls on all tyres alike.</summary>
public sealed record PullPlan
{
    /// <summary>Scatter from pull to pull where none was measured, as a share of the mean (common practice, no source) [1].</summary>
    public const double UsualSpread = 0.03;

    // Fewer say too little of the scatter itself (common practice, no source) [1].
    private const int FewestPulls = TyreComparison.FewestPulls;

    private static readonly ulong s_order = Philox.NumberOf("order of the pulls");

    /// <summary>More pulls of each tyre than this are not planned: nobody does them, and the floor does not stay the same [1].</summary>
    public const int MostPulls = 60;

    /// <summary>Names of the tyres.</summary>
    public required IReadOnlyList<string> Tyres { get; init; }

    /// <summary>Difference that matters, as a share of the friction [1].</summary>
    public required double Difference { get; init; }

    /// <summary>Scatter from pull to pull, as a share of the friction [1].</summary>
    public required double Spread { get; init; }

    /// <summary>Degrees of freedom of the scatter where it was measured; infinite where it is taken as exact [1].</summary>
    public double Pilot { get; private init; } = double.PositiveInfinity;

    /// <summary>Wanted share of tests that find the difference in a given pair [1].</summary>
    public required double Power { get; init; }

    /// <summary>Pulls of each tyre that would be needed [1].</summary>
    public required int Needed { get; init; }

    /// <summary>Pulls of each tyre in the plan: what is needed, at least three, at most <see cref="MostPulls"/> [1].</summary>
    public required int PullsEach { get; init; }

    /// <summary>The pulls in their order.</summary>
    public required IReadOnlyList<PlannedPull> Pulls { get; init; }

    /// <summary>Smallest difference that the plan finds with the wanted power, as a share of the friction [1].</summary>
    public required double Finds { get; init; }

    /// <summary>Makes a plan.</summary>
    /// <param name="tyres">Names, two or more, no two equal.</param>
    /// <param name="difference">Difference that matters, as a share of the friction, above 0 [1].</param>
    /// <param name="spread">Scatter from pull to pull, as a share of the friction, above 0 [1].</param>
    /// <param name="power">Wanted share of tests that find it [1].</param>
    /// <param name="seed">Of the order.</param>
    /// <param name="pilot">Degrees of freedom of a scatter that was measured: the promise then holds in the mean over all true ones that it leaves open; infinite: it is taken as exact [1].</param>
    public static PullPlan Of(IReadOnlyList<string> tyres, double difference, double spread, double power, int seed, double pilot = double.PositiveInfinity)
    {
        double strictest = TyreComparison.Level / (tyres.Count * (tyres.Count - 1) / 2);
        int needed = TTestPower.AssuredCount(difference / spread, power, pilot, strictest);
        int each = Math.Clamp(needed, FewestPulls, MostPulls);
        return new PullPlan
        {
            Tyres = tyres,
            Difference = difference,
            Spread = spread,
            Power = power,
            Needed = needed,
            PullsEach = each,
            Pulls = Order(tyres, each, seed),
            Finds = spread * (double.IsInfinity(pilot) ? TTestPower.SmallestDifference(each, power, strictest) : TTestPower.SmallestAssured(each, power, pilot, strictest)),
            Pilot = pilot,
        };
    }

    // no tyre twice in a row at the seam of two blocks: it would be pulled without a change and a cleaning between
    private static List<PlannedPull> Order(IReadOnlyList<string> tyres, int blocks, int seed)
    {
        long draw = 0;
        List<PlannedPull> pulls = [];
        for (int block = 1; block <= blocks; block++)
        {
            string[] order = [.. tyres];
            do
            {
                draw = Shuffle(order, seed, draw);
            }
            while (tyres.Count > 2 && pulls.Count > 0 && order[0] == pulls[^1].Tyre);

            pulls.AddRange(order.Select(t => new PlannedPull(0, block, t)));
        }

        return [.. pulls.Select((p, i) => p with { Number = i + 1 })];
    }

    // Fisher and Yates: every order alike; the number of the next draw comes back
    private static long Shuffle(string[] order, int seed, long draw)
    {
        for (int i = order.Length - 1; i > 0; i--)
        {
            int k = (int)((i + 1) * Philox.Uniform((ulong)seed, draw++, s_order));
            (order[i], order[k]) = (order[k], order[i]);
        }

        return draw;
    }
}
