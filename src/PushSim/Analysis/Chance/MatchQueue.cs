namespace PushSim.Analysis.Chance;

/// <summary>Numbers of matches still to be run, handed out one by one to any thread.</summary>
/// <param name="numbers">The numbers in the order in which they are handed out.</param>
public sealed class MatchQueue(IReadOnlyList<long> numbers)
{
    private int _next = -1;

    /// <summary>All numbers in the order in which they are handed out.</summary>
    public IReadOnlyList<long> Numbers => numbers;

    /// <summary>Takes the next number; false when none is left.</summary>
    /// <param name="number">The number.</param>
    public bool TryTake(out long number)
    {
        int next = Interlocked.Increment(ref _next);
        bool isThere = next < numbers.Count;
        number = isThere ? numbers[next] : -1;
        return isThere;
    }
}
