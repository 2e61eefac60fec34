namespace PushSim.Simulation;

/// <summary>One recorded series, sampled at <c>RunResult.Time</c>.</summary>
/// <param name="Key">snake_case name with the SI unit as last part, e.g. "wheel_front_left_load_n"; used in CSV and JSON.</param>
/// <param name="Label">Words for plots, e.g. "Load, front left".</param>
/// <param name="Unit">SI unit as printed, e.g. "N".</param>
/// <param name="Values">One value per sample [the unit named].</param>
public sealed record Channel(string Key, string Label, string Unit, double[] Values);
