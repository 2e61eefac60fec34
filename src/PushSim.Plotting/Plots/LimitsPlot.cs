using PushSim.Analysis.Limits;
using PushSim.Plotting.Drawing;
using PushSim.Words.Designs;
using PushSim.Words.Limits;

namespace PushSim.Plotting.Plots;

/// <summary>The picture of the limits: force against speed in all and per axle, gains, ratio, heat, and what bound each wheel over the run.</summary>
public static class LimitsPlot
{
    // Gains below this are not drawn [%].
    private const double LeastGain = 0.05;

    /// <summary>The picture.</summary>
    /// <param name="report">The limits.</param>
    /// <param name="run">The run of the scenario, with at least two samples; null where there was none.</param>
    /// <param name="designs">The designs that are compared, it among them; empty or it alone: none.</param>
    public static PlotSheet Of(LimitResult report, RunResult? run, IReadOnlyList<ComparedDesign> designs) => new(() => [.. DesignPanels.OfLimits(designs), .. Panels(report, run)]);

    private static IReadOnlyList<Panel> Panels(LimitResult report, RunResult? run)
    {
        List<Panel> panels = [Forces(report, "Motors against tyres, all wheels", report.Total, report.Now.CrossingSpeed)];
        if (report.Axles.Count > 1)
        {
            panels.AddRange(report.Axles.Select(a => Forces(report, $"Motors against tyres, {LimitWords.Of(a)}", a.Curve, Crossing(a.Curve))));
        }

        panels.AddRange(report.ShownOutputs.Select(o => Gains(report, o)).OfType<Panel>());
        AddRatio(report, panels);
        AddMatch(report.Match, panels);
        if (run is not null)
        {
            panels.AddRange(BindingPanels.Of(run));
        }

        return panels;
    }

    private static Panel Forces(LimitResult report, string title, ForceCurve curve, double? crossing)
    {
        Panel panel = new Panel(title, "Speed [m/s]", "Force [N]")
            .Add(curve.Speed, curve.Motor, "motors can give" + ThrottleWords.At(report.Now.Condition.Throttle))
            .Add(curve.Speed, curve.Peak, "tyres hold, peak")
            .Add(curve.Speed, curve.Sliding, "tyres hold, sliding");
        if (crossing is double v)
        {
            panel.MarkTime(v, FormattableString.Invariant($"tyres bind up to {v:0.00} m/s"));
        }

        return panel;
    }

    private static double? Crossing(ForceCurve curve)
    {
        for (int i = 1; i < curve.Speed.Length; i++)
        {
            double before = curve.Motor[i - 1] - curve.Peak[i - 1];
            double after = curve.Motor[i] - curve.Peak[i];
            if (before > 0.0 && after <= 0.0)
            {
                return curve.Speed[i - 1] + ((curve.Speed[i] - curve.Speed[i - 1]) * before / (before - after));
            }
        }

        return null;
    }

    private static Panel? Gains(LimitResult report, LimitOutput output)
    {
        Gain[] gains = [.. report.Gains.Where(g => g.Output == output && Math.Abs(g.ChangePercent) >= LeastGain).Reverse()];
        string of = output == LimitOutput.ShoveMargin ? "share of the own push [%]" : "change [%]";
        string title = $"10 % more of each part: {LimitWords.Of(output)}";
        return gains.Length == 0 ? null : new Panel(title, char.ToUpperInvariant(of[0]) + of[1..], "")
            .WithBars(gains.Select(g => (LimitWords.Of(g.Input), g.ChangePercent)), 0.35 + (0.105 * gains.Length));
    }

    private static void AddRatio(LimitResult report, List<Panel> panels)
    {
        if (report.Ratio is not { } ratio)
        {
            return;
        }

        RatioPoint[] points = [.. ratio.Points.Where(p => double.IsFinite(p.Pull) && double.IsFinite(p.DashTime))];
        if (points.Length < 2)
        {
            return;
        }

        double[] x = [.. points.Select(p => p.Factor * ratio.MeanRatio)];
        Panel pull = new Panel("Pull against gear ratio", "Gear ratio [1]", "Force [N]").Add(x, [.. points.Select(p => p.Pull)], "steady pull");
        pull.MarkTime(ratio.BestForPull * ratio.MeanRatio, FormattableString.Invariant($"least within {100.0 * (1.0 - RatioCurve.NearlyMost):0} % of full pull {ratio.BestForPull * ratio.MeanRatio:0.#}:1{Edge(ratio, ratio.BestForPull)}"));
        pull.MarkTime(ratio.MeanRatio, FormattableString.Invariant($"now {ratio.MeanRatio:0.#}:1"));
        Panel dash = new Panel("First metre against gear ratio", "Gear ratio [1]", "Time [s]").Add(x, [.. points.Select(p => p.DashTime)], "time for 1 m");
        dash.MarkTime(ratio.BestForDash * ratio.MeanRatio, FormattableString.Invariant($"fastest {ratio.BestForDash * ratio.MeanRatio:0.#}:1{Edge(ratio, ratio.BestForDash)}"));
        dash.MarkTime(ratio.MeanRatio, FormattableString.Invariant($"now {ratio.MeanRatio:0.#}:1"));
        Panel trade = new Panel("The trade: pull against the time for 1 m, by gear ratio", "Time [s]", "Force [N]")
            .Add([.. points.Select(p => p.DashTime)], [.. points.Select(p => p.Pull)], "one ratio each");
        foreach (RatioPoint p in points.Where((_, i) => i % 4 == 0))
        {
            trade.AddNote(p.DashTime, p.Pull, FormattableString.Invariant($"{p.Factor * ratio.MeanRatio:0.#}:1"));
        }

        panels.AddRange([pull, dash, trade.WithoutFill()]);
    }

    private static string Edge(RatioCurve ratio, double factor) => LimitWords.Of(ratio.Edge(factor)) is { Length: > 0 } edge ? $", {edge}" : "";

    private static void AddMatch(DutyHeat match, List<Panel> panels)
    {
        if (match.PeakWinding is not null)
        {
            Panel heat = Panel.OverTime("Heat over the match", "Temperature [°C]").Add(match.Time, match.Winding, "hottest winding").Add(match.Time, match.Case, "hottest case");
            if (double.IsFinite(match.Controller[^1]))
            {
                heat.Add(match.Time, match.Controller, "hottest controller");
            }

            panels.Add(heat);
        }

        panels.Add(Panel.OverTime("Battery over the match", "Voltage [V]").Add(match.Time, match.Voltage, "lowest in each second"));
    }
}
