using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Chance;

/// <summary>Drawn matches in the three orders of starts: the first of the same draws, each with the robots' reactions a tenth of a second further apart. What differs between the drawn
/// reactions stays.</summary>
/// <param name="Shares">The first robot first, both together, the first robot last.</param>
/// <param name="Worth">What a tenth of a second is worth between the middles of what is drawn.</param>
public sealed record StartOdds(IReadOnlyList<StartShare> Shares, StartWorth Worth)
{
    /// <summary>Matches of each order at most [1].</summary>
    public const int Most = 200;

    /// <summary>Orders that are played anew: matches drawn from an even start are those of both together.</summary>
    /// <param name="lead">How much later the opponent starts, by the middles [s].</param>
    public static IReadOnlyList<StartOrder> Anew(double lead) => lead == 0.0 ? [StartOrder.First, StartOrder.Last] : [StartOrder.First, StartOrder.Together, StartOrder.Last];

    /// <summary>Matches of each order: so many that about as many are played anew as were drawn, 200 at most [1].</summary>
    /// <param name="drawn">Matches that were drawn [1].</param>
    /// <param name="lead">How much later the opponent starts, by the middles [s].</param>
    public static int Count(long drawn, double lead) => (int)Math.Min(Most, (drawn + Anew(lead).Count - 1) / Anew(lead).Count);

    /// <summary>Plays them.</summary>
    /// <param name="source">The matches.</param>
    /// <param name="lead">How much later the opponent starts, by the middles [s].</param>
    /// <param name="drawn">The matches as they were drawn, by number, at least one.</param>
    /// <param name="count">How many were drawn [1].</param>
    /// <param name="threads">Threads [1].</param>
    /// <param name="done">Called after each match, one call at a time; null for nobody.</param>
    /// <param name="cancel">Stops.</param>
    /// <returns>Null if it was cancelled.</returns>
    public static StartOdds? Of(IDrawnMatches source, double lead, IEnumerable<MatchEnd> drawn, long count, int threads, Action? done = null, CancellationToken cancel = default)
    {
        MatchEnd[] some = [.. drawn.Take(Count(count, lead))];
        long[] numbers = [.. some.Select(m => m.Number)];
        Dictionary<StartOrder, Tally> tallies = new() { [StartOrder.Together] = Tally.Of(some) };
        var runner = new BatchMatchRunner(source.Middle);
        foreach (StartOrder order in Anew(lead))
        {
            var tally = new Tally();
            runner.Run(new Shifted(source, order, lead), numbers, Add, threads, cancel);
            tallies[order] = tally;

            void Add(MatchEnd end)
            {
                lock (tally)
                {
                    tally.Add(end);
                    done?.Invoke();
                }
            }
        }

        try
        {
            StartWorth worth = StartReview.Of(source.Middle, cancel).Worth;
            return cancel.IsCancellationRequested ? null : new StartOdds([.. tallies.OrderBy(t => t.Key).Select(t => new StartShare(t.Key, t.Value))], worth);
        }
        catch (OperationCanceledException)
        {
            return null;
        }
    }

    private sealed class Shifted(IDrawnMatches source, StartOrder order, double lead) : IMatchSource
    {
        public ScenarioSettings? Match(long number, out string cause) => source.Match(number, out cause) is ScenarioSettings match ? StartShift.With(match, order, lead) : null;
    }
}
