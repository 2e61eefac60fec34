namespace PushSim.Simulation;

/// <summary>The greatest, or the least, of a quantity over a run, at the ends of its steps and where commands jump.</summary>
/// <param name="Value">The quantity there [its own unit].</param>
/// <param name="Time">When it was [s].</param>
/// <param name="Index">Which one it was, where there are several [1].</param>
/// <param name="Limit">What it is held to; null without a limit [the quantity's unit].</param>
public readonly record struct Peak(double Value, double Time, int Index = 0, double? Limit = null);
