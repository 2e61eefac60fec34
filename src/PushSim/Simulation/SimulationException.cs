namespace PushSim.Simulation;

/// <summary>Settings that no run can start from; the message says what to change.</summary>
/// <param name="message">Cause and advice, plain words.</param>
public sealed class SimulationException(string message) : Exception(message);
