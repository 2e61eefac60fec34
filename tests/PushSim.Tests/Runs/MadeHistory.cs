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

        return new RunHistory(scenario, time, [.. made.Select(m => new Channel(m.Key, "", "", [.. time.Select(m.Value)]))]);
    }
}
