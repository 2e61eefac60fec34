namespace PushSim.Analysis.Sweep;

/// <summary>The points of a sweep and what is best among them.</summary>
public sealed record SweepTable
{
    /// <summary>Key of the column of win shares.</summary>
    public const string WinShare = "win_share";

    // Values that differ by less, as a share, are one and the same [1].
    private const double Same = 1e-9;

    // Share of the most from which on the least is about as much [1].
    private const double AboutAsMuch = 0.95;

    /// <summary>The points.</summary>
    public required IReadOnlyList<SweepPoint> Points { get; init; }

    /// <summary>What is asked of each point.</summary>
    public required IReadOnlyList<SweepColumn> Columns { get; init; }

    /// <summary>Finds the best.</summary>
    /// <param name="inputs">The inputs.</param>
    /// <param name="columns">Keys of the columns, the win share last if there is one, and whether more is better.</param>
    /// <param name="points">The points.</param>
    public static SweepTable Of(IReadOnlyList<SweepInput> inputs, IReadOnlyList<(string Key, bool IsHighestBest)> columns, IReadOnlyList<SweepPoint> points)
    {
        var table = new SweepTable { Points = points, Columns = [.. columns.Select(c => new SweepColumn(c.Key, c.IsHighestBest, null, null, []))] };
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

    /// <summary>Whether a column has one and the same value at every one of several points.</summary>
    /// <param name="column">Number of the column, from 0 [1].</param>
    public bool IsSame(int column)
    {
        double[] all = [.. Points.Select(p => Value(p, column)).OfType<double>()];
        return all.Length == Points.Count && all.Length > 1 && all.Max() - all.Min() <= Same * Math.Max(Math.Abs(all.Max()), Math.Abs(all.Min()));
    }

    /// <summary>Whether a column above 0 hardly tells several points apart: the least is about as much as the most.</summary>
    /// <param name="column">Number of the column, from 0 [1].</param>
    public bool IsAlike(int column)
    {
        double[] all = [.. Points.Select(p => Value(p, column) ?? 0.0)];
        return all.Length > 1 && all.Min() > AboutAsMuch * all.Max() && all.Max() > 0.0;
    }

    /// <summary>The other points that drawn matches do not tell from the best: those whose 95 % interval reaches into its own.</summary>
    /// <param name="best">Number of the best point, which has matches [1].</param>
    public IReadOnlyList<SweepPoint> NotToldFrom(int best)
    {
        double least = Points[best].Odds!.WinInterval.Low;
        return [.. Points.Where((p, i) => i != best && p.Odds is { } t && t.WinInterval.High >= least)];
    }

    private SweepColumn Judged(IReadOnlyList<SweepInput> inputs, SweepColumn column, int k)
    {
        double?[] y = [.. Points.Select(p => Value(p, k))];
        int? best = Optimum.Best(y, column.IsHighestBest);
        Optimum? curve = inputs.Count == 1 && inputs[0].Numbers is { } numbers ? Optimum.OfCurve([.. Points.Select(p => numbers[p.Place[0]])], y, column.IsHighestBest) : null;
        int[] good = best is int b ? [.. Enumerable.Range(0, y.Length).Where(i => y[i] is double v && Optimum.IsGood(v, y[b]!.Value))] : [];
        return column with { Best = best, Flatness = curve, GoodPoints = good };
    }
}
