namespace PushSim.Analysis.Fit;

/// <summary>A breakaway that no reading of its pull reaches: the tyre lets go between two readings, and the line up the ramp is taken to the middle between them.</summary>
/// <param name="Pulls">In so many pulls [1].</param>
/// <param name="Of">Of so many with a breakaway peak [1].</param>
/// <param name="Most">How far it lies above the highest reading, at most, as a share of that [1].</param>
public sealed record BreakawayAbove(int Pulls, int Of, double Most);
