namespace PushSim.Analysis.FitBySimulation;

/// <summary>A pull with the simulated force over it.</summary>
/// <param name="Time">Times on the log's clock [s].</param>
/// <param name="Measured">Force less the tare [N].</param>
/// <param name="Simulated">Force of the fitted tyre, on the same clock [N].</param>
public sealed record FollowedPull(double[] Time, double[] Measured, double[] Simulated);
