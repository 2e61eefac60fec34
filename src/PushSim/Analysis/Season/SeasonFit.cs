using MathNet.Numerics.LinearAlgebra;
using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Season;

/// <summary>
/// Friction by tyre and state of the floor of a season of pulls: logarithms of the friction, a mean for each tyre and state, a slope over the logarithm of the load for each tyre that was
/// pulled at more than one, the day a random effect of its own for each tyre and state, the scatter pooled over all. By <see cref="MixedFit"/>; intervals by Student with its
/// degrees of freedom. A series that was counted from a fresh floor on also has its fading (<see cref="FadingFit"/>).
/// Limits: the day's effects of different tyres are taken as independent, which makes differences between tyres wider than they need be.
/// </summary>
public sealed record SeasonFit
{
    private const double Confidence = 0.95;

    // Loads of a tyre that differ by less are one load [1].
    private const double SameLoad = 0.05;

    /// <summary>Each tyre and state, in the order of the first pulls.</summary>
    public required IReadOnlyList<SeasonGroup> Groups { get; init; }

    /// <summary>Scatter of the pulls of one day, as a share [1].</summary>
    public required double Scatter { get; init; }

    /// <summary>Spread from day to day, as a share; NaN where every tyre was pulled on one day only [1].</summary>
    public required double DaySpread { get; init; }

    /// <summary>Exponents of friction over load by tyre, where loads differ: friction goes as load to the minus p [1].</summary>
    public required IReadOnlyDictionary<string, Interval> LoadExponents { get; init; }

    /// <summary>Fits a season; null where there are too few pulls.</summary>
    /// <param name="pulls">The pulls.</param>
    public static SeasonFit? Of(IReadOnlyList<SeasonPull> pulls)
    {
        pulls = [.. pulls.Where(p => p.Load > 0.0 && p.Force > 0.0)];
        (string Tyre, string State)[] groups = [.. pulls.Select(p => (p.Tyre, p.State)).Distinct()];
        string[] tyres = [.. groups.Select(g => g.Tyre).Distinct()];
        Dictionary<string, double> reference = tyres.ToDictionary(t => t, t => Math.Exp(pulls.Where(p => p.Tyre == t).Average(p => Math.Log(p.Load))));
        string[] sloped = [.. tyres.Where(t => HasSlope(pulls, t))];
        double[][] rows = [.. pulls.Select(p => Row(p, groups, sloped, reference))];
        int[] blocks = Blocks(pulls);

        // fading first at no spread between days, then with what was found
        Dictionary<(string, string), FadingFit> fading = [];
        MixedFit? fit = MixedFit.Of(rows, [.. pulls.Select(p => p.LogFriction)], blocks);
        if (fit is null)
        {
            return null;
        }

        for (int round = 0; round < 2; round++)
        {
            foreach ((string tyre, string state) in groups)
            {
                int[] own = [.. Enumerable.Range(0, pulls.Count).Where(i => pulls[i].Tyre == tyre && pulls[i].State == state)];
                double[] flat = [.. own.Select(i => pulls[i].LogFriction - SlopeOf(pulls[i], tyre))];
                if (FadingFit.Of([.. own.Select(i => pulls[i])], flat, [.. own.Select(i => blocks[i])], fit.Within, fit.Between) is FadingFit found)
                {
                    fading[(tyre, state)] = found;
                }
                else
                {
                    fading.Remove((tyre, state));
                }
            }

            // what the two constants of a series take from the scatter is a column each
            double[][] all = [.. pulls.Select((p, i) => rows[i].Concat(fading.SelectMany(f => f.Key == (p.Tyre, p.State) ? f.Value.Slopes(p.Count ?? 0.0) : [0.0, 0.0])).ToArray())];
            double[] values = [.. pulls.Select(p => p.LogFriction - (fading.TryGetValue((p.Tyre, p.State), out FadingFit? f) ? f.LogLeft(p.Count ?? 0.0) : 0.0))];
            fit = MixedFit.Of(all, values, blocks) ?? MixedFit.Of(rows, values, blocks)!;
            if (fading.Count == 0)
            {
                break;
            }
        }

        bool hasDays = groups.Any(g => pulls.Where(p => (p.Tyre, p.State) == g).Select(p => p.Day).Distinct().Count() > 1);
        return new SeasonFit
        {
            Groups = [.. groups.Select((g, i) => Group(g, i))],
            Scatter = Math.Sqrt(fit.Within),
            DaySpread = hasDays ? Math.Sqrt(fit.Between) : double.NaN,
            LoadExponents = sloped.Select((t, i) => (t, Of(fit, groups.Length + i))).ToDictionary(e => e.t, e => new Interval(-e.Item2.Value, -e.Item2.High, -e.Item2.Low), StringComparer.Ordinal),
        };

        double SlopeOf(SeasonPull p, string tyre) => Array.IndexOf(sloped, tyre) is >= 0 and int k ? fit.Values[groups.Length + k] * Math.Log(p.Load / reference[tyre]) : 0.0;

        SeasonGroup Group((string Tyre, string State) g, int index)
        {
            SeasonPull[] own = [.. pulls.Where(p => (p.Tyre, p.State) == g)];
            Interval log = Of(fit, index);
            Vector<double> unit = Vector<double>.Build.Dense(fit.Values.Count, c => c == index ? 1.0 : 0.0);
            FadingFit? fades = fading.GetValueOrDefault(g);
            int slope = Array.IndexOf(sloped, g.Tyre);
            return new SeasonGroup(g.Tyre, g.State, new Interval(Math.Exp(log.Value), Math.Exp(log.Low), Math.Exp(log.High)), reference[g.Tyre], own.Length, own.Select(p => p.Day).Distinct().Count(), fit.Of(unit).Freedom)
            {
                Fading = fades is null ? null : Told(fades, g),
                ByDay =
                [
                    .. own.GroupBy(p => p.Day).OrderBy(d => d.Key)
                        .Select(d => (d.Key, Math.Exp(d.Average(p => p.LogFriction - (fades?.LogLeft(p.Count ?? 0.0) ?? 0.0) - (slope < 0 ? 0.0 : SlopeOf(p, g.Tyre)))), d.Count())),
                ],
            };
        }

        // both constants' errors come from their columns in the whole fit
        Fading Told(FadingFit f, (string, string) g)
        {
            int at = groups.Length + sloped.Length + (2 * fading.Keys.ToList().IndexOf(g));
            if (at + 1 >= fit.Values.Count)
            {
                return new Fading(new Interval(f.Fouled, double.NaN, double.NaN), new Interval(f.Scale, double.NaN, double.NaN), f.IsInMetres, f.Longest);
            }

            double t = StudentT.Factor(Confidence, Math.Max(1.0, fit.Of(Unit(at)).Freedom));
            double ofFouled = t * Math.Sqrt(fit.Covariance[at, at]), ofScale = t * Math.Sqrt(fit.Covariance[at + 1, at + 1]);
            return new Fading(
                new Interval(f.Fouled, Math.Max(0.0, f.Fouled - ofFouled), Math.Min(1.0, f.Fouled + ofFouled)), new Interval(f.Scale, f.Scale * Math.Exp(-ofScale), f.Scale * Math.Exp(ofScale)), f.IsInMetres, f.Longest);
        }

        Vector<double> Unit(int index) => Vector<double>.Build.Dense(fit.Values.Count, c => c == index ? 1.0 : 0.0);
    }

    private static Interval Of(MixedFit fit, int index)
    {
        Vector<double> unit = Vector<double>.Build.Dense(fit.Values.Count, c => c == index ? 1.0 : 0.0);
        (double variance, double freedom) = fit.Of(unit);
        double half = StudentT.Factor(Confidence, freedom) * Math.Sqrt(variance);
        return new Interval(fit.Values[index], fit.Values[index] - half, fit.Values[index] + half);
    }

    private static bool HasSlope(IReadOnlyList<SeasonPull> pulls, string tyre)
    {
        double[] logs = [.. pulls.Where(p => p.Tyre == tyre).Select(p => Math.Log(p.Load))];

        // within one state at least, or the state would take it
        return logs.Max() - logs.Min() > SameLoad
            && pulls.Where(p => p.Tyre == tyre).GroupBy(p => p.State).Any(s => s.Count() > 2 && s.Max(p => Math.Log(p.Load)) - s.Min(p => Math.Log(p.Load)) > SameLoad);
    }

    private static double[] Row(SeasonPull p, (string Tyre, string State)[] groups, string[] sloped, Dictionary<string, double> reference) =>
        [.. groups.Select(g => g == (p.Tyre, p.State) ? 1.0 : 0.0), .. sloped.Select(t => t == p.Tyre ? Math.Log(p.Load / reference[t]) : 0.0)];

    private static int[] Blocks(IReadOnlyList<SeasonPull> pulls)
    {
        Dictionary<(string, string, int), int> known = [];
        return [.. pulls.Select(p => known.TryGetValue((p.Tyre, p.State, p.Day), out int b) ? b : known[(p.Tyre, p.State, p.Day)] = known.Count)];
    }
}
