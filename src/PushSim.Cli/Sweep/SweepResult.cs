using PushSim.Analysis.Sweep;
using PushSim.Numerics;
using PushSim.Plotting.Style;
using PushSim.Words.Answers;
using PushSim.Words.Runs;

namespace PushSim.Cli.Sweep;

/// <summary>Everything that `sweep` reports.</summary>
internal sealed record SweepResult
{
    // Points that a sentence names one by one [1].
    private const int MostNamed = 3;

    public required SweepTable Table { get; init; }

    public required bool IsInterrupted { get; init; }

    public required double Seconds { get; init; }

    public required string Verdict { get; init; }

    public required IReadOnlyList<string> Warnings { get; init; }

    public static SweepResult Of(SweepRequest request, Answer[] answers, SweepPoint[] points, bool isInterrupted, double seconds)
    {
        string[] asked = [.. answers.Select(a => a.Key)];
        (string Key, bool IsHighestBest)[] columns = [.. answers.Select(a => (a.Key, request.IsHighestBest ?? a.Better == Better.More)), .. request.Odds > 0 ? [(SweepTable.WinShare, request.IsHighestBest ?? true)] : Array.Empty<(string, bool)>()];
        var table = SweepTable.Of(request.Inputs, columns, points);
        return new SweepResult
        {
            Table = table,
            IsInterrupted = isInterrupted,
            Seconds = seconds,
            Verdict = Words(request, table),
            Warnings = Warned(request, asked, table),
        };
    }

    private static List<string> Warned(SweepRequest request, string[] asked, SweepTable table)
    {
        IReadOnlyList<SweepPoint> points = table.Points;
        List<string> warnings = [.. points.Where(p => p.Failed is not null).Select(p => $"the run at {At(request, p)} failed: {RunWords.Cause(p.Failed)}")];
        long failed = points.Sum(p => p.Odds?.Failed ?? 0);
        if (failed > 0)
        {
            warnings.Add(failed == 1 ? "1 drawn match failed and is left out of the shares" : $"{failed} drawn matches failed and are left out of the shares");
        }

        int tipped = points.Count(p => p.HasTipped);
        if (tipped > 0)
        {
            string what = request.Odds > 0 ? "" : ", and that loses a shove whatever the ground: --odds 200 gives the share of wins";
            warnings.Add($"in {tipped} of {points.Count} runs a robot tips past 20 deg or loses the floor, which ends the run: the numbers are those up to then{(asked.Contains("ground_gained_m") ? what : "")}");
        }

        int bouncing = points.Count(p => p.IsBouncing);
        if (bouncing > 0)
        {
            warnings.Add($"in {bouncing} of {points.Count} runs the robot bounces on the tether, and its mean pull scatters: less slack, a slower ramp or more damping of the tether calms it");
        }

        // a match ends at the line, so every way of winning gains about as much
        int k = Array.IndexOf(asked, "ground_gained_m");
        if (k >= 0 && request.Odds == 0 && table.IsAlike(k))
        {
            warnings.Add("the ground gained hardly tells the points apart, as where every match ends at the line: --odds 200 gives the share of wins, --ask ended_at_s the quickest");
        }

        return warnings;
    }

    private static string Words(SweepRequest request, SweepTable table)
    {
        // of several columns the last one asked, which is the win share if matches were drawn
        int k = table.Columns.Count - 1;
        SweepColumn column = table.Columns[k];
        if (column.Key != SweepTable.WinShare && table.Points.Count > 0 && table.Points.All(p => p.HasTipped))
        {
            return "In every run a robot tips past 20 deg or loses the floor, so that none is best.";
        }

        if (column.Best is not int best)
        {
            return $"{KeyWords.Of(column.Key)} has no value at any point.";
        }

        string words = KeyWords.Of(column.Key);
        string value = PlainNumber.Of(table.Value(table.Points[best], k) ?? double.NaN, 4);
        if (table.IsSame(k))
        {
            return $"{words} is {value} at every point: these values of {string.Join(" and ", request.Inputs.Select(i => i.Key))} make no difference to it.";
        }

        string head = $"{words} is {(column.IsHighestBest ? "highest" : "lowest")}, {value}, at {At(request, table.Points[best])}";
        if (column.Key == SweepTable.WinShare)
        {
            return head + Apart(request, table, best) + ".";
        }

        if (column.Flatness is Optimum o)
        {
            string unit = request.Inputs[0].Unit.Length == 0 ? "" : " " + request.Inputs[0].Unit;
            string end = o.IsAtEnd ? "; the best lies at the end of the range, a wider one may hold a better" : "";
            return $"{head}; within 5 % of that from {PlainNumber.Of(o.Low, 4)} to {PlainNumber.Of(o.High, 4)}{unit}{end}.";
        }

        return $"{head}; {column.GoodPoints.Count} of {table.Points.Count} points {(column.GoodPoints.Count == 1 ? "is" : "are")} within 5 % of that.";
    }

    private static string Apart(SweepRequest request, SweepTable table, int best)
    {
        IReadOnlyList<SweepPoint> alike = table.NotToldFrom(best);
        string which = alike.Count <= MostNamed ? string.Join("; ", alike.Select(p => At(request, p))) : $"{alike.Count} of the others";
        return alike.Count == 0 ? $"; {request.Odds} matches tell it from all others" : $"; {request.Odds} matches do not tell it from {which}";
    }

    public static string At(SweepRequest request, SweepPoint point) => string.Join(", ", request.Inputs.Select((input, i) => $"{input.Key} = {Told(input, point.Place[i])}"));

    // four digits are enough for reading
    private static string Told(SweepInput input, int place) =>
        input.Numbers is { } numbers ? PlainNumber.Of(numbers[place], 4) + (input.Unit.Length == 0 ? "" : " " + input.Unit) : input.Texts[place];
}
