namespace PushSim.Words.Runs;

/// <summary>What a run cost, and all of the command that made it.</summary>
/// <param name="SimulationMilliseconds">Time of the run itself [ms].</param>
/// <param name="TotalMilliseconds">Time of the whole command so far: reading, run, closer look, files [ms].</param>
/// <param name="TotalEvaluations">Evaluations of the right-hand side by the whole command [1].</param>
public sealed record RunCost(double SimulationMilliseconds, double TotalMilliseconds, long TotalEvaluations);
