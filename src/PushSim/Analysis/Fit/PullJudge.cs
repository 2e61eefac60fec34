using PushSim.Analysis.Statistics;
using PushSim.Surroundings;

namespace PushSim.Analysis.Fit;

/// <summary>Finds the pulls of a stretch by <see cref="PullFinder"/>, as a fit of the whole log does, and tells which are to be done again.</summary>
public static class PullJudge
{
    // A plateau that changes by more than this share from its begin to its end, and by more than so many of the errors of that change, was no steady one [1].
    private const double MostChange = 0.15;
    private const double SureChange = 4.0;

    private const int FewestSlack = 5;

    /// <summary>Finds and judges.</summary>
    /// <param name="stretch">Slack, one pull or more, slack.</param>
    /// <param name="hasGap">Whether readings are missing in it.</param>
    public static IReadOnlyList<WatchedPull> Of(ForceTrace stretch, bool hasGap = false)
    {
        FoundTrace found = PullFinder.Find(stretch);
        if (found.Problem is TraceProblem problem)
        {
            return [new WatchedPull(stretch, null, hasGap ? PullFlaw.Gap : FlawOf(problem.Fault), double.NaN, double.NaN)];
        }

        return [.. found.Pulls.Select(p => Judged(stretch, p, hasGap))];
    }

    private static PullFlaw FlawOf(TraceFault fault) => fault switch
    {
        TraceFault.Saturated => PullFlaw.Clipped,
        TraceFault.Swings => PullFlaw.Swings,
        TraceFault.TooCoarse => PullFlaw.TooCoarse,
        TraceFault.NoSlack => PullFlaw.NoSlack,
        _ => PullFlaw.NoPull,
    };

    private static WatchedPull Judged(ForceTrace stretch, FoundPull pull, bool hasGap)
    {
        double moved = ZeroMoved(stretch, pull);
        if (hasGap)
        {
            return new WatchedPull(stretch, pull, PullFlaw.Gap, double.NaN, moved);
        }

        if (pull.Plateau is not Interval plateau)
        {
            return new WatchedPull(stretch, pull, PullFlaw.NoPlateau, double.NaN, moved);
        }

        double[] time = stretch.Time[pull.PlateauFrom..pull.PlateauTo];
        double[] force = stretch.Force[pull.PlateauFrom..pull.PlateauTo];
        LineFit line = LineFit.Of(time, force);
        double change = line.Slope * (time[^1] - time[0]);

        // standard error of the change of a line over n even readings: s sqrt(12/n)
        double error = line.ResidualDeviation * Math.Sqrt(12.0 / time.Length);
        bool isSideways = Math.Abs(change) > MostChange * plateau.Value && Math.Abs(change) > SureChange * error;
        return new WatchedPull(stretch, pull, isSideways ? PullFlaw.Sideways : PullFlaw.None, change / plateau.Value, moved);
    }

    private static double ZeroMoved(ForceTrace stretch, FoundPull pull)
    {
        int edge = Math.Max(1, (pull.End - pull.Start) / 20);
        double[] before = stretch.Force[..Math.Max(0, pull.Start - edge)];
        double[] after = stretch.Force[Math.Min(stretch.Force.Length, pull.End + edge)..];
        return before.Length < FewestSlack || after.Length < FewestSlack ? double.NaN : Sample.Quantile(after, 0.5) - Sample.Quantile(before, 0.5);
    }
}
