using PushSim.Plotting.Report;

namespace PushSim.Cli.Odds;

/// <summary>The page of `odds --report`.</summary>
internal static class OddsPage
{
    public static ReportPage Of(OddsRequest request, OddsResult result, CancellationToken cancel)
    {
        OddsSide own = result.Own;

        // an interrupted page comes without a replay: there is no time for one more run
        (long Number, RunResult Run)? shown = !cancel.IsCancellationRequested && MatchEnd.Middling(own.Outcomes) is long number && own.Source.Match(number, out _) is ScenarioSettings match ? (number, Simulator.Run(match, cancel)) : null;
        return new ReportPage
        {
            Command = "odds",
            Subject = own.Source.Middle.Name,
            Question = $"How sure is it that {result.Robot} wins against {result.Opponent}?",
            Verdict = result.Verdict,
            Card = OddsText.Card(result),
            Warnings = [.. result.Warnings, .. CommandPage.Problems(own.Read.Problems), .. result.Others.SelectMany(o => CommandPage.Problems(o.Read.Problems))],
            Replay = shown?.Run,
            ReplayNote = shown is { } s ? string.Create(CultureInfo.InvariantCulture, $"Match {s.Number}, the middle one of all by the ground that {result.Robot} gained: {RunCard.Answer(s.Run)}") : "",
            Tables = OddsText.Tables(result),
            Figures = result.Tally.Matches > 0 ? result.Plot.Figures : [],
            Inputs =
            [
                .. CommandPage.Inputs(own.Read), .. result.Others.SelectMany(o => CommandPage.Inputs(o.Read)),
                .. CommandPage.Given("--matches", request.Plan.Matches.ToString(CultureInfo.InvariantCulture)), .. CommandPage.Given("--seed", request.Plan.Seed.ToString(CultureInfo.InvariantCulture)),
                .. OpponentOptions.Given(request.Read.Opponent, request.Read.Scene), .. CommandPage.Given("--contest", request.Contest),
                .. request.Read.Set.SelectMany(s => CommandPage.Given("--set", $"{s.Path}={s.Value}")), .. request.Effects ? CommandPage.Given("--effects", "yes") : [], .. CommandPage.Given("--learn", request.Learn), .. CommandPage.Given("--within", request.Within > 0.0 ? request.Within : null, "1"),
            ],
            Estimates = [.. own.Read.Notes, .. result.Others.SelectMany(o => o.Read.Notes).Except(own.Read.Notes)],
            Computation = OddsText.Computation(result),
            Cautions = Cautions.OfPredictions,
        };
    }
}
