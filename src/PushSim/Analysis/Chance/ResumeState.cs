namespace PushSim.Analysis.Chance;

/// <summary>What was found to go on from.</summary>
/// <param name="Aside">Name under which the old journal is kept; empty where nothing was set aside.</param>
/// <param name="Misfit">Why it does not fit.</param>
/// <param name="Problems">Lines that were refused, the first ones.</param>
/// <param name="Refused">How many lines were refused [1].</param>
public sealed record ResumeState(string Aside, JournalMisfit Misfit, IReadOnlyList<JournalProblem> Problems, long Refused)
{
    /// <summary>All of it, or nothing was there.</summary>
    public static ResumeState Plain { get; } = new("", JournalMisfit.None, [], 0);
}
