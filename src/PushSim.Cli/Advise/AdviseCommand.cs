using PushSim.Scenarios.Units;

namespace PushSim.Cli.Advise;

/// <summary>`pushsim advise ROBOT --against A,B`: what to change first, and what to measure.</summary>
internal static class AdviseCommand
{
    private const long MostMatches = 100_000;

    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var common = new CommonOptions();
        var robot = new Argument<string>("FILE") { Description = "Robot file, or a robot of the garage." };
        var against = new Option<string?>("--against") { Description = "Opponents, files or names, with commas between.", HelpName = "A,B" };
        var scene = new Option<string?>("--scene") { Description = "Scenario file with floor, shove and driving (default: a plain shove).", HelpName = "FILE" };
        var limit = new Option<string?>("--limit") { Description = "Most that the robot may weigh, for example 1360g.", HelpName = "MASS" };
        var per = new Option<string>("--per") { Description = "What the gain is counted by: gram, price, or points alone.", HelpName = "WHAT", DefaultValueFactory = _ => "gram" };
        per.AcceptOnlyFromAmong([.. AdviceOrder.All.Select(o => o.Name)]);
        Option<long> matches = CommonOptions.Whole("--matches", "N", "Matches against each opponent of the changes that look best.", 384, 32, MostMatches);
        var set = new SetOption();
        var command = new Command(
            "advise",
            "What to change first, and what to measure.\n\nEvery change plays the same drawn matches as the robot as it is, and is told\nwith its points of win share, grams and price. A measurement is told with how\nfar it would move the odds, the most per minute first.\n\n"
            + "Prices and masses of parts: [[price]] in garage.toml.\n\nExamples:\n  pushsim advise mole --against badger,wombat --limit 1500g\n  pushsim advise mole.toml --against wombat.toml --per points")
        {
            robot, against, scene, limit, per, matches, common.Seed, common.Threads,
        };
        CommonOptions.CheckText(limit, t => MassArgument.TryParse(t, out double kg, out string m) && kg > 0.0 ? "" : m.Length > 0 ? m : "must be above zero");
        set.AddTo(command, draws: true);
        common.AddTo(command);
        command.SetAction(parsed =>
        {
            string[] opponents = [.. (parsed.GetValue(against) ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
            if (opponents.Length == 0)
            {
                return Complaint.OfCommandLine(error, "advise needs --against: one opponent or more, for example --against badger,wombat", "advise");
            }

            var request = new AdviceRequest
            {
                Robot = parsed.GetValue(robot)!, Opponents = opponents, Scene = parsed.GetValue(scene), Matches = parsed.GetValue(matches), Seed = (ulong)parsed.GetValue(common.Seed),
                Threads = (int)parsed.GetValue(common.Threads), Read = set.Read(parsed), Limit = parsed.GetValue(limit) is string mass && MassArgument.TryParse(mass, out double kg, out _) ? kg : null,
            };
            return Run(request, AdviceOrder.All.First(o => o.Name == parsed.GetValue(per)), common.Of(parsed), parsed.GetValue(limit), output, error, cancel);
        });
        return command;
    }

    private static int Run(AdviceRequest request, AdviceOrder order, OutputRequest asked, string? limit, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        using OutputFolder? folder = asked.Open(new OutputAsk("advise", Path.GetFileNameWithoutExtension(request.Robot) + "-advice", [request.Robot, .. request.Opponents, .. request.Scene is null ? (string[])[] : [request.Scene]], error, cancel));
        ProgressLine? line = null;
        AdviceResult result;
        try
        {
            result = AdviceStudy.Of(request, Step, cancel);
        }
        finally
        {
            line?.End();
        }

        if (ProblemWriter.Tell(error, result.Problems, result.CannotRead) is int wrong)
        {
            return wrong;
        }

        Suggestion more = More(request, order, limit);
        List<string> files = folder is null ? [] : folder.Put(WriteFiles(folder, request, result, order, more, asked));
        asked.Print(output, () => AdviseJson.Of(result, order), PlainText.Of(AdviseText.Verdict(result, order)), () => AdviseText.Write(output, result, order, more, files, asked.Details));
        return ExitCode.Done;

        void Step(long done, long due)
        {
            line ??= new ProgressLine(error, "matches at most", due, asked.HasNoProgress);
            line.StepTo(done);
        }
    }

    private static List<string> WriteFiles(OutputFolder folder, AdviceRequest request, AdviceResult result, AdviceOrder order, Suggestion more, OutputRequest asked)
    {
        List<string> files = [folder.Write("changes.csv", s => AdviseCsv.Write(s, result, order))];
        if (!asked.NoPlots && result.Changes.Count > 0)
        {
            files.AddRange(folder.WritePicture("plot", AdvisePage.Picture(result, order)));
        }

        if (asked.Report)
        {
            files.Add(folder.Write(PageReport.FileName, AdvisePage.Of(request, result, order, more).Write));
        }

        return files;
    }

    // the same with four times the matches, which halves the intervals
    private static Suggestion More(AdviceRequest request, AdviceOrder order, string? limit) => new(
        "Half the error",
        CommandLine.Of(
            "advise",
            [
                CommandLine.File(request.Robot), "--against", string.Join(',', request.Opponents), .. request.Scene is { } scene ? (string[])["--scene", scene] : [], .. limit is null ? (string[])[] : ["--limit", limit],
                .. order == AdviceOrder.Gram ? (string[])[] : ["--per", order.Name], "--matches", Math.Min(MostMatches, 4 * request.Matches).ToString(CultureInfo.InvariantCulture), .. request.Read.Set.SelectMany(s => new[] { "--set", $"{s.Path}={s.Value}" }),
            ],
            request.Read.Garage));
}
