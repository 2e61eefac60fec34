namespace PushSim.Scenarios.Estimates;

/// <summary>How far one written value of a motor's data may be off.</summary>
/// <param name="Moved">The data with that value moved by its half-width.</param>
/// <param name="IsStated">Whether the data state that half-width; else it is half a unit of the last digit written.</param>
public sealed record MotorDoubt(MotorData Moved, bool IsStated);
