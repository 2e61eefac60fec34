using PushSim.Runs;

namespace PushSim.Analysis;

/// <summary>Work that does not hang on each other, on all processors. Each item has the same share of the work for itself, so that the results are those of any number of threads.</summary>
internal static class SideBySide
{
    /// <summary>One result for each item, in their order.</summary>
    /// <param name="items">The items.</param>
    /// <param name="one">Does one with its share of the work.</param>
    /// <param name="work">The work for all of them.</param>
    /// <exception cref="OutOfWorkException">An item needed more than its share.</exception>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static TResult[] Do<TItem, TResult>(IReadOnlyList<TItem> items, Func<TItem, WorkBudget, TResult> one, WorkBudget work)
    {
        var results = new TResult[items.Count];
        WorkBudget[] parts = [.. items.Select(_ => work.Part(1.0 / items.Count))];
        int cut = 0;
        Parallel.For(0, items.Count, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = work.Cancel }, i =>
        {
            if (!WorkBudget.Try(() => results[i] = one(items[i], parts[i])))
            {
                Interlocked.Increment(ref cut);
            }
        });
        return cut == 0 ? results : throw new OutOfWorkException();
    }

    /// <summary>Does parts, and tells in their order which needed more than their share.</summary>
    /// <param name="parts">The parts.</param>
    /// <param name="work">The work for all of them.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static IEnumerable<LookPart> LeftOut(IReadOnlyList<(LookPart Part, Action<WorkBudget> Do)> parts, WorkBudget work)
    {
        bool[] isDone = Do(parts, (p, part) => WorkBudget.Try(() => p.Do(part)), work);
        return [.. parts.Zip(isDone).Where(p => !p.Second).Select(p => p.First.Part)];
    }
}
