namespace PushSim.Analysis.Fit;

/// <summary>A fault of a log and the sample it shows at.</summary>
/// <param name="Fault">What.</param>
/// <param name="Sample">Index of the first sample concerned.</param>
/// <param name="Value">The reading there [N].</param>
public sealed record TraceProblem(TraceFault Fault, int Sample, double Value);
