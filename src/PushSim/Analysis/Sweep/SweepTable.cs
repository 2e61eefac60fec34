using PushSim.Analysis.Chance;
using PushSim.Runs;

namespace PushSim.Analysis.Sweep;

/// <summary>The points of a sweep and what is best among them.</summary>
public sealed record SweepTable
{
    /// <summary>Key of the column of win shares.</summary>
    public const string WinShare = "win_share";

    /// <summary>Key of the column of ground gained, which ends at the line.</summary>
    public const string Ground = "ground_gained_m";

    /// <summary>Key of the column of ground gained a second, which goes on to tell where every shove ends at the line.</summary>
    public const string GroundRate = "ground_rate_m_per_s";

    /// <summary>Share within which values tie [1]: ten times the relative tolerance of a run.</summary>
    public const double TieShare = 1e-3;

    /// <summary>Ground [m], and ground a second [m/s], within which shoves tie: a run at the default tolerance is within 2 mm of an exact one (tested).</summary>
    public const double TieGround = 2e-3;

    // Sweeps in which a point as good as the best is called worse, at most [1].
    private const double Level = 0.05;

    // Share of the most from which on the least is about as much [1].
    private const double AboutAsMuch = 0.95;

    /// <summary>The points.</summary>
    public required IReadOnlyList<SweepPoint> Points { get; init; }

    /// <summary>What is asked of each point.</summary>
    public required IReadOnlyList<SweepColumn> Columns { get; init; }

    // Compares the drawn matches of two points number by number; null without any.
    private Func<int, int, OddsDifference>? Paired { get; init; }

    /// <summary>Finds the best.</summary>
    /// <param name="inputs">The inputs.</param>
    /// <param name="columns">Keys of the columns, the win share last if there is one, and whether more is better.</param>
    /// <param name="points">The points.</param>
    /// <param name="paired">Compares the drawn matches of two points by their places, which share their draws; null where there are none.</param>
    public static SweepTable Of(IReadOnlyList<SweepInput> inputs, IReadOnlyList<(string Key, bool IsHighestBest)> columns, IReadOnlyList<SweepPoint> points, Func<int, int, OddsDifference>? paired = null)
    {
        var table = new SweepTable { Points = points, Paired = paired, Columns = [.. columns.Select(c => new SweepColumn(c.Key, c.IsHighestBest, null, null, [], []))] };
        return table with { Columns = [.. table.Columns.Select((c, k) => table.Judged(inputs, c, k))] };
    }

    /// <summary>Value of a column at a point [its unit]; null where there is none.</summary>
    /// <param name="point">The point.</param>
    /// <param name="column">Number of the column, from 0 [1].</param>
    public double? Value(SweepPoint point, int column)
    {
        bool isOdds = Columns[column].Key == WinShare;
        return isOdds ? (point.Odds is { Matches: > 0 } t ? t.Share(t.Wins) : null) : point.Answers[column];
    }

    /// <summary>Whether a column tells none of several points from another: all tie, or of win shares all are one and the same.</summary>
    /// <param name="column">Number of the column, from 0 [1].</param>
    public bool IsSame(int column) => Points.Count > 1 && (Columns[column].Key == WinShare
        ? Points.All(p => Value(p, column) is double v && v == Value(Points[0], column))
        : Columns[column].Ties.Count == Points.Count);

    /// <summary>Who won the shove of every point: 0 the first robot, 1 the opponent, -1 nobody [1]; null where that differs or there was none.</summary>
    public int? Winner => Points.Count > 0 && Points.All(p => p.Shove is not null && p.Shove.Winner == Points[0].Shove?.Winner) ? Points[0].Shove!.Winner : null;

    /// <summary>Whether a column above 0 hardly tells several points apart: the least is about as much as the most.</summary>
    /// <param name="column">Number of the column, from 0 [1].</param>
    public bool IsAlike(int column)
    {
        double[] all = [.. Points.Select(p => Value(p, column) ?? 0.0)];
        return all.Length > 1 && all.Min() > AboutAsMuch * all.Max() && all.Max() > 0.0;
    }

    // Ground ties at the line whatever it is, win shares where drawn matches do not tell them apart.
    private bool IsTie(string key, int k, int place, int bestPlace)
    {
        (SweepPoint point, SweepPoint best) = (Points[place], Points[bestPlace]);
        if (Value(point, k) is not double v || Value(best, k) is not double most)
        {
            return false;
        }

        bool isGround = key is Ground or GroundRate;
        return key == WinShare
            ? IsTie(place, bestPlace)
            : Math.Abs(v - most) <= Math.Max(TieShare * Math.Abs(most), isGround ? TieGround : 0.0)
                || (key == Ground && point.Shove is { Ending: ShoveEnding.Line } s && best.Shove is { Ending: ShoveEnding.Line } b && s.Winner == b.Winner);
    }

    // What two points share in their draws cancels. The best of many looks better than it is, so that all other points are compared with it at once (Bonferroni): a point that is as good
    // as the best is called worse in at most 5 of 100 sweeps. Without their matches the 95 % interval of the one must reach into the other's.
    private bool IsTie(int place, int best)
    {
        if (Paired is null)
        {
            return Points[place].Odds!.WinInterval is var own && Points[best].Odds!.WinInterval is var other && own.Low <= other.High && own.High >= other.Low;
        }

        return Paired(best, place).BoundsAt(NormalQuantile.Of(1.0 - (0.5 * Level / (Points.Count - 1)))).Holds(0.0);
    }

    private SweepColumn Judged(IReadOnlyList<SweepInput> inputs, SweepColumn column, int k)
    {
        double?[] y = [.. Points.Select(p => Value(p, k))];
        int? best = Optimum.Best(y, column.IsHighestBest);
        Optimum? curve = inputs.Count == 1 && inputs[0].Numbers is { } numbers ? Optimum.OfCurve([.. Points.Select(p => numbers[p.Place[0]])], y, column.IsHighestBest) : null;
        int[] good = best is int b ? [.. Enumerable.Range(0, y.Length).Where(i => y[i] is double v && Optimum.IsGood(v, y[b]!.Value))] : [];
        int[] ties = best is int t ? [.. Enumerable.Range(0, y.Length).Where(i => i == t || IsTie(column.Key, k, i, t))] : [];
        return column with { Best = best, Flatness = curve, GoodPoints = good, Ties = ties.Length > 1 ? ties : [] };
    }
}
