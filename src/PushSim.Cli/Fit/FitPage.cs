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
        Verdict = FitText.Verdict(outcome),
        Card = FitText.Card(outcome),
        Warnings = [.. FitText.Warnings(outcome.Fits).Select(w => w.Whose + w.Warning), .. PageReport.Problems(outcome.Problems)],
        Tables = FitText.Tables(outcome),
        ListingTitle = FitText.ListingTitle,
        Listing = string.Join('\n', blocks).TrimEnd(),
        Figures = [.. FitPlot.Figures(outcome.Fits), .. outcome.Simulated.Where(s => s.Fit is not null).SelectMany(s => SimulationPlot.Of(s.Tyre, s.Fit!).Figures), .. outcome.Meaning is MeaningResult m ? MeaningPlot.Of(m.Tyres, m.Opponent, m.Stronger)?.Figures ?? [] : []],
        Inputs = [.. Given(request), .. outcome.Read is null ? [] : PageReport.Inputs(outcome.Read)],
        Estimates = [.. outcome.Notes.Select(n => request.Files.Aggregate(n, (text, file) => text.Replace(file, PageReport.Shown(file), StringComparison.Ordinal)))],
        Cautions = Cautions.OfFits,
    };

    private static IEnumerable<ReportInput> Given(FitRequest r) =>
    [
        .. r.Files.SelectMany(f => PageReport.Given("log", PageReport.Shown(f))),
        .. PageReport.Given("--load", r.Load, "N"), .. PageReport.Given("--height", r.Height, "m"), .. PageReport.Given("--tare", r.Tare, "N"),
        .. PageReport.Given("--drag", r.IsDrag ? "yes" : null), .. PageReport.Given("--tyre", r.Tyre), .. PageReport.Given("--material", r.Material), .. r.Set.SelectMany(s => PageReport.Given("--set", $"{s.Path}={s.Value}")), .. PageReport.Given("--unit", r.Log.ForceUnit), .. PageReport.Given("--time-unit", r.Log.TimeUnit),
        .. PageReport.Given("--calibration", r.Log.ForcePerMillivolt, "N/mV"), .. PageReport.Given("--flip", r.Log.IsReversed ? "yes" : null), .. PageReport.Given("--simulate", r.Simulate ? "yes" : null),
        .. OpponentOptions.Given(r.Meaning?.Opponent, r.Meaning?.Scene), .. PageReport.Given("--contest", r.Meaning?.Contest), .. PageReport.Given("--stronger-motor", r.Meaning?.Stronger, "1"),
    ];
}
