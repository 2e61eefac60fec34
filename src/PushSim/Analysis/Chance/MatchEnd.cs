using PushSim.Binding;
using PushSim.Runs;

namespace PushSim.Analysis.Chance;

/// <summary>What a match gave; all that is kept of it.</summary>
/// <param name="Number">Its number, from 0.</param>
/// <param name="Winner">0 the first robot, 1 the opponent, -1 neither [1].</param>
/// <param name="Ending">How it ended.</param>
/// <param name="GroundGained">Ground that the first robot gained, negative if it lost ground [m].</param>
/// <param name="EndTime">When it ended [s].</param>
/// <param name="Limit">What bound the first robot most since the first touch.</param>
/// <param name="OpponentLimit">The same of the opponent.</param>
/// <param name="Failure">Why it failed.</param>
/// <param name="Fault">What is wrong with its draws, as their reader says; null else.</param>
public readonly record struct MatchEnd(long Number, int Winner, ShoveEnding Ending, double GroundGained, double EndTime, BindingKind Limit, BindingKind OpponentLimit, MatchFailure Failure = MatchFailure.None, string? Fault = null)
{
    /// <summary>True if the match could not be run to its end.</summary>
    public bool HasFailed => Failure != MatchFailure.None;

    /// <summary>A match that failed.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="failure">Why.</param>
    /// <param name="fault">What is wrong with its draws; null else.</param>
    public static MatchEnd Failed(long number, MatchFailure failure, string? fault = null) => new(number, -1, ShoveEnding.Stalemate, 0.0, 0.0, BindingKind.Nothing, BindingKind.Nothing, failure, fault);

    /// <summary>Number of the match with the middle one of all grounds gained [1]; null if none was finished.</summary>
    /// <param name="ends">The matches; failed ones are left out.</param>
    public static long? Middling(IEnumerable<MatchEnd> ends)
    {
        MatchEnd[] good = [.. ends.Where(o => !o.HasFailed).OrderBy(o => o.GroundGained)];
        return good.Length > 0 ? good[good.Length / 2].Number : null;
    }
}
