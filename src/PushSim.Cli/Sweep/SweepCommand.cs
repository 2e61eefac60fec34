using PushSim.Analysis.Sweep;
using PushSim.Cli.Matches;
using PushSim.Words.Sweeps;

namespace PushSim.Cli.Sweep;

/// <summary>`pushsim sweep FILE`: any result against one or two inputs.</summary>
internal static class SweepCommand
{
    private const int CurvePoints = 11;
    private const int MapPoints = 7;

    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var common = new CommonOptions();
        var file = new Argument<string>("FILE") { Description = "Scenario file." };
        var vary = new Option<string[]>("--vary") { Description = "KEY=FROM..TO, or KEY=A,B,C; once or twice. * stands for every name.", HelpName = "KEY=VALUES", Required = true };
        var ask = new Option<string[]>("--ask") { Description = "A number of run's JSON, for example pull_plateau_n; repeatable.", HelpName = "KEY" };
        var best = new Option<string?>("--best") { Description = "highest or lowest is best (default by quantity).", HelpName = "WHICH" };
        Option<long?> points = CommonOptions.WholeOrNone("--points", "N", "Points of a range (default 11, on a map 7).", 2, 1000);
        Option<long?> odds = CommonOptions.WholeOrNone("--odds", "N", "Also run N drawn matches at each point for the win share.", 1, 1_000_000);
        Option<string?> contest = ContestOptions.Label();
        var set = new SetOption();
        var parts = new PartOptions();
        var command = new Command(
            "sweep",
            "Which ratio, tyre or mass is best: a result against one or two inputs.\n\n"
            + "Examples:\n  pushsim sweep scenarios/pull-test.toml --vary \"drive.*.gear_ratio=10..40\"\n  pushsim sweep mine.toml --vary \"chassis.mass=1 kg..2 kg\" --odds 200\n  pushsim sweep mine.toml --vary \"wheel.*.tyre=soft,hard\" --ask push_plateau_n")
        {
            file, vary, ask, best, points, odds, contest, common.Seed, common.Threads,
        };
        set.AddTo(command);
        parts.AddTo(command, common);
        common.AddTo(command);
        command.SetAction(parsed =>
        {
            string[] varied = parsed.GetValue(vary)!;
            long count = parsed.GetValue(points) ?? (varied.Length == 1 ? CurvePoints : MapPoints);
            List<SweepInput> inputs = [];
            string wrong = varied.Length > 2 ? "--vary goes once or twice" : "";
            foreach (string text in varied.Take(2))
            {
                if (!SweepInput.TryParse(text, (int)count, out SweepInput? input, out SweepFault? fault))
                {
                    wrong = "--vary: " + SweepWords.Of(fault!);
                    break;
                }

                inputs.Add(input!);
            }

            string? which = parsed.GetValue(best);
            wrong = wrong.Length == 0 && which is not (null or "highest" or "lowest") ? $"--best takes highest or lowest, not \"{which}\"" : wrong;
            var plan = new MatchPlan("sweep", parsed.GetValue(odds) ?? 0, (ulong)parsed.GetValue(common.Seed), (int)parsed.GetValue(common.Threads), parsed.GetValue(parts.Part), parsed.GetValue(parts.Merge));
            wrong = wrong.Length == 0 && plan.Matches == 0 && (plan.Part is not null || plan.Merge) ? "--part and --merge split and join drawn matches: give --odds N too" : wrong;
            if (wrong.Length > 0)
            {
                return Complaint.OfCommandLine(error, wrong, "sweep");
            }

            var request = new SweepRequest(
                parsed.GetValue(file)!, inputs, parsed.GetValue(ask) ?? [], which is null ? null : which == "highest", set.Of(parsed), parsed.GetValue(contest), plan, common.Of(parsed));
            return new SweepRun(request, output, error, cancel).Run();
        });
        return command;
    }
}
