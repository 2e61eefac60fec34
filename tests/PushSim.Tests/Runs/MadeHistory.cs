using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Tests.Runs;

/// <summary>Histories made up, one second of samples a millisecond apart: what is not said is at rest, carries its share and is not limited.</summary>
internal static class MadeHistory
{
    /// <summary>A history.</summary>
    /// <param name="scenario">Its scenario.</param>
    /// <param name="channels">Keys with their values over time [s]; "sliding", "load_n", ... without a wheel's name are those of every wheel, "limiting" of every controller.</param>
    public static RunHistory Of(ScenarioSettings scenario, params (string Key, Func<double, double> Value)[] channels)
    {
        double[] time = [.. Enumerable.Range(0, 1001).Select(i => 0.001 * i)];
        Dictionary<string, Func<double, double>> made = new()
        {
            ["x_m"] = _ => 0.0, ["y_m"] = _ => 0.0, ["speed_m_per_s"] = _ => 0.0, ["yaw_rate_rad_per_s"] = _ => 0.0, ["scrub_moment_n_m"] = _ => 0.0, ["heading_rad"] = _ => 0.0, ["contact_side_force_n"] = _ => 0.0, ["contact_y_m"] = _ => 0.0, ["lateral_speed_m_per_s"] = _ => 0.0,
            ["battery_open_circuit_voltage_v"] = _ => 12.0, ["battery_voltage_v"] = _ => 11.0,
        };
        Dictionary<string, Func<double, double>> said = channels.ToDictionary(c => c.Key, c => c.Value);
        foreach (WheelSettings w in scenario.Robot.Wheels)
        {
            foreach (string what in new[] { "load_n", "sliding", "lateral_force_n", "longitudinal_force_n", "surface_speed_m_per_s" })
            {
                made[$"wheel_{Slug.Of(w.Name)}_{what}"] = said.GetValueOrDefault(what) ?? (_ => what == "load_n" ? 3.3 : 0.0);
            }
        }

        foreach (ControllerSettings c in scenario.Robot.Controllers)
        {
            made[$"controller_{Slug.Of(c.Name)}_limiting"] = said.GetValueOrDefault("limiting") ?? (_ => 0.0);
            made["command_" + Slug.Of(c.Name)] = said.GetValueOrDefault("command") ?? (_ => 1.0);
        }

        foreach ((string key, Func<double, double> value) in channels)
        {
            made[key] = value;
        }

        IReadOnlyList<Channel> all = [.. made.Select(m => new Channel(m.Key, "", "", [.. time.Select(m.Value)]))];
        return new RunHistory(scenario, time, all, Bindings(scenario.Robot, time, all.ToDictionary(c => c.Key, c => c.Values)));
    }

    // what those channels say of each wheel, by the rule; a tyre said to slide does so at 1 m/s, and no limit is folded back
    private static IReadOnlyList<BindingMoments> Bindings(RobotSettings robot, double[] time, Dictionary<string, double[]> channels)
    {
        double mean = robot.Wheels.Average(w => channels[$"wheel_{Slug.Of(w.Name)}_load_n"][0]);
        return [.. robot.Wheels.Select((w, i) => Binding(robot, i, time, channels, new SteadyLoad(mean)))];
    }

    private static BindingMoments Binding(RobotSettings robot, int wheel, double[] time, Dictionary<string, double[]> channels, SteadyLoad steady)
    {
        string name = $"wheel_{Slug.Of(robot.Wheels[wheel].Name)}_";
        string[] feeding = [.. robot.Controllers.Where(c => c.Motors.Any(m => robot.Drives[m.Drive].Wheels.Any(w => w.Wheel == wheel))).Select(c => Slug.Of(c.Name))];
        BindingKind[] kinds = new BindingKind[time.Length];
        for (int i = 0; i < time.Length; i++)
        {
            bool isLifted = steady.IsLifted(channels[name + "load_n"][i], i > 0 ? time[i] - time[i - 1] : 0.0);
            kinds[i] = (BindingKind)(int)BindingRule.Of(new WheelMoment<R1>
            {
                Lifted = isLifted ? 1.0 : 0.0,
                Slides = BindingRule.Slides<R1>(default, channels[name + "sliding"][i], 1.0, 0.0),
                Command = feeding.Sum(c => Math.Abs(channels["command_" + c][i])),
                Limiting = feeding.Length > 0 ? feeding.Average(c => channels[$"controller_{c}_limiting"][i]) : 0.0,
                Bus = channels["battery_voltage_v"][i],
                OpenCircuit = channels["battery_open_circuit_voltage_v"][i],
            }).Value;
        }

        return new BindingMoments(wheel, feeding.Length > 0, kinds, channels[name + "longitudinal_force_n"]);
    }
}
