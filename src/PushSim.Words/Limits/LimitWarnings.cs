using PushSim.Analysis.Limits;

namespace PushSim.Words.Limits;

/// <summary>The warnings of limits, each a sentence.</summary>
public static class LimitWarnings
{
    /// <summary>All of a robot.</summary>
    public static IReadOnlyList<string> Of(LimitResult r) => [.. r.Warnings.Select(Of)];

    private static string Of(LimitWarning warning) => warning switch
    {
        LimitWarning.Creeping w => Text($"this pull is that of a robot which still creeps forward, its skids dragging with {w.Drag:0.00} N; once it stands they can hold either way, and a load cell may show {w.Pull:0.00} to {w.Pull + (2.0 * w.Drag):0.00} N"),
        LimitWarning.NotFound => "the search for the steady pull came to no end, which says nothing about the robot: run a pull test of it instead",
        LimitWarning.RearsUp => "the robot rears up on its hook before its motors or tyres give out; lower the hook or the centre of mass, or move mass forward",
        LimitWarning.MayTip w => Text($"breaking away its tyres hold more than the {w.At:0.0} N at which it rears up on its hook, and its motors can give that: it may tip before it slides; lower the hook or the centre of mass"),
        LimitWarning.Starved => "the battery cannot deliver what all motors stalled ask for: it would fall below half of its voltage at rest, where a run ends as failed; motor forces are told too high, take a battery with less resistance or lower the current limits",
        LimitWarning.BelowCutOff w => "with all motors stalled " + PartWords.BelowCutOff(w.Voltage, w.CutOff),
        LimitWarning.Doubtful w => PlausibilityWords.Of(w.Why),
        LimitWarning.SlopeAcross => "the floor's slope across is left out of these limits",
        LimitWarning.Patches => "floor patches are left out of these limits: all wheels stand on the floor's own friction",
        LimitWarning.Sensorless w => PartWords.Sensorless(w.Motor),
        LimitWarning.Overheats { Winding: var hot } w => Text($"after {hot.Time:0} s of the match motor {hot.Motor} passes the {hot.Limit:0} °C that its winding bears (the hottest winding ends at up to {w.Peak:0} °C); rest longer, drive it less hard or take a larger motor"),
        LimitWarning.Unfound { Cases: var cases } => $"of the wirings {string.Join("; ", cases.Select(c => $"{LimitWords.Of(c.Wiring)}, {LimitWords.Of(c.Case)}"))}: no steady pull was found, so {(cases.Count == 1 ? "this row is" : "these rows are")} left out",
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "no words for this warning"),
    };
}
