using PushSim.Cli.Matches;

namespace PushSim.Cli.Odds;

/// <summary>`pushsim odds FILE`: many full matches with drawn values; win, lose and stalemate shares.</summary>
internal static class OddsCommand
{
    private const long MostMatches = 100_000_000;

    // Half-width of a share of which nothing is known [1].
    private const double MostHalfWidth = 0.5;

    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var common = new CommonOptions();
        var file = new Argument<string>("FILE") { Description = "Scenario file of a shove, or a robot file with --against." };
        Option<long> matches = CommonOptions.Whole("--matches", "N", "Matches to run.", 1000, 1, MostMatches);
        var within = new Option<string?>("--within") { Description = "Stop when the win share is known to this, for example 2% or 0.02.", HelpName = "SHARE" };
        var contest = new ContestOptions();
        Option<string?> beside = SideReader.Option();
        var set = new SetOption();
        var effects = new Option<bool>("--effects") { Description = "Also tell how much each input matters together with others: as many matches more for each of them." };
        var learn = new Option<string?>("--learn") { Description = "Learn from real matches: a CSV file with the column winner, a row a match.", HelpName = "CSV" };
        var parts = new PartOptions();
        Option<long?> match = CommonOptions.WholeOrNone("--match", "K", "Run this one match again and show it like run.", 0, MostMatches);
        var command = new Command(
            "odds",
            "How sure is the win: draws values from their tolerances and runs many matches.\n\n"
            + "Examples:\n  pushsim odds scenarios/shove-heavy-grippy.toml\n  pushsim odds mole.toml --against badger.toml --within 2%\n  pushsim odds mine.toml --beside other.toml\n  pushsim odds mine.toml --matches 500 --effects\n  pushsim odds mine.toml --learn results.csv\n  pushsim odds mine.toml --matches 100000 --part 3/16 --out big\n  pushsim odds mine.toml --matches 100000 --merge --out big")
        {
            file, matches, common.Seed, common.Threads, within, effects, learn, match, beside,
        };
        contest.AddTo(command);
        set.AddTo(command, draws: true);
        parts.AddTo(command, common, found => found.GetValue(matches));
        common.AddTo(command);
        command.SetAction(parsed =>
        {
            var plan = new MatchPlan("odds", parsed.GetValue(matches), (ulong)parsed.GetValue(common.Seed), (int)parsed.GetValue(common.Threads), parsed.GetValue(parts.Part), parsed.GetValue(parts.Merge), parsed.GetValue(parts.Check));
            var request = new OddsRequest(
                parsed.GetValue(file)!, contest.Label(parsed), parsed.GetValue(beside), contest.In(parsed, set.Read(parsed)), plan, Within(parsed.GetValue(within)), parsed.GetValue(effects), parsed.GetValue(learn), parsed.GetValue(match), common.Of(parsed));
            if (Wrong(request, parsed.GetValue(within)) is string wrong)
            {
                return Complaint.OfCommandLine(error, wrong, "odds");
            }

            return new OddsRun(request, output, error, cancel).Run();
        });
        return command;
    }

    private static string? Wrong(OddsRequest r, string? within) => r switch
    {
        { Within: double.NaN } => $"--within takes a share such as 2% or 0.02, not \"{within}\"",
        { Match: not null, Output.Report: true } => "--match shows one match; its page comes with run --report",
        { Plan.Part: not null, Within: > 0.0 } => "--within looks at all matches together, so it does not go with --part",
        { Match: long k } when k >= r.Plan.Matches => $"--match {k} is not among the matches 0 to {r.Plan.Matches - 1}",
        _ => null,
    };

    private static double Within(string? text) => text is null ? 0.0 : ShareText.Read(text) is double v and > 0.0 and < MostHalfWidth ? v : double.NaN;
}
