namespace PushSim.Simulation;

/// <summary>Keys of all that a run can be asked, as files and scripts write them. What each means stands in the catalogue of answers, whose keys are these.</summary>
public static class AskedKeys
{
    private static readonly string[] s_own =
    [
        "ground_gained_m", "ground_rate_m_per_s", "margin_m", "turned_aside_rad", "first_contact_s", "gives_ground_at_s", "ground_speed_m_per_s", "ended_at_s", "pull_breakaway_n", "pull_jerk_n", "pull_plateau_n",
        "measured_pull_breakaway_n", "measured_pull_plateau_n", "push_peak_n", "push_plateau_n", "top_speed_m_per_s", "time_to_90_percent_speed_s", "time_to_1_m_s", "stop_distance_m",
        "yaw_rate_rad_per_s", "effective_track_ratio", "scrub_moment_n_m", "turn_current_a", "chatter_hz", "most_air_share", "wear_mm3_per_kj", "wear_mm3", "travel_m", "peak_battery_current_a", "peak_battery_current_at_s",
        "peak_motor_current_a", "peak_motor_current_at_s", "peak_motor_current_limit_a", "peak_wheel_load_n", "peak_wheel_load_at_s", "lowest_battery_voltage_v", "lowest_battery_voltage_at_s",
        "peak_winding_temperature_degc", "peak_battery_temperature_degc", "charge_used_a_s", "energy_residual_ratio", "rhs_evaluations",
    ];

    private static readonly string[] s_ofOpponent =
    [
        "chatter_hz", "most_air_share", "wear_mm3_per_kj", "wear_mm3", "peak_battery_current_a", "peak_battery_current_at_s", "peak_motor_current_a", "peak_motor_current_at_s", "peak_motor_current_limit_a",
        "peak_wheel_load_n", "peak_wheel_load_at_s", "lowest_battery_voltage_v", "lowest_battery_voltage_at_s", "peak_winding_temperature_degc", "peak_battery_temperature_degc", "charge_used_a_s",
    ];

    /// <summary>The first robot's keys, the opponent's as "opponent.KEY", entries of the energy ledger as "energy.KEY".</summary>
    public static IReadOnlyList<string> All { get; } = [.. s_own, .. s_ofOpponent.Select(k => "opponent." + k), .. EnergyLedger.Keys.Select(k => "energy." + k)];
}
