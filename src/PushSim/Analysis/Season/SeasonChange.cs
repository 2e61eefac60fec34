using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Season;

/// <summary>
/// How the last day of a tyre and state compares with all days before it: the mean of its pulls over theirs, against what days and pulls differ by anyway (Student with the degrees of freedom of
/// the whole fit). Limits: every group is looked at for itself at 5 %, so that of twenty unchanged ones one is told.
/// </summary>
/// <param name="Group">The tyre and state.</param>
/// <param name="Day">The last day [1].</param>
/// <param name="Ratio">Last day over the days before, with its interval [1]; 1 without ends if there is none before.</param>
public sealed record SeasonChange(SeasonGroup Group, int Day, Interval Ratio)
{
    /// <summary>Whether it is new on that day.</summary>
    public bool IsNew => !Ratio.IsBounded;

    /// <summary>Whether more changed than days differ by.</summary>
    public bool IsSeen => Ratio.IsBounded && (Ratio.Low > 1.0 || Ratio.High < 1.0);

    /// <summary>All groups that were pulled on the last day of the season.</summary>
    /// <param name="fit">The season.</param>
    public static IReadOnlyList<SeasonChange> Of(SeasonFit fit)
    {
        int last = fit.Groups.SelectMany(g => g.ByDay).Select(d => d.Day).DefaultIfEmpty(0).Max();
        double day = double.IsNaN(fit.DaySpread) ? 0.0 : fit.DaySpread * fit.DaySpread;
        double pull = fit.Scatter * fit.Scatter;
        List<SeasonChange> changes = [];
        foreach (SeasonGroup g in fit.Groups.Where(g => g.ByDay[^1].Day == last))
        {
            (int Day, double Friction, int Pulls)[] before = [.. g.ByDay.SkipLast(1)];
            if (before.Length == 0)
            {
                changes.Add(new SeasonChange(g, last, new Interval(1.0, double.NaN, double.NaN)));
                continue;
            }

            double[] weights = [.. before.Select(d => 1.0 / Math.Max(1e-12, day + (pull / d.Pulls)))];
            double mean = before.Zip(weights).Sum(d => Math.Log(d.First.Friction) * d.Second) / weights.Sum();
            double log = Math.Log(g.ByDay[^1].Friction) - mean;
            double half = StudentT.Factor(0.95, Math.Max(1.0, g.Freedom)) * Math.Sqrt(day + (pull / g.ByDay[^1].Pulls) + (1.0 / weights.Sum()));
            changes.Add(new SeasonChange(g, last, new Interval(Math.Exp(log), Math.Exp(log - half), Math.Exp(log + half))));
        }

        return changes;
    }
}
