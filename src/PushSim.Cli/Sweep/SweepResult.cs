using PushSim.Analysis.Sweep;
using PushSim.Cli.Run;
using PushSim.Numerics;
using PushSim.Plotting.Style;

namespace PushSim.Cli.Sweep;

/// <summary>One column of a sweep: an asked quantity or the win share.</summary>
/// <param name="Key">Its JSON name.</param>
/// <param name="IsHighestBest">True if more is better.</param>
/// <param name="Best">Number of the best point; null if no point has a value.</param>
/// <param name="Flatness">Best of a curve with its range within 5 %; null for names and maps.</param>
/// <param name="GoodPoints">Numbers of the points within 5 % of the best.</param>
internal sealed record SweepColumn(string Key, bool IsHighestBest, int? Best, Optimum? Flatness, IReadOnlyList<int> GoodPoints);

/// <summary>Everything that `sweep` reports.</summary>
internal sealed record SweepResult
{
    public const string WinShare = "win_share";

    // Points that a sentence names one by one [1].
    private const int MostNamed = 3;

    // Values that differ by less, as a share, are one and the same [1].
    private const double Same = 1e-9;

    public required IReadOnlyList<SweepPoint> Points { get; init; }

    public required IReadOnlyList<SweepColumn> Columns { get; init; }

    public required bool IsInterrupted { get; init; }

    public required double Seconds { get; init; }

    public required string Verdict { get; init; }

    public required IReadOnlyList<string> Warnings { get; init; }

    public double? Value(SweepPoint point, int column)
    {
        bool isOdds = Columns[column].Key == WinShare;
        return isOdds ? (point.Odds is { Matches: > 0 } t ? t.Share(t.Wins) : null) : point.Answers[column];
    }

    public static SweepResult Of(SweepRequest request, string[] asked, SweepPoint[] points, bool isInterrupted, double seconds)
    {
        string[] keys = request.Odds > 0 ? [.. asked, WinShare] : asked;
        var result = new SweepResult
        {
            Points = points,
            Columns = [.. keys.Select(k => new SweepColumn(k, request.IsHighestBest ?? (k == WinShare || AskedQuantity.IsHighestBest(k)), null, null, []))],
            IsInterrupted = isInterrupted,
            Seconds = seconds,
            Verdict = "",
            Warnings = Warned(request, asked, points),
        };
        result = result with { Columns = [.. result.Columns.Select((c, k) => result.Judged(request, c, k))] };
        return result with { Verdict = result.Words(request) };
    }

    private SweepColumn Judged(SweepRequest request, SweepColumn column, int k)
    {
        double?[] y = [.. Points.Select(p => Value(p, k))];
        int? best = Optimum.Best(y, column.IsHighestBest);
        Optimum? curve = request.Inputs.Count == 1 && request.Inputs[0].Numbers is { } numbers ? Optimum.OfCurve([.. Points.Select(p => numbers[p.Place[0]])], y, column.IsHighestBest) : null;
        int[] good = best is int b ? [.. Enumerable.Range(0, y.Length).Where(i => y[i] is double v && Optimum.IsGood(v, y[b]!.Value))] : [];
        return column with { Best = best, Flatness = curve, GoodPoints = good };
    }

    private static List<string> Warned(SweepRequest request, string[] asked, SweepPoint[] points)
    {
        List<string> warnings = [.. points.Where(p => p.Cause.Length > 0).Select(p => $"the run at {At(request, p)} failed: {p.Cause}")];
        long failed = points.Sum(p => p.Odds?.Failed ?? 0);
        if (failed > 0)
        {
            warnings.Add(failed == 1 ? "1 drawn match failed and is left out of the shares" : $"{failed} drawn matches failed and are left out of the shares");
        }

        int tipped = points.Count(p => p.HasTipped);
        if (tipped > 0)
        {
            string what = request.Odds > 0 ? "" : ", and that loses a shove whatever the ground: --odds 200 gives the share of wins";
            warnings.Add($"in {tipped} of {points.Length} runs a robot tips past 20 deg or loses the floor, which ends the run: the numbers are those up to then{(asked.Contains("ground_gained_m") ? what : "")}");
        }

        int bouncing = points.Count(p => p.IsBouncing);
        if (bouncing > 0)
        {
            warnings.Add($"in {bouncing} of {points.Length} runs the robot bounces on the tether, and its mean pull scatters: less slack, a slower ramp or more damping of the tether calms it");
        }

        // a match ends at the line, so every way of winning gains about as much
        int k = Array.IndexOf(asked, "ground_gained_m");
        double[] ground = k < 0 || request.Odds > 0 ? [] : [.. points.Select(p => p.Answers[k] ?? 0.0)];
        if (ground.Length > 1 && ground.Min() > 0.95 * ground.Max() && ground.Max() > 0.0)
        {
            warnings.Add("the ground gained hardly tells the points apart, as where every match ends at the line: --odds 200 gives the share of wins, --ask ended_at_s the quickest");
        }

        return warnings;
    }

    private string Words(SweepRequest request)
    {
        // of several columns the last one asked, which is the win share if matches were drawn
        int k = Columns.Count - 1;
        SweepColumn column = Columns[k];
        if (column.Key != WinShare && Points.Count > 0 && Points.All(p => p.HasTipped))
        {
            return "In every run a robot tips past 20 deg or loses the floor, so that none is best.";
        }

        if (column.Best is not int best)
        {
            return $"{KeyWords.Of(column.Key)} has no value at any point.";
        }

        string words = KeyWords.Of(column.Key);
        string value = PlainNumber.Of(Value(Points[best], k) ?? double.NaN, 4);
        double[] all = [.. Points.Select(p => Value(p, k)).OfType<double>()];
        if (all.Length == Points.Count && all.Length > 1 && all.Max() - all.Min() <= Same * Math.Max(Math.Abs(all.Max()), Math.Abs(all.Min())))
        {
            return $"{words} is {value} at every point: these values of {string.Join(" and ", request.Inputs.Select(i => i.Key))} make no difference to it.";
        }

        string head = $"{words} is {(column.IsHighestBest ? "highest" : "lowest")}, {value}, at {At(request, Points[best])}";
        if (column.Key == WinShare)
        {
            return head + Apart(request, best) + ".";
        }

        if (column.Flatness is Optimum o)
        {
            string unit = request.Inputs[0].Unit.Length == 0 ? "" : " " + request.Inputs[0].Unit;
            string end = o.IsAtEnd ? "; the best lies at the end of the range, a wider one may hold a better" : "";
            return $"{head}; within 5 % of that from {PlainNumber.Of(o.Low, 4)} to {PlainNumber.Of(o.High, 4)}{unit}{end}.";
        }

        return $"{head}; {column.GoodPoints.Count} of {Points.Count} points {(column.GoodPoints.Count == 1 ? "is" : "are")} within 5 % of that.";
    }

    // Which other points the drawn matches do not tell from the best: those whose 95 % interval reaches into its own
    private string Apart(SweepRequest request, int best)
    {
        double least = Points[best].Odds!.WinInterval.Low;
        SweepPoint[] alike = [.. Points.Where((p, i) => i != best && p.Odds is { } t && t.WinInterval.High >= least)];
        string which = alike.Length <= MostNamed ? string.Join("; ", alike.Select(p => At(request, p))) : $"{alike.Length} of the others";
        return alike.Length == 0 ? $"; {request.Odds} matches tell it from all others" : $"; {request.Odds} matches do not tell it from {which}";
    }

    public static string At(SweepRequest request, SweepPoint point) => string.Join(", ", request.Inputs.Select((input, i) => $"{input.Key} = {Told(input, point.Place[i])}"));

    // four digits are enough for reading
    private static string Told(SweepInput input, int place) =>
        input.Numbers is { } numbers ? PlainNumber.Of(numbers[place], 4) + (input.Unit.Length == 0 ? "" : " " + input.Unit) : input.Texts[place];
}
