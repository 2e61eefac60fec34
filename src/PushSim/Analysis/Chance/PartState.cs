namespace PushSim.Analysis.Chance;

/// <summary>How far a part is.</summary>
/// <param name="Part">Which part, from 1 [1].</param>
/// <param name="Parts">Count of parts [1].</param>
/// <param name="Finished">Matches that it has [1].</param>
/// <param name="All">Matches that it must have [1].</param>
/// <param name="Condition">What it is good for.</param>
/// <param name="Misfit">Why its journal is of something else.</param>
/// <param name="Problem">The first line of it that is refused; null for none.</param>
public readonly record struct PartState(int Part, int Parts, long Finished, long All, PartCondition Condition, JournalMisfit Misfit = JournalMisfit.None, JournalProblem? Problem = null);
