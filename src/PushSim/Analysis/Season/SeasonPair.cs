using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Season;

/// <summary>
/// Two tyres of a season on the days on which both were pulled: Student's interval over the days of the ratio of their means, from which what a day shares (cell, floor, air) is gone
/// (Montgomery, Design and Analysis of Experiments, section 2.5, paired comparisons; from memory). Limits: days count alike however many pulls they have.
/// </summary>
/// <param name="First">The one.</param>
/// <param name="Second">The other.</param>
/// <param name="Days">Days on which both were pulled [1].</param>
/// <param name="Ratio">Friction of the first over that of the second with its 95 % interval, at the loads that both are told for [1].</param>
public sealed record SeasonPair(SeasonGroup First, SeasonGroup Second, int Days, Interval Ratio)
{
    // Fewer days tell no scatter [1].
    private const int FewestDays = 3;

    /// <summary>Whether they differ by more than days and pulls explain.</summary>
    public bool IsToldApart => Ratio.Low > 1.0 || Ratio.High < 1.0;

    /// <summary>Compares two; null where they share fewer than three days.</summary>
    /// <param name="first">The one.</param>
    /// <param name="second">The other.</param>
    public static SeasonPair? Of(SeasonGroup first, SeasonGroup second)
    {
        double[] logs = [.. first.ByDay.Join(second.ByDay, a => a.Day, b => b.Day, (a, b) => Math.Log(a.Friction / b.Friction))];
        if (logs.Length < FewestDays)
        {
            return null;
        }

        Interval log = Interval.OfMean(logs);
        return new SeasonPair(first, second, logs.Length, new Interval(Math.Exp(log.Value), Math.Exp(log.Low), Math.Exp(log.High)));
    }
}
