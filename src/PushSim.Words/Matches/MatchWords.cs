using PushSim.Analysis.Chance;

namespace PushSim.Words.Matches;

/// <summary>What is said of a match.</summary>
public static class MatchWords
{
    /// <summary>Why a match failed; empty if it did not.</summary>
    public static string Cause(MatchEnd end) => end.Fault ?? end.Failure switch
    {
        MatchFailure.None or MatchFailure.Draws => "",
        MatchFailure.Refused => "no run can start from these values: a centre of mass does not stand over the wheels",
        MatchFailure.Battery => "a battery cannot deliver what its controllers ask for",
        MatchFailure.Work => "more work than is allowed",
        _ => "the step became too small, or a value was not finite",
    };
}
