namespace PushSim.Runs;

/// <summary>A match that is played on behind its line.</summary>
/// <param name="Ending">How it ends; null if it fails there.</param>
/// <param name="GroundGained">Ground that the first robot gained by its end [m].</param>
internal readonly record struct MatchBeyond(ShoveEnding? Ending, double GroundGained);
