using PushSim.Cli.Run;
using PushSim.Plotting.Plots;
using PushSim.Plotting.Report;

namespace PushSim.Cli.Fit;

/// <summary>The page of `fit --report`.</summary>
internal static class FitPage
{
    public static ReportPage Of(FitRequest request, FitResult outcome, IReadOnlyList<string> blocks) => new()
    {
        Command = "fit",
        Subject = outcome.Fits.Count == 1 ? outcome.Fits[0].Name : FormattableString.Invariant($"{outcome.Fits.Count} tyres"),
        Question = "How much does the tyre grip, and was it the tyre or the motors?",
        Verdict = FitReport.Verdict(outcome),
        Warnings = [.. FitReport.Warnings(outcome.Fits).Select(w => w.Whose + w.Warning), .. RunPage.Problems(outcome.Problems)],
        Tables = FitReport.Tables(outcome),
        ListingTitle = FitReport.ListingTitle,
        Listing = string.Join('\n', blocks).TrimEnd(),
        Figures = [.. FitPlot.Figures(outcome.Fits), .. outcome.Simulated.Where(s => s.Fit is not null).SelectMany(s => SimulationPlot.Figures(s.Tyre, s.Fit!)), .. outcome.Meaning is MeaningResult m ? MeaningPlot.Figures(m.Tyres, m.Opponent, m.Request.Stronger) : []],
        Inputs = [.. Given(request), .. outcome.Read is null ? [] : RunPage.Inputs(outcome.Read)],
        Estimates = [.. outcome.Notes.Select(n => request.Files.Aggregate(n, (text, file) => text.Replace(file, RunPage.Shown(file), StringComparison.Ordinal)))],
        Cautions = FitReport.Cautions,
    };

    private static IEnumerable<ReportInput> Given(FitRequest r) =>
    [
        .. r.Files.SelectMany(f => RunPage.Given("log", RunPage.Shown(f))),
        .. RunPage.Given("--load", r.Load, "N"), .. RunPage.Given("--height", r.Height, "m"), .. RunPage.Given("--tare", r.Tare, "N"),
        .. RunPage.Given("--drag", r.IsDrag ? "yes" : null), .. RunPage.Given("--tyre", r.Tyre), .. RunPage.Given("--unit", r.Log.ForceUnit), .. RunPage.Given("--time-unit", r.Log.TimeUnit),
        .. RunPage.Given("--calibration", r.Log.ForcePerMillivolt, "N/mV"), .. RunPage.Given("--flip", r.Log.IsReversed ? "yes" : null), .. RunPage.Given("--simulate", r.Simulate ? "yes" : null),
        .. RunPage.Given("--against", r.Meaning?.Opponent is string o ? RunPage.Shown(o) : null), .. RunPage.Given("--stronger-motor", r.Meaning?.Stronger, "1"),
    ];
}
