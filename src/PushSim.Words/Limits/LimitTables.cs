using PushSim.Analysis.Limits;
using PushSim.Words.Tables;

namespace PushSim.Words.Limits;

/// <summary>The limits in tables for screen and page: states, wheels, gains, ratio, wiring, match, what bound each wheel over the run.</summary>
public static class LimitTables
{
    // Gains smaller than this are left out of the table [%].
    private const double LeastShown = 0.05;

    /// <summary>The tables, the answers first.</summary>
    /// <param name="r">The limits.</param>
    /// <param name="run">The run of the same scenario; null for none.</param>
    public static IReadOnlyList<AnswerTable> Of(LimitReport r, RunResult? run)
    {
        List<AnswerTable> tables = [States(r), Wheels(r), .. r.ShownOutputs.Select(o => Gains(r, o))];
        if (r.Ratio is not null)
        {
            tables.Add(Ratio(r.Ratio));
        }

        if (r.Wirings.Count > 0)
        {
            tables.Add(Wirings(r));
        }

        tables.Add(Match(r));
        if (run is not null)
        {
            tables.Add(Bindings("What bound each wheel over the run, share of time", run, b => b.TimeShare));
            tables.Add(Bindings("and share of its impulse", run, b => b.ImpulseShare));
        }

        return tables;
    }

    private static AnswerTable States(LimitReport r)
    {
        LimitState[] states = [r.Now, .. r.States];
        AnswerTable table = NewTable("At standstill", "Quantity", states.Select(s => LimitWords.Of(s.Kind)));
        Row(table, "motors can give [N]", states, s => Text(s.MotorForce, "0.00"));
        Row(table, "tyres hold, peak [N]", states, s => Text(s.TractionPeak, "0.00"));
        Row(table, "  the same [gf]", states, s => Phrase.Gram(s.TractionPeak));
        Row(table, "tyres hold, sliding [N]", states, s => Text(s.TractionSliding, "0.00"));
        Row(table, "steady pull [N]", states, s => Text(s.Pull, "0.00"));
        Row(table, "  the same [gf]", states, s => s.Pull is double p ? Phrase.Gram(p) : "-");
        if (states.Any(s => s.RearsUpAt is not null))
        {
            Row(table, "rears up on its hook at [N]", states, s => Text(s.RearsUpAt, "0.00"));
        }

        Row(table, "steady pull per gram [mN]", states, s => Text(s.Pull / r.Scenario.Robot.Chassis.Mass, "0.00"));
        Row(table, "motors over tyres [1]", states, s => Text(s.MotorForce / s.TractionPeak, "0.00"));
        for (int k = 0; k < Math.Max(1, states.Max(s => s.Bound.Count)); k++)
        {
            Row(table, k == 0 ? "what binds" : "then", states, s => s.Bound.Count > k ? BindingTable.Words(s.Bound[k].Kind) : k > 0 ? "-" : Unbound(s));
            Row(table, "  10 % more of it [%]", states, s => s.Bound.Count > k ? Text(s.Bound[k].GainPercent, "+0.0;-0.0;0.0") : "-");
        }

        Row(table, "tyres bind up to [m/s]", states, s => Text(s.CrossingSpeed, "0.00"));
        Row(table, "top speed [m/s]", states, s => Text(s.TopSpeed, "0.00"));
        Row(table, "battery, all stalled [V]", states, s => Text(s.StallVoltage, "0.0"));
        return r.BestThrottle is { } best ? table.AddRemark(ThrottleWords.Best(best, r.Scenario.Robot.Name)) : table;
    }

    private static AnswerTable Wheels(LimitReport r)
    {
        AnswerTable table = NewTable(Moment(r.Now), "Wheel", ["load [N]", "motor [N]", "peak [N]", "sliding [N]", "gives [N]", "spins [m/s]", "what binds"], isFolded: true);
        foreach (WheelLimit w in r.Wheels)
        {
            table.AddRow(
                w.Name, Text(w.Load, "0.00"), w.IsDriven ? Text(w.MotorForce, "0.00") : "", Text(w.PeakForce, "0.00"), Text(w.SlidingForce, "0.00"),
                Text(w.Force, "0.00"), Text(w.SpinSpeed, "0.00"), w.Binding is BindingKind kind ? BindingTable.Words(kind) : Unbound(r.Now, w));
        }

        return table;
    }

    /// <summary>Why nothing binds a wheel; its key for scripts as well.</summary>
    public static string Unbound(LimitState s, WheelLimit w) => !w.IsDriven ? "none" : s.Status == PullStatus.RearsUp ? "rears up" : "not found";

    private static string Unbound(LimitState s) => s.Status switch { PullStatus.RearsUp => "rears up", PullStatus.NotFound => "not found", _ => "-" };

    // When the wheels carry and give what their table says
    private static string Moment(LimitState s) => s.Status switch
    {
        PullStatus.RearsUp => "As it rears up",
        PullStatus.NotFound => "As its tyres break away",
        _ => "While it pulls",
    };

    private static AnswerTable Gains(LimitReport r, LimitOutput output)
    {
        double now = r.Outputs[output];
        AnswerTable table = NewTable($"10 % more of each: {LimitWords.Of(output)}, now {Text(now, "0.000")} {LimitWords.Unit(output)}", "More", ["becomes", "change", "slope alone"]);
        Gain[] shown = [.. r.Gains.Where(g => g.Output == output && (Math.Abs(g.ChangePercent) >= LeastShown || Math.Abs(g.SlopePercent) >= LeastShown))];
        foreach (Gain g in shown)
        {
            table.AddRow(LimitWords.Of(g.Input), Text(g.Changed, "0.000"), Text(g.ChangePercent, "+0.0;-0.0;0.0") + " %", Text(g.SlopePercent, "+0.0;-0.0;0.0") + " %");
        }

        if (shown.Length < r.Gains.Count(g => g.Output == output))
        {
            table.AddRow("all others", "", "0.0 %", "");
        }

        return output == LimitOutput.ShoveMargin ? table.AddRemark("Shove margin: own standing push less that of the opponent. Changes are shares of the own push.", isAside: true) : table;
    }

    private static AnswerTable Ratio(RatioCurve curve)
    {
        RatioPoint dash = curve.Points.MinBy(p => Math.Abs(Math.Log(p.Factor / curve.BestForDash)))!;
        RatioPoint pull = curve.Points.First(p => p.Factor == curve.BestForPull);
        string flat = curve.IsFlat ? " The pull hardly depends on the ratio: the tyres hold it." : "";
        return new AnswerTable("Gear ratio").AddRemark(Phrase.Text(
            $"Best gear ratio for a dash of 1 m: {curve.BestForDash * curve.MeanRatio:0.#}:1{Edge(curve.BestForDash, "may be quicker still")} ({dash.DashTime:0.00} s, pull {dash.Pull:0.0} N, {dash.TopSpeed:0.0} m/s). Least within {100.0 * (1.0 - RatioCurve.NearlyMost):0} % of the greatest pull: {curve.BestForPull * curve.MeanRatio:0.#}:1{Edge(curve.BestForPull, pull == curve.Points[0] ? "may do too" : "may pull harder still")} ({pull.Pull:0.0} N, {pull.DashTime:0.00} s, {pull.TopSpeed:0.0} m/s); a tired battery or hot motors want a higher one.{flat}"));

        string Edge(double factor, string beyond) => LimitWords.Of(curve.Edge(factor)) is { Length: > 0 } edge ? $", the {edge}, so a {(factor < 1.0 ? "lower" : "higher")} one {beyond}" : "";
    }

    private static AnswerTable Wirings(LimitReport r)
    {
        AnswerTable table = NewTable($"Wiring, with {r.Wirings[0].Wheel} losing its grip (in the air: what lifts it carries its load)", "Case", ["pull [N]", .. r.Wirings[0].Motors.Select(m => m.Drive)], isFolded: true);
        foreach (WiringCase c in r.Wirings)
        {
            table.AddRow([
                $"{LimitWords.Of(c.Wiring)}, {LimitWords.Of(c.Case)}", Text(c.Pull, "0.00"),
                .. c.Motors.Select(m => Phrase.Text($"{m.Current:0.0} A {100.0 * m.PowerShare:0} % {m.Force:0.0} N")),
            ]);
        }

        return table;
    }

    private static AnswerTable Match(LimitReport r)
    {
        MatchResult m = r.Match;
        AnswerTable table = NewTable(
            Phrase.Text($"Match of {m.Pattern.Length:0} s: over and over {Dashes(m.Pattern.Dash)}, {m.Pattern.Push:0.#} s pushing, {m.Pattern.Turn:0.#} s turning, {m.Pattern.Rest:0.#} s at rest"),
            "Quantity", ["value"]);
        table.AddRow("hottest winding", m.PeakWinding is null ? "no thermal data" : Text(m.PeakWinding, "0") + " °C");
        table.AddRow("stalled: time to the winding's limit", m.StallTimeToLimit is double t ? Text(t, "0.0") + " s" : m.PeakWinding is null ? "no thermal data" : "never");
        table.AddRow("current limit folds back", m.FoldBackAt is double f ? Text(f, "0") + " s, to " + Text(100.0 * m.LeastLimitShare, "0") + " %" : "never");
        table.AddRow("lowest battery voltage", Text(m.LowestVoltage, "0.0") + " V");
        table.AddRow("charge used", Text(m.ChargeUsed / 3.6, "0") + " mA h, " + Text(100.0 * m.ChargeShare, "0") + " %" + (m.RunsEmpty ? ": runs empty" : ""));
        return table;
    }

    // each dash starts anew after a second
    private static string Dashes(double seconds) => Phrase.Text(
        $"{seconds:0.##} s of dashes{(seconds > 1.0 ? ", each 1 s from standstill" : seconds > 0.0 ? " from standstill" : "")}");

    private static AnswerTable Bindings(string title, RunResult run, Func<BindingMoments, IReadOnlyList<double>> shares)
    {
        IReadOnlyList<double>[] each = [.. run.Bindings.Select(shares)];
        int[] kinds = [.. Enum.GetValues<BindingKind>().Select(k => (int)k).Where(k => each.Any(b => b[k] > 0.0))];
        AnswerTable table = NewTable(title, "Wheel", kinds.Select(k => BindingTable.WheelWords((BindingKind)k)), isFolded: true);
        foreach ((BindingMoments b, IReadOnlyList<double> share) in run.Bindings.Zip(each))
        {
            table.AddRow([run.Scenario.Robot.Wheels[b.Wheel].Name, .. kinds.Select(k => Text(100.0 * share[k], "0.0") + " %")]);
        }

        return table;
    }

    private static AnswerTable NewTable(string caption, string first, IEnumerable<string> others, bool isFolded = false)
    {
        AnswerTable table = new AnswerTable(caption) { IsFolded = isFolded }.AddColumn(first);
        foreach (string name in others)
        {
            table.AddNumberColumn(name);
        }

        return table;
    }

    private static void Row(AnswerTable table, string name, LimitState[] states, Func<LimitState, string> cell) =>
        table.AddRow([name, .. states.Select(cell)]);

    private static string Text(double? value, string format) =>
        value is double v && double.IsFinite(v) ? v.ToString(format, CultureInfo.InvariantCulture) : "-";
}
