namespace PushSim.Analysis.Chance;

/// <summary>Runs full matches. How many at once, on what hardware and in what order is its own affair; the outcome of a number is always the same.</summary>
public interface IMatchRunner
{
    /// <summary>Runs matches; returns when all are done, or soon after a cancel.</summary>
    /// <param name="source">Settings by number.</param>
    /// <param name="numbers">Their numbers.</param>
    /// <param name="done">Takes each outcome; called from several threads, one call at a time is not promised.</param>
    /// <param name="threads">Threads to use, at least 1 [1].</param>
    /// <param name="cancel">Stops; matches under way are dropped, finished ones have been reported.</param>
    void Run(IMatchSource source, IReadOnlyList<long> numbers, Action<MatchEnd> done, int threads, CancellationToken cancel);
}
