using PushSim.Cli.Matches;
using PushSim.Scenarios;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Logs;

namespace PushSim.Cli.Odds;

/// <summary>One call of `odds`: reads, runs or joins, reports.</summary>
internal sealed class OddsRun(OddsRequest asked, TextWriter output, TextWriter error, CancellationToken cancel)
{
    private const string MatchesFile = "matches.csv";

    private readonly OddsRequest _request = AsNow(asked, error);

    // Label of the draws, that of the first side for both; null until that was read
    private string? _label = asked.Contest;

    // What really happened; null where nobody told it
    private RealResults? _real;

    public int Run()
    {
        OddsSide? own = Open(new DesignSide(Path.GetFileNameWithoutExtension(_request.File), _request.File, _request.Read), out int code);
        if (own is null)
        {
            return code;
        }

        if (_request.Match is long number)
        {
            return MatchReplay.Show(own.Source, _request, number, own.Read, output, error, cancel);
        }

        if (_request.Learn is string record)
        {
            _real = ResultsReader.Read(record, own.Source.Robot, own.Source.Opponent, out Problem? problem);
            if (problem is not null)
            {
                ProblemWriter.Write(error, [problem]);
                return ExitCode.WrongInput;
            }
        }

        IReadOnlyList<DesignSide> designs = DesignSides.Of(own.Read, _request.File, _request.Read, _request.Beside);
        List<OddsSide> sides = [own with { Label = designs[0].Label }];
        foreach (DesignSide design in designs.Skip(1))
        {
            if (Open(design, out code) is not OddsSide other)
            {
                return code;
            }

            sides.Add(other);
        }

        using OutputFolder? folder = MatchJob.Open(_request.Output, new OutputAsk("odds", own.Source.Middle.Name + "-odds", [_request.File], error, cancel), _request.Plan);
        string[] keys = _request.Effects ? [.. own.Source.Groups] : [];
        FileMatchSource[] contests = [.. sides.Select(s => s.Source), .. keys.Select(k => new FileMatchSource(own.Scenario, own.Contest, redrawn: k))];
        var work = new MatchWork(
            _request.Plan, () => [.. sides.Select(s => s.Fingerprint), .. contests.Skip(sides.Count).Select(c => Fingerprint.Of(own.Drawable, c))], contests, KeptMatchWords.Instance, MatchJob.Store(folder, _request.Plan));
        var job = new MatchJob(_request.Plan, work, folder, error, cancel);
        string words = keys.Length == 0 ? "" : $"--effects plays the contest once more for each of {keys.Length} {(keys.Length == 1 ? "value" : "values")}";
        if (job.Run(output, _request.Output, _request.Within, words: words) is int end)
        {
            return end;
        }

        return _request.Plan.Part is not null ? job.EndPart(output) : Report(job, work, sides, keys, folder);
    }

    private int Report(MatchJob job, MatchWork work, List<OddsSide> sides, string[] keys, OutputFolder? folder)
    {
        for (int i = 0; i < sides.Count; i++)
        {
            sides[i].Outcomes = work.Of(i);
            sides[i].Tally = work.TallyOf(i);
        }

        OddsSide own = sides[0];
        InputEffect[] effects = [.. keys.Select((k, i) => InputEffect.Of(k, own.Outcomes, work.Of(sides.Count + i)))];
        var result = new OddsResult(own, sides[1..], _request.Plan.Seed, [.. effects.OrderByDescending(e => e.Share)], work.Rate, cancel.IsCancellationRequested) { Start = Starts(own), Pairs = Pairs(own), Real = _real, Within = _request.Within };
        List<string> files = folder is null || own.Tally.All == 0 ? [] : folder.Put(Write(folder, result), !cancel.IsCancellationRequested);

        _request.Output.Print(output, () => OddsJson.Of(result), result.Verdict, () => OddsText.Write(output, result, files, _request.Output.Details));
        if (cancel.IsCancellationRequested)
        {
            return job.EndInterrupted();
        }

        if (result.Tally.Matches == 0)
        {
            return Complaint.OfRun(error, "every match failed; the first: " + (own.Tally.FirstFailed is [MatchEnd first, ..] ? MatchWords.Cause(first) : "none was run"));
        }

        return ExitCode.Done;
    }

    // when the report is made, so that parts and an interrupted command need not keep them
    private StartOdds? Starts(OddsSide own)
    {
        if (cancel.IsCancellationRequested || own.Tally.Matches == 0)
        {
            return null;
        }

        double lead = own.Source.Lead;
        var progress = new ProgressLine(error, "matches of other starts", (long)StartOdds.Count(own.Tally.All, lead) * StartOdds.Anew(lead).Count, _request.Output.HasNoProgress);
        StartOdds? start = StartOdds.Of(own.Source, lead, own.Outcomes, own.Tally.All, _request.Plan.Threads, progress.Step, cancel);
        progress.End();
        return start;
    }

    // a record leaves few of them, so it takes more
    private int MostPairs => _real is null ? 0 : LearnedOdds.MostPairs;

    // as the starts are, when the report is made
    private PairOdds? Pairs(OddsSide own)
    {
        if (cancel.IsCancellationRequested || PairOdds.Count(own.Tally.All, MostPairs) == 0)
        {
            return null;
        }

        var progress = new ProgressLine(error, "matches of plausible pairs", PairOdds.More(own.Tally.All, MostPairs), _request.Output.HasNoProgress);
        PairOdds? pairs = PairOdds.Of(own.Source, own.Outcomes, own.Tally.All, _request.Plan.Threads, progress.Step, MostPairs, cancel);
        progress.End();
        return pairs;
    }

    // --against compared two scenarios before it named an opponent, and still does for one more version
    private static OddsRequest AsNow(OddsRequest request, TextWriter error)
    {
        if (request is not { Read: { Opponent: string against, Scene: null }, Beside: null } || !ScenarioReader.IsScenario(against, request.Read.Garage) || !ScenarioReader.IsScenario(request.File, request.Read.Garage))
        {
            return request;
        }

        error.WriteLine("note: --against names the opponent's robot file; two scenarios are compared by --beside, as which it is taken this time");
        return request with { Read = request.Read with { Opponent = null }, Beside = against };
    }

    private OddsSide? Open(DesignSide design, out int code)
    {
        DrawableResult read = DrawableScenario.Open(design.File, design.Options);
        ProblemWriter.Write(error, read.Read.Problems);
        code = read.Scenario is not null ? ExitCode.Done : ProblemWriter.Code(read.Read.Problems, read.Read.CannotRead) ?? ExitCode.WrongInput;
        if (read.Scenario is not DrawableScenario scenario)
        {
            return null;
        }

        if (scenario.Middle.Opponent is null)
        {
            error.WriteLine($"pushsim: error: {PlainText.Of(design.File)} has no opponent, so nobody wins; name one by --against, or give a shove (sweep and run take any scenario)");
            code = ExitCode.WrongInput;
            return null;
        }

        var contest = new ContestKey(_request.Plan.Seed, _label ??= scenario.Label);
        return new OddsSide(design.Label, scenario, contest, new FileMatchSource(scenario, contest), read);
    }

    private List<string> Write(OutputFolder folder, OddsResult result)
    {
        List<string> files = [];
        foreach ((OddsSide side, int i) in result.Others.Prepend(result.Own).Select((s, i) => (s, i)))
        {
            files.Add(folder.Write(i == 0 ? MatchesFile : i == 1 ? "matches-beside.csv" : $"matches-beside-{i}.csv", stream => WriteMatches(stream, side)));
        }

        if (!_request.Output.NoPlots && result.Tally.Matches > 0)
        {
            files.AddRange(folder.WritePicture("plot", result.Plot));
        }

        if (_request.Output.Report)
        {
            files.Add(folder.Write(PageReport.FileName, OddsPage.Of(_request, result, cancel).Write));
        }

        return files;
    }

    private void WriteMatches(Stream stream, OddsSide side)
    {
        using var writer = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        MatchTable.Write(writer, side.Fingerprint, _request.Plan, KeptMatchWords.Instance, side.Outcomes);
    }
}
