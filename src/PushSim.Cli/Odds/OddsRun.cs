using PushSim.Cli.Matches;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Odds;

/// <summary>One call of `odds`: reads, runs or joins, reports.</summary>
internal sealed class OddsRun(OddsRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
{
    public int Run()
    {
        Side? own = Open(request.File, isAgainst: false, out int code);
        Side? other = own is null || request.Against is null ? null : Open(request.Against, isAgainst: true, out code);
        if (own is null || (request.Against is not null && other is null))
        {
            return code;
        }

        if (request.Match is long number)
        {
            return MatchReplay.Show(own.Source, request, number, own.Read, output, error, cancel);
        }

        OutputFolder? folder = MatchJob.Open(request.Output, own.Source.Middle.Name + "-odds", request.Plan);
        Side[] sides = other is null ? [own] : [own, other];
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

    private int Report(MatchJob job, MatchWork work, Side own, Side? other, string[] keys, OutputFolder? folder)
    {
        own.Outcomes = work.Of(0);
        if (other is not null)
        {
            other.Outcomes = work.Of(1);
        }

        int first = other is null ? 1 : 2;
        InputEffect[] effects = [.. keys.Select((k, i) => InputEffect.Of(k, own.Outcomes, work.Of(first + i)))];
        OddsResult result = OddsResult.Of(own, other, request, cancel.IsCancellationRequested, work.Rate) with { Effects = [.. effects.OrderByDescending(e => e.Share)] };
        List<string> files = folder is null || own.Outcomes.Count == 0 ? [] : Write(folder, own, other, result);
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
            error.WriteLine("pushsim: error: every match failed; the first: " + PlainText.Of(own.Outcomes.Count > 0 ? MatchWords.Cause(own.Outcomes[0]) : "none was run"));
            return ExitCode.RunFailed;
        }

        return ExitCode.Done;
    }

    private Side? Open(string file, bool isAgainst, out int code)
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

        return new Side(scenario, new FileMatchSource(scenario, request.Plan.Seed), Fingerprint.Of(read), read.Read, isAgainst);
    }

    private List<string> Write(OutputFolder folder, Side own, Side? other, OddsResult result)
    {
        Side[] sides = other is null ? [own] : [own, other];
        List<string> files = [];
        foreach (Side side in sides)
        {
            files.Add(folder.Write(side.IsAgainst ? "matches-against.csv" : "matches.csv", stream => WriteMatches(stream, side)));
        }

        if (!request.Output.NoPlots && result.Tally.Matches > 0)
        {
            PlotSheet picture = OddsPlot.Of(own.Source.Robot, own.Source.Opponent, own.Outcomes, result.Inputs);
            files.AddRange(folder.WritePicture("plot", picture));
        }

        if (request.Output.Report)
        {
            files.Add(folder.Write(PageReport.FileName, OddsPage.Of(request, result, own, other, cancel).Write));
        }

        return files;
    }

    private void WriteMatches(Stream stream, Side side)
    {
        using var writer = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        FinishedMatches.WriteTable(writer, side.Fingerprint, request.Plan, KeptMatchWords.Instance, side.Outcomes);
    }

    /// <summary>One of the scenarios that are run.</summary>
    internal sealed record Side(DrawableScenario Scenario, FileMatchSource Source, string Fingerprint, ReadResult Read, bool IsAgainst)
    {
        public IReadOnlyList<TolerancedValue> Values => Scenario.Values;

        public IReadOnlyList<MatchEnd> Outcomes { get; set; } = [];
    }
}
