using PushSim.Analysis.Sweep;

namespace PushSim.Cli.Sweep;

/// <summary>What `sweep` was asked.</summary>
internal sealed record SweepRequest(
    string File, IReadOnlyList<SweepInput> Inputs, IReadOnlyList<string> Asked, bool? IsHighestBest, ReadOptions Read, string? Contest, MatchPlan Plan, OutputRequest Output)
{
    /// <summary>Drawn matches at each point; 0 for none [1].</summary>
    public long Odds => Plan.Matches;
}
