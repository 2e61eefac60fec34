namespace PushSim.Analysis.Limits;

/// <summary>A winding that gets hotter than it may.</summary>
/// <param name="Motor">The motor.</param>
/// <param name="Limit">What its winding is said to bear [degree Celsius].</param>
/// <param name="Time">Since when it is hotter [s].</param>
public sealed record Overheating(string Motor, double Limit, double Time);
