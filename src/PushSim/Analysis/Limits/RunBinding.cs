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
    public static IReadOnlyList<WheelBindings> Find(RunResult run) => Find(run.Scenario.Robot, run.Time, run.Channels);

    /// <summary>All wheels of a robot with its history.</summary>
    /// <param name="robot">The robot, in canonical order as in the result.</param>
    /// <param name="time">Sample times [s].</param>
    /// <param name="channels">Its channels.</param>
    public static IReadOnlyList<WheelBindings> Find(RobotSettings robot, double[] time, IReadOnlyList<Channel> channels)
    {
        Dictionary<string, double[]> byKey = channels.ToDictionary(c => c.Key, c => c.Values);
        if (time.Length == 0)
        {
            return [];
        }

        double least = Unloaded * robot.Wheels.Average(w => byKey[$"wheel_{Slug.Of(w.Name)}_load_n"][0]);
        return [.. robot.Wheels.Select((w, i) => OfWheel(robot, byKey, time, i, least))];
    }

    /// <summary>The kind with the greatest impulse of all wheels together at each sample, for the shading of a plot.</summary>
    public static IReadOnlyList<WheelBinding> Dominant(RunResult run, IReadOnlyList<WheelBindings> wheels)
    {
        double[][] force = [.. run.Scenario.Robot.Wheels.Select(w => run[$"wheel_{Slug.Of(w.Name)}_longitudinal_force_n"].Values)];
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

    private static WheelBindings OfWheel(RobotSettings robot, Dictionary<string, double[]> byKey, double[] time, int wheel, double least)
    {
        string slug = Slug.Of(robot.Wheels[wheel].Name);
        double[] load = byKey[$"wheel_{slug}_load_n"];
        double[] sliding = byKey[$"wheel_{slug}_sliding"];
        double[] force = byKey[$"wheel_{slug}_longitudinal_force_n"];
        ControllerSettings[] own = [.. robot.Controllers.Where(c => c.Motors.Any(m => robot.Drives[m.Drive].Wheels.Any(w => w.Wheel == wheel)))];
        ControllerSeries[] controllers = [.. own.Select(c => new ControllerSeries(c, byKey))];
        double[]? open = byKey.GetValueOrDefault("battery_open_circuit_voltage_v");
        double[]? loaded = byKey.GetValueOrDefault("battery_voltage_v");
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

            bool isCommanded = controllers.Any(c => c.Command[i] != 0.0);
            if (!isCommanded || open is null || loaded is null)
            {
                return WheelBinding.Nothing;
            }

            if (sliding[i] >= LimitBounds.AtItsGrip)
            {
                return WheelBinding.SlidingTyre;
            }

            if (controllers.Average(c => c.Limiting[i]) > LimitBounds.BindingShare)
            {
                return controllers.Any(c => c.IsHot(i)) ? WheelBinding.Heat : WheelBinding.CurrentLimit;
            }

            return loaded[i] < (1.0 - LimitBounds.BatterySag) * open[i] ? WheelBinding.Battery : WheelBinding.MotorVoltage;
        }
    }

    // Shares that add up to 1; a sum of nothing is all of one kind.
    private static double[] Shares(double[] parts, int ifNone)
    {
        double sum = parts.Sum();
        return [.. parts.Select((p, k) => sum > 0.0 ? p / sum : k == ifNone ? 1.0 : 0.0)];
    }

    private sealed class ControllerSeries(ControllerSettings settings, Dictionary<string, double[]> byKey)
    {
        private readonly double[]? _temperature = byKey.GetValueOrDefault($"controller_{Slug.Of(settings.Name)}_temperature_degc");

        public double[] Command { get; } = byKey["command_" + Slug.Of(settings.Name)];

        public double[] Limiting { get; } = byKey[$"controller_{Slug.Of(settings.Name)}_limiting"];

        public bool IsHot(int i) => _temperature is not null && _temperature[i] > settings.FoldBackTemperature;
    }
}
