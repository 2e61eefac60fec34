namespace PushSim.Runs;

/// <summary>A shove in the three orders of starts.</summary>
/// <param name="Cases">The first robot first, both together, the first robot last.</param>
/// <param name="Worth">What a tenth of a second is worth.</param>
public sealed record StartStudy(IReadOnlyList<StartCase> Cases, StartWorth Worth);
