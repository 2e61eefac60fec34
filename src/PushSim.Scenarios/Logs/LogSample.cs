namespace PushSim.Scenarios.Logs;

/// <summary>One row of a log over time.</summary>
/// <param name="Time">Its time [s].</param>
/// <param name="Values">Force, speeds, current and voltage in the order of <see cref="TraceStore"/>, in SI; valid until the next row.</param>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Tyre">Tyre that it names; null if it names none.</param>
/// <param name="Pull">Pull that it names; null if it names none.</param>
internal readonly record struct LogSample(double Time, double[] Values, int Line, string? Tyre, string? Pull);
