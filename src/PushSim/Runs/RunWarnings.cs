using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Runs;

/// <summary>Finds what a reader of a run should know before believing it.</summary>
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
    /// <param name="hops">How its wheels keep the floor in a push; null if it does not push.</param>
    public static List<RunWarning> Of(RobotSystem system, RunHistory history, PushHops? hops = null)
    {
        List<RunWarning> warnings = [];
        if (system.Static.Underside > 0.0)
        {
            warnings.Add(new RunWarning.OnItsBody(system.Static.Underside / (system.Static.Underside + system.Static.Loads.Sum())));
        }

        AddTyres(warnings, system, history.Robot);
        if (history.Robot.Battery is { CutOffVoltage: > 0.0 } battery && history.Peaks.BatteryVoltage is { Value: var least } && least < battery.CutOffVoltage)
        {
            warnings.Add(new RunWarning.BelowCutOff(least, battery.CutOffVoltage));
        }

        AddPack(warnings, history);
        if (hops?.Wheel is not null)
        {
            warnings.Add(new RunWarning.Hopping(hops));
        }

        if (history.Scenario.Manoeuvre.Traits.NeedsTether && history.Trace.Tether is { } tether)
        {
            AddTether(warnings, history, tether.Force);
        }

        AddMotors(warnings, history);
        return warnings;
    }

    private static void AddTyres(List<RunWarning> warnings, RobotSystem system, RobotSettings robot)
    {
        double share = robot.Wheels.Sum(w => w.Tyre.TreadMass) / robot.Chassis.Mass;
        if (share > TreadMassWarning)
        {
            warnings.Add(new RunWarning.TreadMass(share));
        }

        foreach ((WheelSettings wheel, double load) in robot.Wheels.Zip(system.Static.Loads))
        {
            if (load <= 0.0 && wheel.Height <= 0.0)
            {
                warnings.Add(new RunWarning.Unloaded(wheel.Name));
            }
        }
    }

    private static void AddPack(List<RunWarning> warnings, RunHistory history)
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
            warnings.Add(new RunWarning.HardOnPack(most, hourly));
        }
    }

    private static void AddMotors(List<RunWarning> warnings, RunHistory history)
    {
        RobotSettings robot = history.Robot;
        foreach (MotorTrace trace in history.Trace.Motors)
        {
            Powertrain.DriveSettings drive = robot.Drives[trace.Drive];
            Powertrain.MotorSettings m = drive.Motors[trace.Motor].Motor;
            if (trace.WindingTemperature?.FindIndex(v => v > m.WindingLimitTemperature) is int i and >= 0)
            {
                warnings.Add(new RunWarning.Hot(m.Name, drive.Name, m.WindingLimitTemperature, history.Time[i]));
            }
        }

        foreach (string motor in robot.Controllers.SelectMany(c => c.Motors).Select(m => robot.Drives[m.Drive].Motors[m.Motor].Motor)
            .Where(m => m.StandstillTorqueShare < 1.0).Select(m => m.Name).Distinct())
        {
            warnings.Add(new RunWarning.Sensorless(motor));
        }
    }

    private static void AddTether(List<RunWarning> warnings, RunHistory history, Series force)
    {
        if (TetherPull.Of(history) is { IsTelling: true } pull)
        {
            warnings.Add(new RunWarning.Jerk(pull.Jerk!, pull.IsHidden));
        }
        else if (TetherPull.Bounces(history.Time, force) is int bounces)
        {
            warnings.Add(new RunWarning.Bouncing(bounces));
        }
    }
}
