using PushSim.Cli.Matches;
using PushSim.Scenarios.Drawing;

namespace PushSim.Cli.Odds;

/// <summary>One call of `odds`: reads, runs or joins, reports.</summary>
internal sealed class OddsRun(OddsRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
{
    public int Run()
    {
        OddsSide? own = Open(request.File, isAgainst: false, out int code);
        OddsSide? other = own is null || request.Against is null ? null : Open(request.Against, isAgainst: true, out code);
        if (own is null || (request.Against is not null && other is null))
        {
            return code;
        }

        if (request.Match is long number)
        {
            return MatchReplay.Show(own.Source, request, number, own.Read, output, error, cancel);
        }

        OutputFolder? folder = MatchJob.Open(request.Output, own.Source.Middle.Name + "-odds", request.Plan);
        OddsSide[] sides = other is null ? [own] : [own, other];
        string[] keys = request.Effects ? [.. own.Values.Select(v => v.Key).Distinct()] : [];
        FileMatchSource[] contests = [.. sides.Select(s => s.Source), .. keys.Select(k => new FileMatchSource(own.Scenario, request.Plan.Seed, redrawn: k))];
        var work = new MatchWork(request.Plan, Fingerprint.Of([.. sides.Select(s => s.Fingerprint), .. keys]), contests, KeptMatchWords.Instance, MatchJob.Store(folder, request.Plan));
        var job = new MatchJob(request.Plan, work, folder, error, cancel);
        string words = keys.Length == 0 ? "" : $"--effects plays the contest once more for each of {keys.Length} {(keys.Length == 1 ? "value" : "values")}";
        if (!job.Run(request.Output.HasNoProgress, request.Within, words: words))
        {
            return ExitCode.RunFailed;
        }

        return request.Plan.Part is not null ? job.EndPart(output) : Report(job, work, own, other, keys, folder);
    }

    private int Report(MatchJob job, MatchWork work, OddsSide own, OddsSide? other, string[] keys, OutputFolder? folder)
    {
        own.Outcomes = work.Of(0);
        if (other is not null)
        {
            other.Outcomes = work.Of(1);
        }

        int first = other is null ? 1 : 2;
        InputEffect[] effects = [.. keys.Select((k, i) => InputEffect.Of(k, own.Outcomes, work.Of(first + i)))];
        var result = new OddsResult(own, other, request.Plan.Seed, [.. effects.OrderByDescending(e => e.Share)], work.Rate, cancel.IsCancellationRequested);
        List<string> files = folder is null || own.Outcomes.Count == 0 ? [] : Write(folder, result);
        if (folder is not null && files.Count > 0)
        {
            job.Forget();
        }

        request.Output.Print(output, () => OddsJson.Of(result), result.Verdict, () => OddsText.Write(output, result, files));
        if (cancel.IsCancellationRequested)
        {
            return job.EndInterrupted();
        }

        if (result.Tally.Matches == 0)
        {
            return Complaint.OfRun(error, "every match failed; the first: " + (own.Outcomes.Count > 0 ? MatchWords.Cause(own.Outcomes[0]) : "none was run"));
        }

        return ExitCode.Done;
    }

    private OddsSide? Open(string file, bool isAgainst, out int code)
    {
        DrawableResult read = DrawableScenario.Open(file);
        ProblemWriter.Write(error, read.Read.Problems);
        code = read.Read.CannotRead ? ExitCode.CannotReadOrWrite : read.Scenario is null ? ExitCode.WrongInput : ExitCode.Done;
        if (read.Scenario is not DrawableScenario scenario)
        {
            return null;
        }

        if (scenario.Middle.Opponent is null)
        {
            error.WriteLine($"pushsim: error: {PlainText.Of(file)} has no opponent, so nobody wins; odds needs a shove (sweep and run take any scenario)");
            code = ExitCode.WrongInput;
            return null;
        }

        return new OddsSide(scenario, new FileMatchSource(scenario, request.Plan.Seed), Fingerprint.Of(read), read.Read, isAgainst);
    }

    private List<string> Write(OutputFolder folder, OddsResult result)
    {
        List<string> files = [];
        foreach (OddsSide side in new[] { result.Own, result.Against }.OfType<OddsSide>())
        {
            files.Add(folder.Write(side.IsAgainst ? "matches-against.csv" : "matches.csv", stream => WriteMatches(stream, side)));
        }

        if (!request.Output.NoPlots && result.Tally.Matches > 0)
        {
            files.AddRange(folder.WritePicture("plot", OddsPlot.Of(result.Robot, result.Opponent, result.Own.Outcomes, result.Inputs)));
        }

        if (request.Output.Report)
        {
            files.Add(folder.Write(PageReport.FileName, OddsPage.Of(request, result, cancel).Write));
        }

        return files;
    }

    private void WriteMatches(Stream stream, OddsSide side)
    {
        using var writer = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        FinishedMatches.WriteTable(writer, side.Fingerprint, request.Plan, KeptMatchWords.Instance, side.Outcomes);
    }
}
