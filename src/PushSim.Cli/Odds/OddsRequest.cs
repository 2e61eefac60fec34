namespace PushSim.Cli.Odds;

/// <summary>What `odds` was asked.</summary>
/// <param name="File">Scenario or robot file.</param>
/// <param name="Contest">Label of the draws; null for the robots' names.</param>
/// <param name="Beside">Scenario or robot file to compare with; null for none.</param>
/// <param name="Read">Opponent, scene, and what is set anew.</param>
/// <param name="Plan">Which matches.</param>
/// <param name="Within">Half-width of the win share at which it stops [1]; 0 runs all.</param>
/// <param name="Effects">Whether each value is also drawn anew by itself.</param>
/// <param name="Learn">File of real matches; null for none.</param>
/// <param name="Match">Number of the one match to be shown; null for all.</param>
/// <param name="Output">Where the answer goes.</param>
internal sealed record OddsRequest(
    string File, string? Contest, string? Beside, ReadOptions Read, MatchPlan Plan, double Within, bool Effects, string? Learn, long? Match, OutputRequest Output);
