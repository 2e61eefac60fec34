using PushSim.Surroundings;

namespace PushSim.Simulation;

/// <summary>The log of a real pull that a scenario names beside its simulated one.</summary>
/// <param name="File">Its file, as the scenario names it.</param>
/// <param name="Trace">Its samples.</param>
/// <param name="Shift">Added to its times [s]; null: both first pulls are laid on each other.</param>
public sealed record MeasuredPull(string File, ForceTrace Trace, double? Shift);
