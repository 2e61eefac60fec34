namespace PushSim.Analysis.Chance;

/// <summary>A line of a journal that is refused.</summary>
/// <param name="File">Name of the journal.</param>
/// <param name="Line">Number of the line, from 1 [1].</param>
/// <param name="Fault">Why.</param>
/// <param name="Number">The first number that the fault tells [1].</param>
/// <param name="Other">The second [1].</param>
public sealed record JournalProblem(string File, long Line, JournalFault Fault, long Number = 0, long Other = 0);
