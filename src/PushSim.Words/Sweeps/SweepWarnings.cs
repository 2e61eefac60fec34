using PushSim.Analysis.Sweep;
using PushSim.Words.Runs;

namespace PushSim.Words.Sweeps;

/// <summary>What to know before believing a sweep.</summary>
public static class SweepWarnings
{
    /// <summary>The warnings.</summary>
    /// <param name="inputs">The inputs.</param>
    /// <param name="table">The points and what is best.</param>
    /// <param name="odds">Drawn matches at each point; 0 for none [1].</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<SweepInput> inputs, SweepTable table, long odds)
    {
        IReadOnlyList<SweepPoint> points = table.Points;
        List<string> warnings = [.. points.Where(p => p.Failed is not null).Select(p => $"the run at {SweepWords.At(inputs, p)} failed: {RunWords.Cause(p.Failed)}")];
        int ground = table.Columns.Select(c => c.Key).ToList().IndexOf(SweepTable.Ground);
        long failed = points.Sum(p => p.Odds?.Failed ?? 0);
        if (failed > 0)
        {
            warnings.Add(failed == 1 ? "1 drawn match failed and is left out of the shares" : $"{failed} drawn matches failed and are left out of the shares");
        }

        int tipped = points.Count(p => p.HasTipped);
        if (tipped > 0)
        {
            string what = odds > 0 ? "" : ", and that loses a shove whatever the ground: --odds 200 gives the share of wins";
            warnings.Add($"in {tipped} of {points.Count} runs a robot tips over or loses the floor, which ends the run: the numbers are those up to then{(ground >= 0 ? what : "")}");
        }

        int bouncing = points.Count(p => p.IsBouncing);
        if (bouncing > 0)
        {
            warnings.Add($"in {bouncing} of {points.Count} runs the robot bounces on the tether, and its mean pull scatters: less slack, a slower ramp or more damping of the tether calms it");
        }

        // a match ends at the line, so every way of winning gains about as much
        if (ground >= 0 && odds == 0 && (table.IsSame(ground) || table.IsAlike(ground)) && table.Columns.All(c => c.Key != SweepTable.GroundRate))
        {
            warnings.Add($"the ground gained hardly tells the points apart, as where every match ends at the line: --odds 200 gives the share of wins, --ask {SweepTable.GroundRate} the quickest");
        }

        return warnings;
    }
}
