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
        Warnings = [.. FitText.Warnings(outcome.Fits).Select(w => w.Whose + w.Warning), .. CommandPage.Problems(outcome.Problems)],
        Tables = FitText.Tables(outcome),
        ListingTitle = FitText.ListingTitle,
        Listing = string.Join('\n', blocks).TrimEnd(),
        Figures = [.. FitPlot.Figures(outcome.Fits), .. outcome.Simulated.Where(s => s.Fit is not null).SelectMany(s => SimulationFitPlot.Of(s.Tyre, s.Fit!).Figures), .. outcome.Meaning is MeaningResult m ? MeaningPlot.Of(m.Tyres, m.Opponent, m.Stronger)?.Figures ?? [] : []],
        Inputs = [.. Given(request), .. outcome.Read is null ? [] : CommandPage.Inputs(outcome.Read)],
        Estimates = [.. outcome.Notes.Select(n => request.Files.Aggregate(n, (text, file) => text.Replace(file, CommandPage.Shown(file), StringComparison.Ordinal)))],
        Cautions = Cautions.OfFits,
    };

    private static IEnumerable<ReportInput> Given(FitRequest r) =>
    [
        .. r.Files.SelectMany(f => CommandPage.Given("log", CommandPage.Shown(f))),
        .. CommandPage.Given("--load", r.Load, "N"), .. CommandPage.Given("--height", r.Height, "m"), .. CommandPage.Given("--tare", r.Tare, "N"),
        .. CommandPage.Given("--drag", r.IsDrag ? "yes" : null), .. CommandPage.Given("--tyre", r.Tyre), .. CommandPage.Given("--material", r.Material), .. r.Set.SelectMany(s => CommandPage.Given("--set", $"{s.Path}={s.Value}")), .. CommandPage.Given("--unit", r.Log.ForceUnit), .. CommandPage.Given("--time-unit", r.Log.TimeUnit),
        .. CommandPage.Given("--calibration", r.Log.ForcePerMillivolt, "N/mV"), .. CommandPage.Given("--flip", r.Log.IsReversed ? "yes" : null), .. CommandPage.Given("--simulate", r.Simulate ? "yes" : null),
        .. OpponentOptions.Given(r.Meaning?.Opponent, r.Meaning?.Scene), .. CommandPage.Given("--contest", r.Meaning?.Contest), .. CommandPage.Given("--stronger-motor", r.Meaning?.Stronger, "1"),
    ];
}
