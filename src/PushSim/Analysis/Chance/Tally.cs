namespace PushSim.Analysis.Chance;

/// <summary>Counts of outcomes; shares are of the matches that did not fail.</summary>
public sealed class Tally
{
    // Failed matches that are kept [1].
    private const int MostFailed = 20;

    private readonly Dictionary<Decision, long> _decisions = [];
    private readonly SortedList<long, MatchEnd> _failed = [];
    private readonly BlockSums _blocks = new();

    /// <summary>Matches run to their end [1].</summary>
    public long Matches => Wins + Losses + Stalemates;

    /// <summary>Matches that the first robot won [1].</summary>
    public long Wins { get; private set; }

    /// <summary>Matches that the opponent won [1].</summary>
    public long Losses { get; private set; }

    /// <summary>Matches that nobody won [1].</summary>
    public long Stalemates { get; private set; }

    /// <summary>Matches that failed [1].</summary>
    public long Failed { get; private set; }

    /// <summary>All that were counted [1].</summary>
    public long All => Matches + Failed;

    /// <summary>The failed matches of the lowest numbers.</summary>
    public IReadOnlyList<MatchEnd> FirstFailed => [.. _failed.Values];

    /// <summary>Counting error of the share of wins: Wilson's interval, of as many free draws as the blocks of draws are worth [1].</summary>
    public Bounds WinInterval => Interval(Wins, _blocks.Worth(1.0, 0.0));

    /// <summary>The same of losses [1].</summary>
    public Bounds LossInterval => Interval(Losses, _blocks.Worth(0.0, 1.0));

    /// <summary>The same of stalemates [1].</summary>
    public Bounds StalemateInterval => Interval(Stalemates, _blocks.Worth(1.0, 1.0));

    /// <summary>The same of wins less losses, a score interval [1].</summary>
    public Bounds LeadInterval => LeadWorth is var worth ? ShareInterval.Difference(worth * Wins, worth * Losses, worth * Matches) : default;

    /// <summary>How many free draws one match is worth for the share of wins [1].</summary>
    public double Worth => _blocks.Worth(1.0, 0.0);

    /// <summary>The same for wins less losses [1].</summary>
    public double LeadWorth => _blocks.Worth(1.0, -1.0);

    /// <summary>What decided the matches, most frequent first.</summary>
    public IReadOnlyList<(Decision Decision, long Count)> Decisions =>
    [
        .. _decisions.OrderByDescending(d => d.Value).ThenBy(d => d.Key.Winner).ThenBy(d => d.Key.Ending).ThenBy(d => d.Key.Limit).ThenBy(d => d.Key.OpponentLimit)
            .Select(d => (d.Key, d.Value)),
    ];

    /// <summary>Counts of these outcomes.</summary>
    public static Tally Of(IEnumerable<MatchEnd> outcomes)
    {
        var tally = new Tally();
        foreach (MatchEnd outcome in outcomes)
        {
            tally.Add(outcome);
        }

        return tally;
    }

    /// <summary>Counts one more.</summary>
    public void Add(MatchEnd outcome)
    {
        _blocks.Add(outcome.Number, !outcome.HasFailed, outcome is { HasFailed: false, Winner: 0 }, outcome is { HasFailed: false, Winner: 1 });
        if (outcome.HasFailed)
        {
            Failed++;
            _failed.TryAdd(outcome.Number, outcome);
            if (_failed.Count > MostFailed)
            {
                _failed.RemoveAt(MostFailed);
            }

            return;
        }

        Wins += outcome.Winner == 0 ? 1 : 0;
        Losses += outcome.Winner == 1 ? 1 : 0;
        Stalemates += outcome.Winner < 0 ? 1 : 0;
        var decision = Decision.Of(outcome);
        _decisions[decision] = _decisions.GetValueOrDefault(decision) + 1;
    }

    /// <summary>A count as a share of the matches that did not fail; 0 without any [1].</summary>
    /// <param name="count">The count [1].</param>
    public double Share(long count) => Matches == 0 ? 0.0 : (double)count / Matches;

    private Bounds Interval(long count, double worth) => ShareInterval.Wilson(worth * count, worth * Matches);
}
