using PushSim.Scenarios.Editing;
using PushSim.Workbench.Designs;

namespace PushSim.Workbench.Behind;

/// <summary>Which values matter most for who wins.</summary>
internal static class MatterOrder
{
    // Places of each value's range that are played to find the order [1].
    private const int Places = 8;

    // Keys that are shown at all [1].
    private const int Most = 24;

    // What builders turn first, for the time before anybody asks.
    private static readonly string[] s_usual = ["mass", "kinetic_friction", "gear_ratio", "current_limit", "static_friction", "throttle", "cells", "friction"];

    /// <summary>An order without any run: what builders turn first, the own robot before the other.</summary>
    public static IReadOnlyList<string> Cheap(IReadOnlyList<EditRow> rows) =>
    [
        .. Alone(rows).Where(r => r.Value is not null && r.Line > 0 && Array.IndexOf(s_usual, r.Definition.Name) >= 0 && r.Section is not ("wheel" or "numerics"))
            .OrderBy(r => r.Owner == "robot" ? 0 : r.Owner.Length == 0 ? 1 : 2).ThenBy(r => Array.IndexOf(s_usual, r.Definition.Name)).Select(StateMaker.KeyOf).Distinct().Take(Most),
    ];

    /// <summary>
    /// By the distance to the flip in units of the tolerance; values without a tolerance after those, by their flip's distance as a share of the range; values that flip nothing last, by
    /// how much they change the shove.
    /// </summary>
    public static IReadOnlyList<string> Of(BehindJob job, StripScene scene, LaneRuns lanes, CancellationToken cancel)
    {
        EditRow[] rows = [.. Alone(job.Rows).Where(r => r.Value is not null && r.Line > 0 && r.Section is not "numerics" && r.Places(Places).Count > 1).DistinctBy(r => (r.File, r.Line, r.Definition.Name, r.Owner))];
        StripState[] strips = [.. rows.Select(r => new StripState(r, [.. r.Places(Places)]))];
        (int Strip, int Place)[] all = [.. strips.SelectMany((s, i) => Enumerable.Range(0, s.Places.Length).Select(p => (i, p)))];
        lanes.Run(all.Length, n => scene.At(rows[all[n].Strip], strips[all[n].Strip].Places[all[n].Place]), job.Read.Scenario!, (n, o) => strips[all[n].Strip].Put(all[n].Place, o), cancel);
        return [.. strips.OrderBy(Rank).ThenBy(Distance).ThenByDescending(Change).Select(s => StateMaker.KeyOf(s.Row)).Take(Most)];
    }

    // no row whose parts are changed together by another
    private static IEnumerable<EditRow> Alone(IReadOnlyList<EditRow> rows)
    {
        HashSet<(string, string)> inside = [.. rows.SelectMany(r => r.Members).Select(m => (m.Owner, m.Path))];
        return rows.Where(r => !inside.Contains((r.Owner, r.Path)));
    }

    private static int Rank(StripState s) => s.Flips.Count == 0 ? 2 : s.Row.Tolerance > 0.0 ? 0 : 1;

    private static double Distance(StripState s)
    {
        double near = s.Flips.Count == 0 ? 0.0 : s.Flips.Min(f => Math.Abs(f.Place - s.Row.Value!.Value));
        return near / (s.Row.Tolerance > 0.0 ? s.Row.Tolerance : s.Row.NearWidth);
    }

    private static double Change(StripState s)
    {
        double[] ground = [.. s.Outcomes.Where(o => o.Status != RunStatus.Failed && o.EndTime > o.FirstContact).Select(o => o.GroundGained / (o.EndTime - o.FirstContact))];
        return ground.Length == 0 ? 0.0 : ground.Max() - ground.Min();
    }
}
