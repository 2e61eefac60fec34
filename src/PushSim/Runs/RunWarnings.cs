using PushSim.Numerics;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Runs;

/// <summary>What a reader of a run should know before believing it, in plain words.</summary>
internal static class RunWarnings
{
    // Share of the robot's mass in tread rings above which their inertia shows in a slide [1].
    private const double TreadMassWarning = 0.03;

    // Current that a pack is not asked for in passing: this many times what would empty it in an hour, for longer than this. Common practice, no source: packs of models are
    // sold for 20 to 50 times, those marked higher for moments only.
    private const double HardOnPack = 50.0;
    private const double LongOnPack = 0.05;

    /// <summary>The warnings of one robot.</summary>
    /// <param name="system">The robot as it stood at the start.</param>
    /// <param name="history">Its history.</param>
    /// <param name="upset">How it lost its stand, if it did.</param>
    /// <param name="chatters">Whether the run tells of chatter.</param>
    public static List<string> Of(RobotSystem system, RunHistory history, Upset upset, bool chatters)
    {
        List<string> warnings = [];
        if (upset is Upset.NoseUp or Upset.TailUp)
        {
            warnings.Add($"only wheels touch the floor here, never the body: if its {(upset == Upset.NoseUp ? "tail" : "nose")} would catch it, add a [[wheel]] there with skid = true");
        }

        AddTyres(warnings, system, history.Scenario, chatters);
        if (history.Robot.Battery is { CutOffVoltage: > 0.0 } battery && history.Trace.Battery!.Voltage.Min() is var least && least < battery.CutOffVoltage)
        {
            warnings.Add(Text($"the battery falls to {PlainNumber.Apart(least, battery.CutOffVoltage)} V, below its cut-off of {battery.CutOffVoltage:0.0} V"));
        }

        AddPack(warnings, history);
        if (history.Scenario.Manoeuvre.Kind is ManoeuvreKind.PullTest or ManoeuvreKind.DragTest && history.Trace.Tether is { } tether)
        {
            AddTether(warnings, history, tether.Force);
        }

        AddMotors(warnings, history);
        return warnings;
    }

    private static void AddTyres(List<string> warnings, RobotSystem system, ScenarioSettings scenario, bool chatters)
    {
        RobotSettings robot = scenario.Robot;
        double share = robot.Wheels.Sum(w => w.Tyre.TreadMass) / robot.Chassis.Mass;
        if (share > TreadMassWarning)
        {
            warnings.Add(Text($"the tyres' tread rings are {100.0 * share:0.0} % of the robot's mass and add to its inertia while sliding"));
        }

        string[] capped = [.. robot.Wheels.Where((w, i) => ModelBuilder.RingCap(w.Tyre, system.Static.Loads[i], scenario.Numerics.RingFrequencyCap) != (1.0, 1.0))
            .Select(w => w.Tyre.Name).Distinct()];

        // pulls and drives are the same with and without it (RingCapTests); chatter is not
        if (capped.Length > 0 && (chatters || scenario.Manoeuvre.Kind is ManoeuvreKind.Spot or ManoeuvreKind.Arc))
        {
            string hertz = Text($"{scenario.Numerics.RingFrequencyCap / (2.0 * Math.PI):0} Hz");
            warnings.Add(capped.Length == 1
                ? $"tyre {capped[0]} is so hard that its tread could buzz faster than {hertz}, too fast to follow: it is computed softer, and buzz above {hertz} is neither found nor ruled out"
                : $"tyres {string.Join(", ", capped[..^1])} and {capped[^1]} are so hard that their treads could buzz faster than {hertz}, too fast to follow: they are computed softer, and buzz above {hertz} is neither found nor ruled out");
        }

        foreach ((WheelSettings wheel, double load) in robot.Wheels.Zip(system.Static.Loads))
        {
            if (load <= 0.0)
            {
                warnings.Add($"wheel {wheel.Name} carries nothing when the robot stands still");
            }
        }
    }

    private static void AddPack(List<string> warnings, RunHistory history)
    {
        if (history.Robot.Battery is not { } battery || history.Trace.Battery?.Current is not { } current)
        {
            return;
        }

        double hourly = battery.Capacity / 3600.0;
        double peak = 0.0;
        double most = 0.0;
        double since = double.NaN;
        for (int i = 0; i < current.Length; i++)
        {
            bool isHard = current[i] > HardOnPack * hourly;
            since = !isHard ? double.NaN : double.IsNaN(since) ? history.Time[i] : since;
            peak = isHard ? Math.Max(peak, current[i]) : 0.0;
            most = history.Time[i] - since > LongOnPack ? Math.Max(most, peak) : most;
        }

        if (most > 0.0)
        {
            warnings.Add(Text($"the battery gives up to {most:0.0} A, which is {most / hourly:0} times what would empty it in an hour; ask the maker whether the pack may"));
        }
    }

    private static void AddMotors(List<string> warnings, RunHistory history)
    {
        RobotSettings robot = history.Robot;
        foreach (MotorTrace trace in history.Trace.Motors)
        {
            Powertrain.DriveSettings drive = robot.Drives[trace.Drive];
            Powertrain.MotorSettings m = drive.Motors[trace.Motor].Motor;
            if (trace.WindingTemperature?.FindIndex(v => v > m.WindingLimitTemperature) is int i and >= 0)
            {
                warnings.Add(Text($"motor {m.Name} on {drive.Name} passes {m.WindingLimitTemperature:0} °C after {history.Time[i]:0.00} s"));
            }
        }

        foreach (string motor in robot.Controllers.SelectMany(c => c.Motors).Select(m => robot.Drives[m.Drive].Motors[m.Motor].Motor)
            .Where(m => m.StandstillTorqueShare < 1.0).Select(m => m.Name).Distinct())
        {
            warnings.Add($"motor {motor} is sensorless: what it does at standstill under load is not predicted");
        }
    }

    private static void AddTether(List<string> warnings, RunHistory history, Series force)
    {
        const string Calm = "less slack, a slower ramp or more damping of the tether calms it";
        int peak = force.Values.IndexOf(force.Max());
        if (TetherPull.IsJerk(history, force, peak))
        {
            warnings.Add(Text($"the greatest force of {force[peak]:0.00} N is a jerk and no breakaway: {TetherPull.Held(history, force, peak):0.00} N of it were held, the rest changed the robot's speed; {Calm}"));
        }
        else if (TetherPull.Bounces(history.Time, force) is int bounces)
        {
            warnings.Add($"the robot bounces on the tether, which fell slack {bounces} times; {Calm}");
        }
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
