namespace PushSim.Words.Runs;

/// <summary>The warnings of a run, each a sentence.</summary>
internal static class WarningWords
{
    private const string Calm = "take less slack, a slower ramp or drag, or a tether with more damping";

    public static string Of(RunWarning warning) => warning switch
    {
        RunWarning.OnItsBody w => Text($"at rest its body stands on the floor and carries {100.0 * w.Share:0} % of the load: raise clearance, take stiffer tyres or less downforce"),
        RunWarning.TreadMass w => Text($"the tyres' tread rings are {100.0 * w.Share:0.0} % of the robot's mass and add to its inertia while sliding"),
        RunWarning.Unloaded w => $"wheel {w.Wheel} carries nothing when the robot stands still",
        RunWarning.BelowCutOff w => PartWords.BelowCutOff(w.Lowest, w.CutOff),
        RunWarning.HardOnPack w => Text($"the battery gives up to {w.Current:0.0} A, which is {w.Current / w.Hourly:0} times what would empty it in an hour; ask the maker whether the pack may"),
        RunWarning.Hot w => Text($"motor {w.Motor} on {w.Drive} passes {w.Limit:0} °C after {w.Time:0.00} s"),
        RunWarning.Sensorless w => PartWords.Sensorless(w.Motor),
        RunWarning.Doubtful w => PlausibilityWords.Of(w.Why),
        RunWarning.Jerk w => Text($"the tether jerks with {w.Of.Force:0.00} N, {w.Of.Held:0.00} N of it held{(w.HidesBreakaway ? ", which hides the breakaway" : "")}; {Calm}"),
        RunWarning.TipsUndecided w => Text($"who gets under whom is undecided: standing, their front edges differ by {1e3 * Math.Abs(w.Difference):0.0} mm, and both together sink and rock by {1e3 * w.Width:0.0} mm; lower a tip or take stiffer tyres"),
        RunWarning.Hopping w => Hopping(w.Hops),
        RunWarning.Bouncing w => $"the robot bounces on the tether, which fell slack {w.Times} times; {Calm}",
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "no words for this warning"),
    };

    private static string Hopping(PushHops h)
    {
        IEnumerable<string> wheels = h.Wheels.Where(w => w.Hops).OrderByDescending(w => w.Share).Select(w => Text($"{w.Wheel} {100.0 * w.Share:0} %"));
        return Text($"wheels hop at about {h.Frequency:0} Hz from {h.From:0.00} to {h.To:0.00} s and hold nothing in the air: {string.Join(", ", wheels)} of the time since the touch");
    }
}
