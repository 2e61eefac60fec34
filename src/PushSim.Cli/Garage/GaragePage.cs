using PushSim.Cli.Fit;
using PushSim.Cli.Ladder;
using PushSim.Plotting.Report;
using PushSim.Scenarios.Drawing;
using PushSim.Words.Fits;

namespace PushSim.Cli.Garage;

/// <summary>The page of `garage --report`: tyres over the season, who beats whom, what was learnt, and what there is.</summary>
internal static class GaragePage
{
    // Matches of each pair of the league table, and robots in it at most [1].
    private const long Matches = 64;
    private const int MostRobots = 8;

    public static ReportPage Of(GarageContents g, string? named, SeasonStudy? season, LadderResult? league) => new()
    {
        Command = "garage",
        Subject = g.Name,
        Question = "What do I own, what did I measure, who beats whom?",
        Verdict = season?.First is { } fit ? SeasonWords.Verdict(fit, season.Sliding is not null) : GarageText.Verdict(g),
        Card = Card(g, season, league) with { Suggestions = GarageText.Suggestions(g, named is null ? null : PageReport.Shown(named)) },
        Warnings = [.. season?.Notes ?? [], .. league?.Warnings ?? []],
        Tables = [.. season is null ? [] : SeasonCommand.Tables(season), .. league is null ? [] : LadderText.Tables(league), GarageText.Table(g)],
        Figures = [.. season?.First is { } first ? SeasonPlot.Of(first, season.Sliding is not null).Figures : [], .. league is { Table.Ranking.Count: > 0 } ? LadderPicture.Of(league).Figures : []],
        Computation = league is null ? "" : LadderText.Computation(league),
        Cautions = Cautions.OfPredictions,
    };

    /// <summary>The league of the garage's robots and opponents; null with fewer than two that can be used.</summary>
    public static LadderResult? League(GarageContents g, OutputRequest request, TextWriter error, CancellationToken cancel)
    {
        string[] names = [.. g.Robots.Concat(g.Rivals).Where(r => !r.IsUnusable).Select(r => r.Name).Distinct().Take(MostRobots)];
        if (names.Length < 2)
        {
            return null;
        }

        var plan = new MatchPlan("ladder", Matches, 1, Environment.ProcessorCount);
        var ladder = new DrawnLadder(names, null, plan.Seed, new ReadOptions { Garage = g.Folder.Path });
        if (ladder.Reads.Any(r => r.Scenario is null))
        {
            return null;
        }

        MatchWork work = ladder.Work(plan, KeptMatchWords.Instance);
        var progress = new ProgressLine(error, "matches of the league", work.All, request.HasNoProgress);
        work.Run(0.0, 1, progress.Step, () => progress.Seconds, cancel);
        progress.End();
        cancel.ThrowIfCancellationRequested();
        return LadderResult.Of(ladder, work, plan.Seed, null, isInterrupted: false);
    }

    private static AnswerCard Card(GarageContents g, SeasonStudy? season, LadderResult? league)
    {
        string leader = league?.Verdict ?? "";
        if (season?.First is not { } fit)
        {
            return new AnswerCard(GarageText.Verdict(g)) { Facts = leader, Next = GarageText.Next(g), IsCautioned = false };
        }

        AnswerCard card = SeasonWords.Of(fit, season.Sliding is not null, season.RobotChanges);
        return card with { Facts = string.Join(' ', new[] { card.Facts, leader }.Where(t => t.Length > 0)), Next = card.Next.Length > 0 ? card.Next : GarageText.Next(g) };
    }
}
