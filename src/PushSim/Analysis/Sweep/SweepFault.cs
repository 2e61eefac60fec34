namespace PushSim.Analysis.Sweep;

/// <summary>What is wrong with the text of a sweep's input, and where.</summary>
/// <param name="Kind">What.</param>
/// <param name="Text">The part of the text, or the key whose list is too long.</param>
public sealed record SweepFault(SweepFaultKind Kind, string Text);
