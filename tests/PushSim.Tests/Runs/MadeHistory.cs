using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Tests.Runs;

/// <summary>Histories made up, one second of samples a millisecond apart: what is not said is at rest, carries its share and is not limited.</summary>
internal static class MadeHistory
{
    private const int Samples = 1001;

    private static readonly Dictionary<string, double> s_usual = new() { ["battery_open_circuit_voltage_v"] = 12.0, ["battery_voltage_v"] = 11.0, ["load_n"] = 3.3, ["command"] = 1.0 };

    /// <summary>A history.</summary>
    /// <param name="scenario">Its scenario.</param>
    /// <param name="said">
    /// Keys with their values over time [s]; "sliding", "load_n", ... without a wheel's name are those of every wheel, "command" and "limiting" of every controller. What
    /// only some robots record is there where its key is.
    /// </param>
    public static RunHistory Of(ScenarioSettings scenario, params (string Key, Func<double, double> Value)[] said)
    {
        bool Says(string what) => said.Any(s => s.Key.Contains(what, StringComparison.Ordinal));
        ScenarioSettings recorded = scenario with
        {
            Tether = Says("tether_") ? TestRobots.Pull().Tether : null,
            Robot = scenario.Robot with
            {
                Wheels = [.. scenario.Robot.Wheels.Select(w => w with { Tyre = w.Tyre with { SpecificWear = Says("_wear_m3") ? 1e-9 : 0.0 } })],
                Drives = [.. scenario.Robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (Warm(m.Motor, Says("winding_")), m.Ratio))] })],
            },
        };
        TouchSum? touch = Says("contact_") ? new TouchSum(new SceneSystem(TestRobots.Launch())) : null;
        var trace = new Trace(Trace.TimeOf([.. Enumerable.Range(0, Samples).Select(i => 0.001 * i)]), new TraceTape(new RobotSystem(recorded), [], 0, Samples, touch));
        Dictionary<string, Func<double, double>> values = said.ToDictionary(s => s.Key, s => s.Value);
        foreach ((Series series, string kind) in Kinds(trace))
        {
            Func<double, double> value = values.GetValueOrDefault(series.Key) ?? values.GetValueOrDefault(kind) ?? (_ => s_usual.GetValueOrDefault(kind));
            for (int i = 0; i < Samples; i++)
            {
                series.Set(i, value(trace.Time[i]));
            }
        }

        Xunit.Assert.Subset(Kinds(trace).SelectMany(k => new[] { k.Series.Key, k.Kind }).ToHashSet(), values.Keys.ToHashSet());
        double mean = trace.Wheels.Average(w => w.Load[0]);
        return new RunHistory(scenario, trace, [.. scenario.Robot.Wheels.Select((_, i) => Binding(scenario.Robot, i, trace, new SteadyLoad(mean)))]);
    }

    // what those series say of a wheel, by the rule; a tyre said to slide does so at 1 m/s, and no limit is folded back
    private static BindingMoments Binding(RobotSettings robot, int wheel, Trace trace, SteadyLoad steady)
    {
        ControllerTrace[] feeding = [.. trace.Controllers.Where((_, k) => robot.Controllers[k].Motors.Any(m => robot.Drives[m.Drive].Wheels.Any(w => w.Wheel == wheel)))];
        BindingKind[] kinds = new BindingKind[trace.Time.Length];
        for (int i = 0; i < kinds.Length; i++)
        {
            bool isLifted = steady.IsLifted(trace.Wheels[wheel].Load[i], i > 0 ? trace.Time[i] - trace.Time[i - 1] : 0.0);
            kinds[i] = (BindingKind)(int)BindingRule.Of(new WheelMoment<R1>
            {
                Lifted = isLifted ? 1.0 : 0.0,
                Slides = BindingRule.Slides<R1>(default, trace.Wheels[wheel].Sliding[i], 1.0, 0.0),
                Command = feeding.Sum(c => Math.Abs(c.Command[i])),
                Limiting = feeding.Length > 0 ? feeding.Average(c => c.Limiting[i]) : 0.0,
                Bus = trace.Battery?.Voltage[i] ?? 0.0,
                OpenCircuit = trace.Battery?.OpenCircuitVoltage[i] ?? 0.0,
            }).Value;
        }

        return new BindingMoments(wheel, feeding.Length > 0, kinds, trace.Wheels[wheel].LongitudinalForce);
    }

    private static MotorSettings Warm(MotorSettings motor, bool isWarm) => motor with { WindingToCaseThermalResistance = isWarm ? 1.0 : 0.0 };

    // each series with its key, without the name of a wheel or a controller
    private static IEnumerable<(Series Series, string Kind)> Kinds(Trace trace) => trace.All.Select(s => (s, trace.Wheels.Select(w => $"wheel_{Slug.Of(w.Name)}_")
        .Concat(trace.Controllers.SelectMany(c => new[] { $"controller_{Slug.Of(c.Name)}_", "_" + Slug.Of(c.Name) }))
        .Aggregate(s.Key, (key, name) => key.Replace(name, string.Empty, StringComparison.Ordinal))));
}
