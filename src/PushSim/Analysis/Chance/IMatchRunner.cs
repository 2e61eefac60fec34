namespace PushSim.Analysis.Chance;

/// <summary>
/// Runs full matches. How many at once, on what hardware and in what order is its own affair; the outcome of a number is always the same. It takes a
/// number from the queue whenever it has room, so a vector unit whose lane is free fills it at once.
/// </summary>
public interface IMatchRunner
{
    /// <summary>Runs every match of the queue; returns when the queue is empty and all taken matches are done, or soon after a cancel.</summary>
    /// <param name="source">Settings by number.</param>
    /// <param name="queue">The numbers to run.</param>
    /// <param name="done">Takes each outcome; called from several threads, one call at a time is not promised.</param>
    /// <param name="threads">Threads to use, at least 1 [1].</param>
    /// <param name="cancel">Stops; matches under way are dropped, finished ones have been reported.</param>
    void Run(IMatchSource source, MatchQueue queue, Action<MatchEnd> done, int threads, CancellationToken cancel);
}
