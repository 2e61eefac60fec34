namespace PushSim.Scenarios.Estimates;

/// <summary>One estimated value and how it was found.</summary>
/// <param name="Value">The value [SI unit of its quantity].</param>
/// <param name="Note">Quantity, value and origin, in one line.</param>
/// <param name="Error">How far off it may be, in words.</param>
public sealed record Estimated(double Value, string Note, string Error);
