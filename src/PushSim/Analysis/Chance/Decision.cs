using PushSim.Binding;
using PushSim.Runs;

namespace PushSim.Analysis.Chance;

/// <summary>What decided a match: how it ended, and what held the loser's push back; nobody's where a robot tips, both where nobody wins.</summary>
/// <param name="Winner">0 the first robot, 1 the opponent, -1 neither [1].</param>
/// <param name="Ending">How it ended.</param>
/// <param name="Limit">What held the first robot back; null if it won or a robot tipped.</param>
/// <param name="OpponentLimit">The same of the opponent.</param>
public readonly record struct Decision(int Winner, ShoveEnding Ending, BindingKind? Limit, BindingKind? OpponentLimit)
{
    /// <summary>That of a match.</summary>
    /// <param name="end">A match that did not fail.</param>
    public static Decision Of(MatchEnd end)
    {
        bool isPushed = end.Ending != ShoveEnding.Tips;
        return new(end.Winner, end.Ending, isPushed && end.Winner != 0 ? end.Limit : null, isPushed && end.Winner != 1 ? end.OpponentLimit : null);
    }
}
