using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>Several tyres compared: every pair by Welch's test with Holm's correction, or by the differences within blocks where the pulls stand in such; the pulls looked through for one outlier
/// and for a trend.
/// Tyres that the motors did not let slide, or whose forces contradict the robot file, are not compared: their friction is not known.</summary>
public sealed record TyreComparison
{
    /// <summary>Share of experiments without any difference in which some pair is called different, at most [1].</summary>
    public const double Level = 0.05;

    /// <summary>Share of experiments that find the difference that matters [1].</summary>
    public const double Power = 0.8;

    /// <summary>A difference that matters where none is named: this share of the mean friction (common practice, no source) [1].</summary>
    public const double UsualShare = 0.05;

    /// <summary>Pulls of each tyre that is compared, at least: two say nothing of their own scatter [1].</summary>
    public const int FewestPulls = 3;

    private const int FewestForTrend = 4;

    /// <summary>Every pair that can be compared.</summary>
    public required IReadOnlyList<TyrePair> Pairs { get; init; }

    /// <summary>Tyres left out of the comparison, with the reason.</summary>
    public required IReadOnlyList<(string Tyre, NotCompared Reason)> LeftOut { get; init; }

    /// <summary>Pulls that do not fit; they are told, not left out.</summary>
    public required IReadOnlyList<OddPull> Odd { get; init; }

    /// <summary>Trends over the number of the pull: each tyre with four pulls or more, and all together where their order is known.</summary>
    public required IReadOnlyList<PullTrend> Trends { get; init; }

    /// <summary>Whether each tyre was pulled in one go, so that a slow change of the floor looks like a difference of tyres; null if the order is not known.</summary>
    public required bool? IsInTurn { get; init; }

    /// <summary>Whether the pulls stand in blocks, each with every tyre once, as a plan has them: then tyres are compared within blocks, and what a block shares (day, floor, charge) is gone.</summary>
    public bool IsInBlocks { get; init; }

    /// <summary>Standard deviation from pull to pull, pooled over the tyres [1]; NaN if unknown.</summary>
    public required double Spread { get; init; }

    /// <summary>Degrees of freedom of the spread [1].</summary>
    public required int SpreadFreedom { get; init; }

    /// <summary>The same as a share of each tyre's mean [1]; NaN if unknown.</summary>
    public required double RelativeSpread { get; init; }

    /// <summary>The difference of friction that matters [1]; NaN if unknown.</summary>
    public required double Difference { get; init; }

    /// <summary>Pulls of each tyre that find it in any pair [1]; 0 if unknown.</summary>
    public int PullsForDifference => Spread > 0.0 && Difference > 0.0 ? TTestPower.Count(Difference / Spread, Power, Strictest) : 0;

    private double Strictest { get; init; } = Level;

    /// <summary>Compares.</summary>
    /// <param name="fits">The tyres, at least two for pairs.</param>
    /// <param name="difference">Difference of friction that matters [1]; null: a twentieth of the mean.</param>
    public static TyreComparison Of(IReadOnlyList<TyreFit> fits, double? difference = null)
    {
        List<(string Tyre, NotCompared Reason)> leftOut = [.. fits.Select(f => (f.Name, WhyNot(f))).Where(f => f.Item2 != NotCompared.None)];
        List<TyreFit> compared = [.. fits.Where(f => WhyNot(f) == NotCompared.None)];
        double spread = Pooled(compared, f => Sample.Variance(f.Frictions));
        double matters = difference ?? (compared.Count > 0 ? UsualShare * compared.Average(f => Sample.Mean(f.Frictions)) : double.NaN);
        double strictest = Level / Math.Max(1, compared.Count * (compared.Count - 1) / 2);
        IReadOnlyList<double[]>? blocks = Blocks(compared);
        return new TyreComparison
        {
            Pairs = PairsOf(compared, spread, strictest, blocks),
            IsInBlocks = blocks is not null,
            LeftOut = leftOut,
            Odd = [.. OddOf(fits)],
            Trends = TrendsOf(fits),
            IsInTurn = InTurn(fits),
            Spread = spread,
            SpreadFreedom = compared.Sum(f => f.Frictions.Count - 1),
            RelativeSpread = Pooled(compared, f => Sample.Variance(f.Frictions) / Math.Pow(Sample.Mean(f.Frictions), 2.0)),
            Difference = matters,
            Strictest = strictest,
        };
    }

    private static NotCompared WhyNot(TyreFit f) =>
        f.Cause.IsInconsistent ? NotCompared.Inconsistent
        : f.Cause.IsOfMotors ? NotCompared.OfMotors
        : f.Frictions.Count < FewestPulls ? NotCompared.FewPulls
        : f.Frictions.Max() <= f.Frictions.Min() ? NotCompared.Equal : NotCompared.None;

    private static double Pooled(IReadOnlyList<TyreFit> fits, Func<TyreFit, double> variance)
    {
        int freedom = fits.Sum(f => f.Frictions.Count - 1);
        return freedom > 0 ? Math.Sqrt(fits.Sum(f => (f.Frictions.Count - 1) * variance(f)) / freedom) : double.NaN;
    }

    private static List<TyrePair> PairsOf(IReadOnlyList<TyreFit> fits, double spread, double strictest, IReadOnlyList<double[]>? blocks)
    {
        List<(TyreFit A, TyreFit B, WelchTest Test)> all = [];
        for (int i = 0; i < fits.Count; i++)
        {
            for (int j = i + 1; j < fits.Count; j++)
            {
                all.Add((fits[i], fits[j], blocks is null ? WelchTest.Careful(fits[i].Frictions, fits[j].Frictions) : WelchTest.Paired(blocks[i], blocks[j])));
            }
        }

        double[] adjusted = Holm.Adjust([.. all.Select(p => p.Test.P)]);
        return [.. all.Select((p, k) => Open(new TyrePair(p.A.Name, p.B.Name, p.Test, adjusted[k], spread, strictest, fits.Count), p.A, p.B))];
    }

    // Of two tyres told apart the weaker slid: the same motors gave more to the other. The stronger may be stronger still, where it is not known that it slid.
    private static TyrePair Open(TyrePair pair, TyreFit first, TyreFit second)
    {
        double told = pair.IsToldApart ? pair.Test.Difference.Value : 0.0;
        return pair with { IsHighOpen = first.Cause.IsLowerBound && told >= 0.0, IsLowOpen = second.Cause.IsLowerBound && told <= 0.0 };
    }

    // Friction of each tyre block by block; null where its pulls do not stand in blocks of every tyre once, three or more, or where a difference does not scatter
    private static double[][]? Blocks(List<TyreFit> fits)
    {
        int n = fits.Count < 2 ? 0 : fits[0].Frictions.Count;
        if (n < FewestPulls || fits.Any(f => f.Frictions.Count != n || f.Order.Count != n))
        {
            return null;
        }

        (int Tyre, double Friction)[] all = [.. fits.SelectMany((f, k) => f.Frictions.Select((v, i) => (Order: f.Order[i], Tyre: k, Friction: v))).OrderBy(p => p.Order).Select(p => (p.Tyre, p.Friction))];
        (int Tyre, double Friction)[][] blocks = [.. all.Chunk(fits.Count)];
        if (blocks.Any(b => b.Select(p => p.Tyre).Distinct().Count() < fits.Count))
        {
            return null;
        }

        double[][] rows = [.. fits.Select((_, k) => blocks.Select(b => b.First(p => p.Tyre == k).Friction).ToArray())];
        bool scatters = rows.Index().All(a => rows.Index().All(b => a.Index == b.Index || Sample.Variance([.. a.Item.Zip(b.Item, (x, y) => x - y)]) > 0.0));
        return scatters ? rows : null;
    }

    // One tyre of equal pulls in twenty is flagged by chance, over all tyres together
    private static IEnumerable<OddPull> OddOf(IReadOnlyList<TyreFit> fits)
    {
        int tested = Math.Max(1, fits.Count(f => GrubbsTest.Of(f.Frictions) is not null));
        foreach (TyreFit f in fits)
        {
            if (GrubbsTest.Of(f.Frictions, Level / tested) is { IsOutlier: true } test)
            {
                yield return new OddPull(f.Name, test.Index + 1, f.Frictions[test.Index], test);
            }
        }
    }

    private static List<PullTrend> TrendsOf(IReadOnlyList<TyreFit> fits)
    {
        List<(string Tyre, double[] Series)> found = [];
        foreach (TyreFit f in fits.Where(f => f.Frictions.Count >= FewestForTrend))
        {
            double mean = Sample.Mean(f.Frictions);
            found.Add((f.Name, [.. f.Frictions.Select(v => v / mean)]));
        }

        // pulled tyre after tyre, each less its own mean, all together say no more than each alone
        if (fits.Count > 1 && InTurn(fits) == false)
        {
            List<(double Order, double Share)> all = [];
            foreach (TyreFit f in fits.Where(f => f.Frictions.Count > 1))
            {
                double mean = Sample.Mean(f.Frictions);
                all.AddRange(f.Frictions.Select((v, i) => (f.Order[i], (v / mean) - 1.0)));
            }

            if (all.Count >= FewestForTrend)
            {
                found.Add(("", [.. all.OrderBy(a => a.Order).Select(a => a.Share)]));
            }
        }

        TrendTest[] tests = [.. found.Select(t => TrendTest.Of(t.Series))];
        double[] adjusted = Holm.Adjust([.. tests.Select(t => t.P)]);
        return [.. found.Select((t, k) => new PullTrend(t.Tyre, tests[k], adjusted[k]) { StepAfter = adjusted[k] <= Level ? StepOf(t.Series) : null })];
    }

    private static int? StepOf(double[] series)
    {
        double middle = 0.5 * (series.Length - 1);
        double mean = Sample.Mean(series);
        double across = series.Select((v, i) => (i - middle) * (v - mean)).Sum();
        double along = series.Select((_, i) => (i - middle) * (i - middle)).Sum();
        double whole = series.Sum(v => (v - mean) * (v - mean));
        StepTest step = StepTest.Of(series);
        return step.P <= Level && step.Explains(series.Length) > across * across / (along * whole) ? step.After : null;
    }

    private static bool? InTurn(IReadOnlyList<TyreFit> fits)
    {
        if (fits.Count < 2 || fits.Any(f => f.Order.Count != f.Frictions.Count || f.Order.Count < 2))
        {
            return null;
        }

        int[] tyres = [.. fits.SelectMany((f, k) => f.Order.Select(o => (Order: o, Tyre: k))).OrderBy(p => p.Order).Select(p => p.Tyre)];
        return tyres.Zip(tyres.Skip(1)).Count(p => p.First != p.Second) == fits.Count - 1;
    }
}
