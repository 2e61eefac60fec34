using PushSim.Analysis.Sweep;
using PushSim.Cli.Chance;

namespace PushSim.Cli;

/// <summary>What `sweep` was asked.</summary>
internal sealed record SweepRequest(
    string File, IReadOnlyList<SweepInput> Inputs, IReadOnlyList<string> Asked, bool? IsHighestBest, MatchPlan Plan, string? Out, bool Force, bool Json, bool Quiet, bool NoPlots, bool Report)
{
    /// <summary>Drawn matches at each point; 0 for none [1].</summary>
    public long Odds => Plan.Matches;
}
