namespace PushSim.Cli.Odds;

/// <summary>What `odds` was asked.</summary>
internal sealed record OddsRequest(
    string File, string? Against, MatchPlan Plan, double Within, bool Effects, long? Match, OutputRequest Output);
