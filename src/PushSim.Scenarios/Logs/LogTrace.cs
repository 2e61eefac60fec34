using PushSim.Surroundings;

namespace PushSim.Scenarios.Logs;

/// <summary>One history out of a file.</summary>
/// <param name="Tyre">Tyre that the file names; null if it names none.</param>
/// <param name="Trace">The samples, in SI.</param>
/// <param name="Lines">Line of the file of each sample.</param>
/// <param name="PerSample">Rows averaged into one sample [1].</param>
public sealed record LogTrace(string? Tyre, ForceTrace Trace, int[] Lines, int PerSample);
