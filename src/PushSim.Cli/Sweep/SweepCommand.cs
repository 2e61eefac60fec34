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
        var file = new Argument<string>("FILE") { Description = "Scenario file, or a robot file with --against." };
        var vary = new Option<string[]>("--vary") { Description = "KEY=FROM..TO, KEY=A,B,C, or KEY=[\"A, B\", C] for names with commas; of one key or two. * stands for every name. Of a key that comes again each text is one whole value.", HelpName = "KEY=VALUES", Required = true };
        var ask = new Option<string[]>("--ask") { Description = "A number of run's JSON, for example pull_plateau_n; repeatable (default by manoeuvre; of a shove the ground gained in all and a second, which tells also where everybody wins).", HelpName = "KEY" };
        var best = new Option<string?>("--best") { Description = "highest or lowest is best (default by quantity).", HelpName = "WHICH" };
        Option<long?> points = CommonOptions.WholeOrNone("--points", "N", "Points of a range (default 11, on a map 7).", 2, 1000);
        Option<long?> odds = CommonOptions.WholeOrNone("--odds", "N", "Also run N drawn matches at each point for the win share.", 1, 1_000_000);
        var contest = new ContestOptions();
        var set = new SetOption();
        var parts = new PartOptions();
        var command = new Command(
            "sweep",
            "Which ratio, tyre or mass is best: a result against one or two inputs.\n\n"
            + "Examples:\n  pushsim sweep scenarios/pull-test.toml --vary \"drive.*.gear_ratio=10..40\"\n  pushsim sweep mine.toml --vary \"chassis.mass=1 kg..2 kg\" --odds 200\n  pushsim sweep mine.toml --vary \"wheel.*.tyre=soft,hard\" --ask push_plateau_n\n  pushsim sweep mine.toml --vary 'wheel.*.tyre=[\"silicone, soft\", latex]'")
        {
            file, vary, ask, best, points, odds, common.Seed, common.Threads,
        };
        contest.AddTo(command);
        set.AddTo(command, draws: true);
        parts.AddTo(command, common, found => found.GetValue(odds));
        common.AddTo(command);
        command.SetAction(parsed =>
        {
            string[] varied = parsed.GetValue(vary)!;
            long? count = parsed.GetValue(points);
            bool isRead = SweepInput.TryParse(varied, keys => (int)(count ?? (keys == 1 ? CurvePoints : MapPoints)), out IReadOnlyList<SweepInput> inputs, out SweepFault? fault);
            string wrong = !isRead ? "--vary: " + SweepWords.Of(fault!) : inputs.Count > 2 ? $"--vary takes one key or two, not {inputs.Count}: {string.Join(", ", inputs.Select(i => i.Key))}" : "";

            string? which = parsed.GetValue(best);
            wrong = wrong.Length == 0 && which is not (null or "highest" or "lowest") ? $"--best takes highest or lowest, not \"{which}\"" : wrong;
            var plan = new MatchPlan("sweep", parsed.GetValue(odds) ?? 0, (ulong)parsed.GetValue(common.Seed), (int)parsed.GetValue(common.Threads), parsed.GetValue(parts.Part), parsed.GetValue(parts.Merge), parsed.GetValue(parts.Check));
            wrong = wrong.Length == 0 && plan.Matches == 0 && (plan.Part is not null || plan.Merge) ? "--part and --merge split and join drawn matches: give --odds N too" : wrong;
            if (wrong.Length > 0)
            {
                return Complaint.OfCommandLine(error, wrong, "sweep");
            }

            var request = new SweepRequest(
                parsed.GetValue(file)!, inputs, parsed.GetValue(ask) ?? [], which is null ? null : which == "highest", contest.In(parsed, set.Read(parsed)), contest.Label(parsed), plan, common.Of(parsed));
            return new SweepRun(request, output, error, cancel).Run();
        });
        return command;
    }
}
