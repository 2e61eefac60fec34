using PushSim.Cli.Shared;

namespace PushSim.Cli.Matches;

/// <summary>Which drawn matches a command runs.</summary>
/// <param name="Command">Name of the command; a file of another's matches is not taken.</param>
/// <param name="Matches">Matches of each contest, all parts together [1].</param>
/// <param name="Seed">The seed.</param>
/// <param name="Threads">Threads [1].</param>
/// <param name="Part">Which part from 1, and of how many; null for the whole [1].</param>
/// <param name="Merge">Join the finished parts instead of running.</param>
internal sealed record MatchPlan(string Command, long Matches, ulong Seed, int Threads, (int K, int N)? Part, bool Merge)
{
    /// <summary>Opens the folder: a part shares it with other processes.</summary>
    public OutputFolder Open(string path, bool force) => Part is null ? OutputFolder.Open(path, force) : OutputFolder.Join(path, force);
}
