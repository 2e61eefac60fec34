namespace PushSim.Analysis.Chance;

/// <summary>How far a part is.</summary>
/// <param name="Part">Which part, from 1 [1].</param>
/// <param name="Parts">Count of parts [1].</param>
/// <param name="Finished">Matches that it has [1].</param>
/// <param name="All">Matches that it must have [1].</param>
/// <param name="Condition">What it is good for.</param>
/// <param name="Reason">What is wrong with it, with file and line where there is one; empty for nothing.</param>
public readonly record struct PartState(int Part, int Parts, long Finished, long All, PartCondition Condition, string Reason = "");
