using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>Pictures of a fit: the log with the parts found and the fit over it, its residuals; and all tyres side by side.</summary>
public static class FitPlot
{
    // More logs of one tyre would make a picture nobody scrolls through [1].
    private const int MostLogs = 4;

    // More points than this are thinned; they could not be told apart [1].
    private const int MostPoints = 3000;

    // Of the ramp before a tyre lets go [s].
    private const double RampShown = 1.0;

    // Labels of more pulls would lie on each other [1].
    private const int MostLabels = 4;

    /// <summary>A tyre's logs; null for display readings.</summary>
    /// <param name="fit">The tyre.</param>
    public static PlotSheet? OfTyre(TyreFit fit) => fit.Traces.Count > 0 ? new PlotSheet(() => PanelsOfTyre(fit)) : null;

    /// <summary>Friction of all tyres with their intervals, most grip first.</summary>
    /// <param name="fits">At least one tyre.</param>
    public static PlotSheet OfAll(IReadOnlyList<TyreFit> fits) => new(() => [PanelOfAll(fits)]);

    /// <summary>For a page: all tyres side by side where that says more, then each tyre's logs.</summary>
    /// <param name="fits">At least one tyre.</param>
    public static IReadOnlyList<ReportFigure> Figures(IReadOnlyList<TyreFit> fits)
    {
        ReportFigure[] logs = [.. fits.SelectMany(f => OfTyre(f)?.Figures ?? [])];
        return fits.Count > 1 || logs.Length == 0 ? [.. OfAll(fits).Figures, .. logs] : logs;
    }

    private static List<Panel> PanelsOfTyre(TyreFit fit)
    {
        List<Panel> panels = [.. Overlaid(fit)];
        for (int k = 0; k < Math.Min(MostLogs, fit.Traces.Count); k++)
        {
            string which = fit.Traces.Count > 1 ? FormattableString.Invariant($", log {k + 1} of {fit.Traces.Count}") : "";
            panels.AddRange(OfTrace(fit.Name, which, fit.Traces[k]));
        }

        return panels;
    }

    // all pulls over each other from where they let go, with the two levels
    private static IEnumerable<Panel> Overlaid(TyreFit fit)
    {
        (FoundTrace Found, FoundPull Pull)[] pulls = [.. fit.Traces.SelectMany(t => t.Pulls.Select(p => (t, p))).Where(x => x.p.Plateau is not null)];
        if (pulls.Length == 0)
        {
            yield break;
        }

        Panel panel = new Panel($"All {pulls.Length} pulls of {fit.Name} over each other", "Time from where it lets go [s]", "Force [N]");
        foreach ((FoundTrace found, FoundPull pull) in pulls)
        {
            double[] time = found.Trace.Time;
            HashSet<int> spikes = [.. found.Spikes];
            int from = Array.FindIndex(time, t => t >= time[pull.Peak] - RampShown);
            int[] kept = [.. Enumerable.Range(from, pull.PlateauTo - from).Where(i => !spikes.Contains(i))];
            panel.AddThin([.. kept.Select(i => time[i] - time[pull.Peak])], [.. kept.Select(i => found.Trace.Force[i] - pull.Tare)], "a pull");
        }

        if (pulls.Any(x => x.Pull.Quality != BreakawayQuality.NoPeak))
        {
            panel.MarkLine(pulls.Where(x => x.Pull.Quality != BreakawayQuality.NoPeak).Average(x => x.Pull.Breakaway.Value), FormattableString.Invariant($"lets go: {fit.StaticFriction.Value:0.000} of the load"));
        }

        yield return fit.KineticFriction is Interval k
            ? panel.MarkLine(pulls.Average(x => x.Pull.Plateau!.Value.Value), FormattableString.Invariant($"slides: {k.Value:0.000} of the load"))
            : panel;
    }

    private static Panel PanelOfAll(IReadOnlyList<TyreFit> tyres)
    {
        List<TyreFit> fits = [.. tyres.OrderByDescending(f => f.ForModel.Kinetic)];
        Panel panel = new Panel("Friction of each tyre, most grip first; bars: 95 % intervals", "Tyre", "Friction [1]")
            .AddBars([.. fits.Select(f => Bar(f.KineticFriction))], "sliding (kinetic)", -0.08, 0);
        if (fits.Any(f => !f.IsBreakawayUnseen))
        {
            panel.AddBars([.. fits.Select(f => f.IsBreakawayUnseen ? Bar(null) : Bar(f.StaticFriction))], "breakaway (static)", 0.08, 1);
        }

        return panel.WithNames([.. fits.Select(f => f.Name + (f.Limit.IsInconsistent ? " (?)" : f.Limit.IsLowerBound ? " (at least)" : ""))]);
    }

    private static (double Value, double Low, double High) Bar(Interval? i) =>
        i is { } v ? (v.Value, v.Low, v.High) : (double.NaN, double.NaN, double.NaN);

    private static IEnumerable<Panel> OfTrace(string tyre, string which, FoundTrace found)
    {
        HashSet<int> spikes = [.. found.Spikes];
        int[] kept = [.. Enumerable.Range(0, found.Trace.Time.Length).Where(i => !spikes.Contains(i))];
        double[] time = [.. kept.Select(i => found.Trace.Time[i])];
        double[] force = [.. kept.Select(i => found.Trace.Force[i])];
        string left = spikes.Count == 0 ? "" : spikes.Count == 1 ? " (1 spike left out)" : $" ({spikes.Count} spikes left out)";
        Panel panel = Panel.OverTime($"Pull on the cell: {tyre}{which}{left}", "Reading [N]").Add(time, force, "cell reads");
        List<(double X, double Y)> pieces = [];
        List<(double X, double Y)> residuals = [];
        for (int p = 0; p < found.Pulls.Count; p++)
        {
            AddPull(panel, found, found.Pulls[p], spikes, found.Pulls.Count <= MostLabels, pieces, residuals);
        }

        panel.AddPieces(pieces, "fit: ramp to breakaway, plateau");
        yield return panel;
        if (residuals.Count > 1)
        {
            int every = 1 + (residuals.Count / MostPoints);
            yield return Panel.OverTime("Residuals of the plateaus", "Reading less fit [N]").AddPoints(residuals.Where((_, i) => i % every == 0), "residual").WithSpan(time[0], time[^1]);
        }
    }

    private static void AddPull(Panel panel, FoundTrace found, FoundPull pull, HashSet<int> spikes, bool isLabelled, List<(double X, double Y)> pieces, List<(double X, double Y)> residuals)
    {
        double[] time = found.Trace.Time;
        pieces.AddRange(pull.Ramp.Select(r => (r.Time, r.Force + pull.Tare)));
        pieces.Add((time[pull.Peak], double.NaN));
        if (pull.Quality != BreakawayQuality.NoPeak && isLabelled)
        {
            string sign = pull.Quality == BreakawayQuality.Seen ? "" : "at least ";
            panel.MarkTime(time[pull.Peak], FormattableString.Invariant($"breakaway {sign}{pull.Breakaway.Value:0.00} N"));
        }

        if (pull.Plateau is not { } plateau)
        {
            return;
        }

        double from = time[pull.PlateauFrom];
        double to = time[pull.PlateauTo - 1];
        pieces.Add((from, plateau.Value + pull.Tare));
        pieces.Add((to, plateau.Value + pull.Tare));
        pieces.Add((to, double.NaN));
        if (isLabelled)
        {
            panel.MarkLevel(from, to, plateau.Value + pull.Tare, FormattableString.Invariant($"slides at {plateau.Value:0.00} N"));
        }

        for (int i = pull.PlateauFrom; i < pull.PlateauTo; i++)
        {
            if (!spikes.Contains(i))
            {
                residuals.Add((time[i], found.Trace.Force[i] - plateau.Value - pull.Tare));
            }
        }
    }
}
