using PushSim.Cli.Matches;
using PushSim.Scenarios.Drawing;

namespace PushSim.Cli.Ladder;

/// <summary>`pushsim ladder FILE...`: every pair of robots, a square of win shares, a ranking.</summary>
internal static class LadderCommand
{
    private const string PairsFile = "pairs.csv";
    private const long MostMatches = 1_000_000;

    // Round after round is slower by the lanes that run dry at the end of each.
    private const int Rounds = 4;

    public static Command Create(TextWriter output, TextWriter error, CancellationToken cancel)
    {
        var common = new CommonOptions();
        var files = new Argument<string[]>("FILE") { Description = "Robot files, two or more.", Arity = ArgumentArity.OneOrMore };
        Option<long> matches = CommonOptions.Whole("--matches", "N", "Matches of each pair.", 100, 1, MostMatches);
        var scene = new Option<string?>("--scene") { Description = "Scenario file with floor, shove and driving for all.", HelpName = "FILE" };
        var set = new SetOption();
        var parts = new PartOptions();
        var command = new Command(
            "ladder",
            "Who beats whom: every pair of robots, win shares and a ranking.\n\n"
            + "Examples:\n  pushsim ladder scenarios/robots/mole.toml scenarios/robots/badger.toml\n  pushsim ladder robots/*.toml --matches 400 --scene evening.toml\n  pushsim ladder robots/*.toml --matches 10000 --part 3/16 --out big")
        {
            files, matches, scene, common.Seed, common.Threads,
        };
        set.AddTo(command, draws: true);
        parts.AddTo(command, common, found => found.GetValue(matches));
        common.AddTo(command);
        command.SetAction(parsed =>
        {
            var plan = new MatchPlan("ladder", parsed.GetValue(matches), (ulong)parsed.GetValue(common.Seed), (int)parsed.GetValue(common.Threads), parsed.GetValue(parts.Part), parsed.GetValue(parts.Merge), parsed.GetValue(parts.Check));
            return Run(new Request(parsed.GetValue(files)!, parsed.GetValue(scene), set.Read(parsed), plan, common.Of(parsed)), output, error, cancel);
        });
        return command;
    }

    private static int Run(Request request, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        if (request.Robots.Length < 2)
        {
            return Complaint.OfCommandLine(error, "a ladder needs two robot files or more", "ladder");
        }

        MatchPlan plan = request.Plan;
        var ladder = new DrawnLadder(request.Robots, request.Scene, plan.Seed, request.Read);
        if (Complain(ladder, error) is int code)
        {
            return code;
        }

        using OutputFolder? folder = MatchJob.Open(request.Output, new OutputAsk("ladder", "ladder", [.. request.Robots, .. request.Scene is null ? (string[])[] : [request.Scene]], error, cancel), plan);
        KeptMatches work = ladder.Work(plan, KeptMatchWords.Instance, MatchJob.Store(folder, plan));
        var job = new MatchJob(plan, work, folder, error, cancel);

        // in rounds over the pairs, so that an interrupted ladder has some of every pair
        if (job.Run(output, request.Output, rounds: Rounds) is int end)
        {
            return end;
        }

        if (plan.Part is not null)
        {
            return job.EndPart(output);
        }

        LadderResult result = LadderResult.Of(ladder, work, plan.Seed, request.Scene, cancel.IsCancellationRequested);
        List<string> written = folder is null ? [] : folder.Put(WriteFiles(folder, result, ladder, request), !cancel.IsCancellationRequested);

        request.Output.Print(output, () => LadderJson.Of(result), result.Verdict, () => LadderText.Write(output, result, written, request.Output.Details));
        if (cancel.IsCancellationRequested)
        {
            return job.EndInterrupted();
        }

        return result.Matches > 0 && result.Table.Pairs.All(p => p.Matches > 0.0) ? ExitCode.Done : ExitCode.RunFailed;
    }

    // Tells each complaint once; an exit code if a pair cannot be had.
    private static int? Complain(DrawnLadder ladder, TextWriter error)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        int? code = null;
        foreach (DrawableResult read in ladder.Reads)
        {
            ProblemWriter.Write(error, read.Read.Problems.Where(p => told.Add(p.ToString())));
            code = read.Scenario is not null ? code : ProblemWriter.Code(read.Read.Problems, read.Read.CannotRead) ?? ExitCode.WrongInput;
        }

        return code;
    }

    private static List<string> WriteFiles(OutputFolder folder, LadderResult result, DrawnLadder ladder, Request request)
    {
        List<string> written = [folder.Write(PairsFile, stream => LadderCsv.Write(stream, result))];
        if (!request.Output.NoPlots && result.Table.Ranking.Count > 0)
        {
            written.AddRange(folder.WritePicture("plot", LadderPicture.Of(result)));
        }

        if (request.Output.Report)
        {
            written.Add(folder.Write(CommandPage.FileName, LadderPage.Of(result, [.. ladder.Reads.Select(r => r.Read)], request.Plan.Matches).Write));
        }

        return written;
    }

    private sealed record Request(string[] Robots, string? Scene, ReadOptions Read, MatchPlan Plan, OutputRequest Output);
}
