using MathNet.Numerics;
using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Chance;

/// <summary>
/// What a record of real matches says of plausible pairs. Each pair has the weight that it gives to the record: its matches and the record are drawn from one share of wins, losses and stalemates, which is
/// Dirichlet over the pairs with their mean and spread, so that the weight is that of a Dirichlet-multinomial. Weighted pairs then tell the next match, and where the drawn values lie: importance sampling with
/// the prior as proposal; Kong's effective number of pairs (Kong, 1992, from memory) tells how few are left.
/// </summary>
/// <param name="Results">The record.</param>
/// <param name="Pairs">Plausible pairs [1].</param>
/// <param name="EffectivePairs">How many equally weighted ones they are worth [1].</param>
/// <param name="Before">Share of wins before the record [1].</param>
/// <param name="Share">Share of wins of the next match with its counting error, 95 % [1].</param>
/// <param name="Values">What moved most, by its own standard deviation.</param>
public sealed record LearnedOdds(RealResults Results, int Pairs, double EffectivePairs, double Before, Interval Share, IReadOnlyList<LearnedValue> Values)
{
    /// <summary>Pairs that are fought for it [1].</summary>
    public const int MostPairs = 8 * LatinBlock.Size;

    /// <summary>Fewer effective pairs than this tell hardly anything [1].</summary>
    public const double LeastEffective = 16.0;

    // Least and greatest sum of the Dirichlet's parameters: hardly any pair is open, or all are alike [1].
    private const double LeastSum = 0.1;
    private const double MostSum = 50.0;
    private const double LeastMean = 0.01;

    private const int MostValues = 6;

    // A mean that moved by less of its standard deviation is not told [1].
    private const double LeastMove = 0.2;

    /// <summary>Learns.</summary>
    /// <param name="pairs">Plausible pairs, at least <see cref="PairOdds.LeastPairs"/>.</param>
    /// <param name="results">The record.</param>
    /// <param name="source">What was drawn; null: values are not told.</param>
    public static LearnedOdds Of(PairOdds pairs, RealResults results, IDrawnMatches? source = null)
    {
        int n = pairs.Pairs.Count;
        double sum = Math.Clamp((1.0 / Math.Max(pairs.UnknownShare, 1e-9)) - 1.0, LeastSum, MostSum);
        double[] mean = [.. new[] { pairs.Pairs.Sum(p => p.Wins), pairs.Pairs.Sum(p => p.Losses), pairs.Pairs.Sum(p => p.Stalemates) }.Select(c => Math.Max(LeastMean, (double)c / (n * pairs.Tries)))];
        double[] prior = [.. mean.Select(m => sum * m / mean.Sum())];
        int[] real = [results.Wins, results.Losses, results.Stalemates];
        double[] logs = [.. pairs.Pairs.Select(p => Log(prior, [p.Wins, p.Losses, p.Stalemates], real))];
        double[] weights = [.. logs.Select(l => Math.Exp(l - logs.Max()))];
        double all = weights.Sum();
        double[] next = [.. pairs.Pairs.Select(p => (p.Wins + results.Wins + prior[0]) / (pairs.Tries + results.Matches + sum))];
        double share = weights.Zip(next, (w, q) => w * q).Sum() / all;
        double effective = all * all / weights.Sum(w => w * w);
        double off = ShareInterval.Z * Math.Sqrt(weights.Zip(next, (w, q) => w * w * (q - share) * (q - share)).Sum()) / all;
        double before = pairs.Pairs.Average(p => (p.Wins + prior[0]) / (pairs.Tries + sum));
        return new LearnedOdds(results, n, effective, before, new Interval(share, Math.Max(0.0, share - off), Math.Min(1.0, share + off)), source is null ? [] : Moved(pairs, source, [.. weights.Select(w => w / all)]));
    }

    // ln of the chance of the record given the pair's own matches
    private static double Log(double[] prior, int[] own, int[] real)
    {
        double log = SpecialFunctions.GammaLn(prior.Sum() + own.Sum()) - SpecialFunctions.GammaLn(prior.Sum() + own.Sum() + real.Sum());
        for (int i = 0; i < prior.Length; i++)
        {
            log += SpecialFunctions.GammaLn(prior[i] + own[i] + real[i]) - SpecialFunctions.GammaLn(prior[i] + own[i]);
        }

        return log;
    }

    private static IReadOnlyList<LearnedValue> Moved(PairOdds pairs, IDrawnMatches source, double[] weights)
    {
        double[][] values = [.. pairs.Pairs.Select(p => source.Values(p.Number))];
        IEnumerable<LearnedValue> all = source.Quantities.Select((q, i) =>
        {
            double[] x = [.. values.Select(v => v[i])];
            double mean = x.Average();
            double after = x.Zip(weights, (v, w) => v * w).Sum();
            return new LearnedValue(q.Name, mean, Math.Sqrt(x.Average(v => (v - mean) * (v - mean))), after, Math.Sqrt(x.Zip(weights, (v, w) => w * (v - after) * (v - after)).Sum()));
        });
        return [.. all.Where(v => v.Deviation > 0.0 && Math.Abs(v.After - v.Mean) >= LeastMove * v.Deviation).OrderByDescending(v => Math.Abs(v.After - v.Mean) / v.Deviation).Take(MostValues)];
    }
}
