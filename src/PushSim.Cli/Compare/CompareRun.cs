using PushSim.Analysis.Compare;
using PushSim.Scenarios;
using PushSim.Scenarios.Logs;
using PushSim.Words.Fits;

namespace PushSim.Cli.Compare;

/// <summary>The work of `compare`: reads log and scenario, finds values if asked, runs, tells and writes.</summary>
internal sealed class CompareRun(CompareRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
{
    public int Run()
    {
        ChannelLogResult logged = ChannelLogReader.Read(request.Log, request.Rate, cancel);
        if (ProblemWriter.Tell(error, logged.Problems, logged.CannotRead) is int wrongLog)
        {
            return wrongLog;
        }

        ReadResult read = ScenarioReader.Read(request.File, request.Read);
        int? wrong = ProblemWriter.Tell(error, read.Problems, read.CannotRead);
        if (wrong is not null || read.Scenario is null)
        {
            return wrong ?? Complaint.OfCommandLine(error, $"{request.File} is a robot file: compare takes a scenario, which names the robot and its floor", "compare");
        }

        ChannelLog log = logged.Log!.Between((request.From ?? logged.Start) - logged.Start, (request.To ?? double.PositiveInfinity) - logged.Start);
        string fault = Fault(log, read.Scenario, out bool isByWheels);
        IReadOnlyList<IdentifiedValue> starts = [];
        fault = fault.Length > 0 ? fault : LogStudy.Starts(read, request.Identify, out starts);
        if (fault.Length > 0)
        {
            return Complaint.OfCommandLine(error, fault, "compare");
        }

        using OutputFolder? folder = request.Output.Open(new OutputAsk("compare", read.Scenario.Name + "-compare", [request.Log, request.File], error, cancel));
        CompareResult result;
        try
        {
            result = Compute(log, read, isByWheels, starts, logged.Notes);
        }
        catch (SimulationException e)
        {
            return Complaint.OfRun(error, e.Message);
        }

        if (result.Errors.Count == 0)
        {
            return Complaint.OfRun(error, result.Run.Stop is { } stop ? RunWords.Cause(stop) : "the log has nothing that the run could be compared with");
        }

        List<string> files = folder is null ? [] : folder.Put(WriteFiles(folder, result));
        request.Output.Print(output, () => CompareJson.Of(result), PlainText.Of(result.Verdict), () => new ScreenReport(result.Card, result.Verdict)
        {
            Tables = Tables(result), Warnings = result.Warnings, Notes = [.. result.Notes.Select(n => "note: " + n)], Asides = [.. EstimateText.Lines(result.Read)], Suggestions = EstimateText.Suggestions(result.Read, Asked.Of(request.File, request.Read)), Files = files,
        }.Write(output, request.Output.Details));
        return result.Run.Status == RunStatus.Failed ? Complaint.OfRun(error, RunWords.Cause(result.Run.Stop)) : ExitCode.Done;
    }

    /// <summary>The tables of screen and page.</summary>
    internal static IReadOnlyList<AnswerTable> Tables(CompareResult result)
    {
        AnswerTable found = new AnswerTable("Found on the first part of the log").AddColumn("key").AddNumberColumn("before").AddNumberColumn("found").AddColumn("unit");
        foreach (IdentifiedValue v in result.Identified)
        {
            found.AddRow(v.Key, v.Before.ToString("G5", CultureInfo.InvariantCulture), v.After.ToString("G5", CultureInfo.InvariantCulture), v.Unit);
        }

        return result.Identified.Count == 0 ? [CompareWords.Table(result.Errors)] : [CompareWords.Table(result.Errors), found];
    }

    private CompareResult Compute(ChannelLog log, ReadResult read, bool isByWheels, IReadOnlyList<IdentifiedValue> starts, IReadOnlyList<string> notes)
    {
        var study = new LogStudy(request.File, request.Read, log, isByWheels);
        double from = starts.Count == 0 ? 0.0 : request.First * log.Time[^1];
        IReadOnlyList<IdentifiedValue> found = starts.Count == 0 ? [] : study.Identify(starts, from, cancel);
        ReadResult last = found.Count == 0 ? read : study.Read(found);
        RunResult run = study.Run(last, cancel);
        return new CompareResult(log, last, run, run.Time.Length < 2 ? [] : LogComparison.Of(run, log, from), isByWheels, from, found, study.Runs + 1, notes);
    }

    // What keeps a log from being replayed; empty for nothing
    private string Fault(ChannelLog log, ScenarioSettings scenario, out bool isByWheels)
    {
        isByWheels = request.Replay == "wheels" || (request.Replay is null && !log.HasCommands);
        return log.Time.Length < 3 ? "fewer than three rows of the log lie between --from and --to"
            : scenario.Opponent is not null ? "compare replays one robot: its scenario may have no opponent"
            : isByWheels && !log.HasWheels ? "the log has neither commands nor the speeds of both sides' wheels, so there is nothing to put in"
            : !isByWheels && !log.HasCommands ? "the log has no commands: give --replay wheels"
            : "";
    }

    private List<string> WriteFiles(OutputFolder folder, CompareResult result)
    {
        List<string> files = [folder.Write("compare.csv", stream => CompareCsv.Write(result, stream))];
        if (!request.Output.NoPlots)
        {
            cancel.ThrowIfCancellationRequested();
            files.AddRange(folder.WritePicture("plot", ComparePlot.Of(result.Log.Time, result.Errors, result.From)));
        }

        if (request.Output.Report)
        {
            cancel.ThrowIfCancellationRequested();
            files.Add(folder.Write(PageReport.FileName, ComparePage.Of(result, request).Write));
        }

        return files;
    }
}
