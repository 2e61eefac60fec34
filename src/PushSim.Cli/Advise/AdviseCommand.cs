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
        per.AcceptOnlyFromAmong("gram", "price", "points");
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
        foreach (Option option in (Option[])[common.Json, common.Quiet, common.Details])
        {
            command.Options.Add(option);
        }

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
            return Run(request, parsed.GetValue(per)!, parsed.GetValue(common.Json), parsed.GetValue(common.Quiet), parsed.GetValue(common.Details), output, error, cancel);
        });
        return command;
    }

    private static int Run(AdviceRequest request, string per, bool json, bool quiet, bool details, TextWriter output, TextWriter error, CancellationToken cancel)
    {
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

        if (json || quiet)
        {
            output.WriteLine(json ? AdviseJson.Of(result, per) : AdviseText.Verdict(result, per));
            return ExitCode.Done;
        }

        AdviseText.Write(output, result, per, details);
        return ExitCode.Done;

        void Step(long done, long due)
        {
            line ??= new ProgressLine(error, "matches at most", due, json || quiet);
            line.StepTo(done);
        }
    }
}
