using PushSim.Cli.Chance;

namespace PushSim.Cli;

/// <summary>What `odds` was asked.</summary>
internal sealed record OddsRequest(
    string File, string? Against, MatchPlan Plan, double Within, bool Effects, long? Match, string? Out, bool Force, bool Json, bool Quiet, bool NoPlots, bool Report);
