using PushSim.Analysis.Sweep;
using PushSim.Scenarios.Keys;

namespace PushSim.Cli.Sweep;

/// <summary>What `sweep` was asked.</summary>
internal sealed record SweepRequest(
    string File, IReadOnlyList<SweepInput> Inputs, IReadOnlyList<string> Asked, bool? IsHighestBest, ReadOptions Read, string? Contest, MatchPlan Plan, OutputRequest Output)
{
    /// <summary>Drawn matches at each point; 0 for none [1].</summary>
    public long Odds => Plan.Matches;

    /// <summary>The same with its inputs in plain words, for a card, a picture or a page; scripts keep the keys.</summary>
    public SweepRequest Told(SweepResult r) => this with { Inputs = [.. Inputs.Select(i => i with { Key = KeyLabel.Of(i.Key, r.Robot, r.Opponent) })] };
}
