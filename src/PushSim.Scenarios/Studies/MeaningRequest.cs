namespace PushSim.Scenarios.Studies;

/// <summary>What is asked about the fitted tyres on the robot.</summary>
/// <param name="Opponent">Robot file of the opponent; null: no shoves.</param>
/// <param name="Scene">Scenario file with floor, shove and driving of the shoves; null for a plain shove.</param>
/// <param name="Contest">Label of the contest whose draws the shoves take; null: the names of the robots.</param>
/// <param name="Stronger">Stall torque of the stronger motors over that of the file [1]; null: only the file's.</param>
/// <param name="Shoves">Shoves of each tyre [1].</param>
/// <param name="Seed">Seed of the draws.</param>
/// <param name="Threads">Threads [1].</param>
public sealed record MeaningRequest(string? Opponent, string? Scene, string? Contest, double? Stronger, long Shoves, ulong Seed, int Threads);
