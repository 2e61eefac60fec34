using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Limits;

/// <summary>What binds a wheel at a moment of a run.</summary>
public enum WheelBinding
{
    /// <summary>Nothing: no command, or no motor.</summary>
    Nothing,

    /// <summary>Its tyre slides at the end of its grip.</summary>
    SlidingTyre,

    /// <summary>A controller holds the current at its limit.</summary>
    CurrentLimit,

    /// <summary>The motor gives what the commanded voltage less its back-EMF allows.</summary>
    MotorVoltage,

    /// <summary>The battery's voltage has broken down under the load.</summary>
    Battery,

    /// <summary>A hot controller has folded its limit back.</summary>
    Heat,

    /// <summary>It is off the floor.</summary>
    Lifted,
}

/// <summary>What bound one wheel over a run.</summary>
/// <param name="Wheel">The wheel.</param>
/// <param name="Moments">What bound it at each sample.</param>
/// <param name="TimeShare">Share of the time by <see cref="WheelBinding"/>; adds up to 1.</param>
/// <param name="ImpulseShare">Share of its impulse, the integral of its force's size along the robot, by <see cref="WheelBinding"/>; adds up to 1.</param>
/// <param name="Impulse">That impulse [N s].</param>
public sealed record WheelBindings(
    string Wheel, IReadOnlyList<WheelBinding> Moments, IReadOnlyList<double> TimeShare, IReadOnlyList<double> ImpulseShare, double Impulse);

/// <summary>
/// What bound each wheel at each sample of a run. Among causes that hold together the one nearest the floor counts: a lifted wheel, then a sliding tyre,
/// then a folded-back or plain current limit, then the battery, then the motor's voltage.
/// </summary>
public static class RunBinding
{
    /// <summary>Number of kinds [1].</summary>
    public const int Kinds = 7;

    private static readonly string[] s_words = ["nothing", "sliding tyre", "current limit", "motor voltage", "battery", "heat", "lifted"];

    private static readonly string[] s_keys = ["nothing", "sliding_tyre", "current_limit", "motor_voltage", "battery", "heat", "lifted"];

    // A wheel that carries less than this share of the mean load is off the floor [1].
    private const double Unloaded = 0.02;

    /// <summary>Plain words.</summary>
    public static string Of(WheelBinding binding) => s_words[(int)binding];

    /// <summary>Word for scripts.</summary>
    public static string Key(WheelBinding binding) => s_keys[(int)binding];

    /// <summary>All wheels of the first robot.</summary>
    public static IReadOnlyList<WheelBindings> Find(RunResult run) => Find(run.Scenario.Robot, run.Trace);

    /// <summary>All wheels of a robot with its history.</summary>
    /// <param name="robot">The robot, in canonical order as in the result.</param>
    /// <param name="trace">What was recorded of it.</param>
    public static IReadOnlyList<WheelBindings> Find(RobotSettings robot, Trace trace)
    {
        if (trace.Time.Length == 0)
        {
            return [];
        }

        double least = Unloaded * trace.Wheels.Average(w => w.Load[0]);
        return [.. robot.Wheels.Select((w, i) => OfWheel(robot, trace, i, least))];
    }

    /// <summary>The kind with the greatest impulse of all wheels together at each sample, for the shading of a plot.</summary>
    public static IReadOnlyList<WheelBinding> Dominant(RunResult run, IReadOnlyList<WheelBindings> wheels)
    {
        Series[] force = [.. run.Trace.Wheels.Select(w => w.LongitudinalForce)];
        WheelBinding[] dominant = new WheelBinding[run.Time.Length];
        double[] sum = new double[Kinds];
        for (int i = 0; i < dominant.Length; i++)
        {
            Array.Clear(sum);
            for (int w = 0; w < wheels.Count; w++)
            {
                sum[(int)wheels[w].Moments[i]] += Math.Abs(force[w][i]) + 1e-9;
            }

            dominant[i] = (WheelBinding)Array.IndexOf(sum, sum.Max());
        }

        return dominant;
    }

    private static WheelBindings OfWheel(RobotSettings robot, Trace trace, int wheel, double least)
    {
        (Series load, Series sliding, Series force) = (trace.Wheels[wheel].Load, trace.Wheels[wheel].Sliding, trace.Wheels[wheel].LongitudinalForce);
        (ControllerSettings Settings, ControllerTrace Trace)[] controllers =
            [.. robot.Controllers.Zip(trace.Controllers).Where(c => c.First.Motors.Any(m => robot.Drives[m.Drive].Wheels.Any(w => w.Wheel == wheel)))];
        (Series time, BatteryTrace? battery) = (trace.Time, trace.Battery);
        WheelBinding[] moments = new WheelBinding[time.Length];
        double[] times = new double[Kinds];
        double[] impulses = new double[Kinds];
        for (int i = 0; i < time.Length; i++)
        {
            moments[i] = At(i);

            // samples stand at equal distance: each counts for one, the ends for half
            double weight = time.Length > 1 && (i == 0 || i == time.Length - 1) ? 0.5 : 1.0;
            times[(int)moments[i]] += weight;
            impulses[(int)moments[i]] += weight * Math.Abs(force[i]);
        }

        double step = time.Length > 1 ? (time[^1] - time[0]) / (time.Length - 1) : 0.0;
        double impulse = impulses.Sum();
        return new WheelBindings(robot.Wheels[wheel].Name, moments, Shares(times, 0), Shares(impulses, (int)WheelBinding.Nothing), impulse * step);

        WheelBinding At(int i)
        {
            if (load[i] < least)
            {
                return WheelBinding.Lifted;
            }

            bool isCommanded = controllers.Any(c => c.Trace.Command[i] != 0.0);
            if (!isCommanded || battery is null)
            {
                return WheelBinding.Nothing;
            }

            if (sliding[i] >= LimitBounds.AtItsGrip)
            {
                return WheelBinding.SlidingTyre;
            }

            if (controllers.Average(c => c.Trace.Limiting[i]) > LimitBounds.BindingShare)
            {
                return controllers.Any(c => c.Trace.Temperature?[i] > c.Settings.FoldBackTemperature) ? WheelBinding.Heat : WheelBinding.CurrentLimit;
            }

            return battery.Voltage[i] < (1.0 - LimitBounds.BatterySag) * battery.OpenCircuitVoltage[i] ? WheelBinding.Battery : WheelBinding.MotorVoltage;
        }
    }

    // Shares that add up to 1; a sum of nothing is all of one kind.
    private static double[] Shares(double[] parts, int ifNone)
    {
        double sum = parts.Sum();
        return [.. parts.Select((p, k) => sum > 0.0 ? p / sum : k == ifNone ? 1.0 : 0.0)];
    }
}
