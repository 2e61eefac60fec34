namespace PushSim.Analysis.Chance;

/// <summary>Which drawn matches are run.</summary>
/// <param name="Command">Name of the work; kept matches of another's are not taken.</param>
/// <param name="Matches">Matches of each contest, all parts together [1].</param>
/// <param name="Seed">The seed.</param>
/// <param name="Threads">Threads [1].</param>
/// <param name="Part">Which part from 1, and of how many; null for the whole [1].</param>
/// <param name="Merge">Join the finished parts instead of running.</param>
/// <param name="Check">Only look whether the parts can be joined.</param>
public sealed record MatchPlan(string Command, long Matches, ulong Seed, int Threads, (int K, int N)? Part = null, bool Merge = false, bool Check = false);
