namespace PushSim.Scenarios.Reading;

/// <summary>A number that a file does not hold as such: estimated, converted or taken from the shelf.</summary>
/// <param name="Text">The part, the number and how it was found, one line.</param>
/// <param name="Error">How far off it may be, in words.</param>
public sealed record DerivedValue(string Text, string Error);
