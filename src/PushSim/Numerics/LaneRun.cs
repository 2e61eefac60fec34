namespace PushSim.Numerics;

/// <summary>What a lane integrates.</summary>
/// <param name="T0">Start [s].</param>
/// <param name="T1">End, after the start [s].</param>
/// <param name="Breakpoints">Rising times at which the right-hand side jumps [s]; read while the run lasts.</param>
/// <param name="Settings">Tolerances and limits; absolute tolerances are copied.</param>
internal readonly record struct LaneRun(double T0, double T1, double[] Breakpoints, IntegrationSettings Settings);
