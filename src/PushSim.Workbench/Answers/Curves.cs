using PushSim.Binding;
using PushSim.Words.Terms;

namespace PushSim.Workbench.Answers;

/// <summary>The curves of a run, thinned for a screen, what limits when, and the lines of the floor.</summary>
internal static class Curves
{
    // More than a screen's width of points shows nothing more [1].
    private const int MostPoints = 400;

    /// <summary>Curves, the one that matters most first.</summary>
    /// <param name="run">The run.</param>
    /// <param name="before">The run to compare with; null: none.</param>
    public static IReadOnlyList<CurveMessage> Of(RunResult run, RunResult? before) =>
        [.. Named(run).Select(c => c with { Before = before is null ? [] : Named(before).FirstOrDefault(b => b.Key == c.Key)?.Series ?? [] })];

    /// <summary>What limits each robot, stretch by stretch.</summary>
    public static IReadOnlyList<RibbonMessage> Ribbon(RunResult run) =>
        [.. Stretches(run.Limits, "a"), .. Stretches(run.Opponent?.Limits ?? [], "b")];

    /// <summary>Lines of the floor behind which a robot has lost.</summary>
    public static IReadOnlyList<LineMessage> Lines(RunResult run)
    {
        if (run.Opponent is not { } other || run.Time.Length == 0)
        {
            return [];
        }

        double line = run.Scenario.Shove.Line;
        return
        [
            new LineMessage(run.Trace.Body.X[0] - line, $"line of {run.Scenario.Robot.Name}", "a"),
            new LineMessage(line - other.Trace.Body.X[0], $"line of {other.Robot.Name}", "b"),
        ];
    }

    private static IEnumerable<CurveMessage> Named(RunResult run)
    {
        string own = run.Scenario.Robot.Name;
        Trace trace = run.Trace;
        if (run.Opponent is { } other)
        {
            CurveMessage ground = Curve("ground", "Place along the floor", "m", Series(run, trace.Body.X, own, "a"), Series(run, other.Trace.Body.X, other.Robot.Name, "b", -1.0));
            yield return ground with { Lines = [.. Lines(run).Select(l => new CurveLineMessage(l.XM, l.Words, l.Robot))] };
            if (trace.Contact is { } contact)
            {
                yield return Curve("push", "Push between them", "N", Series(run, contact.Push, "push", ""));
            }

            if (trace.Battery is { } battery && other.Trace.Battery is { } others)
            {
                yield return Curve("current", "Battery currents", "A", Series(run, battery.Current, own, "a"), Series(run, others.Current, other.Robot.Name, "b"));
            }

            yield break;
        }

        switch (run.Scenario.Manoeuvre.Traits.Family)
        {
            case ManoeuvreFamily.Pull when trace.Tether is { } tether:
                yield return Curve("pull", "Pull on the tether", "N", Series(run, tether.Force, own, "a"));
                break;
            case ManoeuvreFamily.Push when trace.Contact is { } contact:
                yield return Curve("push", "Push", "N", Series(run, contact.Push, own, "a"));
                break;
            case ManoeuvreFamily.Turn:
                yield return Curve("yaw_rate", "Yaw rate", "rad/s", Series(run, trace.Body.YawRate, own, "a"));
                break;
            default:
                yield return Curve("speed", "Speed", "m/s", Series(run, trace.Body.Speed, own, "a"));
                break;
        }

        yield return new CurveMessage("slip", "Slip of each tread", "m/s", [.. trace.Wheels.Select(w => Series(run, w.SlipSpeed, w.Name, "a"))], [], []);
        if (trace.Battery is { } pack)
        {
            yield return Curve("current", "Battery current", "A", Series(run, pack.Current, own, "a"));
        }
    }

    private static CurveMessage Curve(string key, string words, string unit, params SeriesMessage[] series) => new(key, words, unit, series, [], []);

    // the least and the largest of each stretch, so that no peak is lost
    private static SeriesMessage Series(RunResult run, Series values, string name, string robot, double factor = 1.0)
    {
        int length = Math.Min(run.Time.Length, values.Length);
        int stride = Math.Max(1, (2 * length) / MostPoints);
        List<double> t = [];
        List<double> y = [];
        for (int from = 0; from < length; from += stride)
        {
            int end = Math.Min(from + stride, length);
            (int low, int high) = (from, from);
            for (int i = from; i < end; i++)
            {
                low = values[i] < values[low] ? i : low;
                high = values[i] > values[high] ? i : high;
            }

            foreach (int i in low == high ? [low] : low < high ? new[] { low, high } : [high, low])
            {
                t.Add(Math.Round(run.Time[i], 4));
                y.Add(Rounded(factor * values[i]));
            }
        }

        return new SeriesMessage(name, robot, [.. t], [.. y]);
    }

    private static double Rounded(double value) => double.IsFinite(value) ? Math.Round(value, 5) : 0.0;

    private static IEnumerable<RibbonMessage> Stretches(IReadOnlyList<BindingSpan> spans, string robot) => spans.Select(s =>
    {
        BindingKind kind = s.Kinds.Count > 0 ? s.Kinds[0] : BindingKind.Nothing;
        return new RibbonMessage(s.From, s.To, robot, BindingTable.Key(kind), kind == BindingKind.Nothing ? "nothing limits" : string.Join(", then ", s.Kinds.Select(BindingTable.Words)));
    });
}
