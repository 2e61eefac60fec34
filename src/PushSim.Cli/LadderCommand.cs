using System.CommandLine;
using PushSim.Cli.Chance;

namespace PushSim.Cli;

/// <summary>`pushsim ladder FILE...`: every pair of robots, a square of win shares, a ranking.</summary>
internal static class LadderCommand
{
    private const long MostMatches = 1_000_000;

    // Round after round is slower by the lanes that run dry at the end of each.
    private const int Rounds = 4;

    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var common = new CommonOptions();
        var files = new Argument<string[]>("FILE") { Description = "Robot files, two or more.", Arity = ArgumentArity.OneOrMore };
        Option<long> matches = CommonOptions.Whole("--matches", "N", "Matches of each pair.", 100, 1, MostMatches);
        var scene = new Option<string?>("--scene") { Description = "Scenario file with floor, shove and driving for all.", HelpName = "FILE" };
        var parts = new PartOptions();
        var command = new Command(
            "ladder",
            "Who beats whom: every pair of robots, win shares and a ranking.\n\n"
            + "Examples:\n  pushsim ladder scenarios/robots/mole.toml scenarios/robots/badger.toml\n  pushsim ladder robots/*.toml --matches 400 --scene evening.toml\n  pushsim ladder robots/*.toml --matches 10000 --part 3/16 --out big")
        {
            files, matches, scene, common.Seed, common.Threads,
        };
        parts.AddTo(command, common);
        common.AddTo(command);
        command.SetAction(parsed =>
        {
            string[] robots = parsed.GetValue(files)!;
            if (robots.Length < 2)
            {
                error.WriteLine("pushsim: error: a ladder needs two robot files or more\nhelp: pushsim ladder --help");
                return ExitCode.WrongCommandLine;
            }

            string? outDir = parsed.GetValue(common.Out);
            bool isJson = parsed.GetValue(common.Json);
            var plan = new MatchPlan("ladder", parsed.GetValue(matches), (ulong)parsed.GetValue(common.Seed), (int)parsed.GetValue(common.Threads), parsed.GetValue(parts.Part), parsed.GetValue(parts.Merge));
            var ladder = new Ladder(robots, parsed.GetValue(scene), plan);
            if (!ladder.Open(error, out int code))
            {
                return code;
            }

            OutputFolder? folder = isJson && outDir is null ? null : MatchWork.Open(plan, outDir ?? Path.Combine("pushsim-out", "ladder"), parsed.GetValue(common.Force));
            bool isQuiet = parsed.GetValue(common.Quiet);
            MatchWork work = ladder.Work(error, cancel);

            // in rounds over the pairs, so that an interrupted ladder has some of every pair
            if (!work.Run(folder, isQuiet || isJson, rounds: Rounds))
            {
                return ExitCode.RunFailed;
            }

            if (plan.Part is not null)
            {
                return work.EndPart(output, folder!);
            }

            LadderResult result = ladder.Result(work, cancel.IsCancellationRequested);
            List<string> written = folder is null ? [] : LadderReport.WriteFiles(folder, result, parsed.GetValue(common.NoPlots));
            if (folder is not null && parsed.GetValue(common.Report))
            {
                written.Add(folder.Write(RunPage.FileName, LadderPage.Of(result, ladder.Reads, plan.Matches).Write));
            }

            if (folder is not null)
            {
                work.Forget(folder);
            }

            if (isJson)
            {
                output.WriteLine(LadderReport.Json(result));
            }
            else if (isQuiet)
            {
                output.WriteLine(result.Verdict);
            }
            else
            {
                LadderReport.Write(output, result, written);
            }

            if (cancel.IsCancellationRequested)
            {
                return work.EndInterrupted(folder);
            }

            return result.Matches > 0 && result.Pairs.All(p => p.Matches > 0.0) ? ExitCode.Done : ExitCode.RunFailed;
        });
        return command;
    }
}
