using System.Diagnostics;
using PushSim.Cli.Run;
using PushSim.Scenarios.Drawing;

namespace PushSim.Cli.Odds;

/// <summary>One match of `odds` again, with the whole record, shown like a run.</summary>
internal static class MatchReplay
{
    public static int Show(FileMatchSource source, OddsRequest request, long number, ReadResult read, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        ScenarioSettings? scenario = source.Replay(number, out string cause);
        if (scenario is null)
        {
            error.WriteLine($"pushsim: error: match {number} of seed {request.Plan.Seed} cannot start: {PlainText.Of(cause)}");
            WriteDraws(error, source, number);
            return ExitCode.RunFailed;
        }

        using OutputFolder? folder = request.Output.Open(new OutputAsk("run", scenario.Name, [request.File], error, cancel));
        long start = Stopwatch.GetTimestamp();
        RunResult result = Simulator.Run(scenario, cancel);
        double milliseconds = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        var cost = new RunCost(milliseconds, CommandClock.Milliseconds, result.RhsEvaluations);
        List<string> files = [];
        if (folder is not null && result.Time.Length >= 2)
        {
            files.Add(folder.Write("history.csv", stream => HistoryCsv.Write(result, stream, isWhole: true, cancel)));
            if (!request.Output.NoPlots)
            {
                files.AddRange(folder.WritePicture("plot", request.Output.Drawn(RunPlot.Of(result))));
            }

            files = folder.Put(files);
        }

        request.Output.Print(output, () => RunJson.Of(result, cost), RunWords.Verdict(result), () =>
        {
            RunText.Write(output, result, cost, read, Asked.Of(request.File, request.Read), files, request.Output.Details);
            if (request.Output.Details)
            {
                WriteDraws(output, source, number);
            }
        });
        return result.Status == RunStatus.Failed ? Complaint.OfRun(error, RunWords.Cause(result.Stop)) : ExitCode.Done;
    }

    private static void WriteDraws(TextWriter writer, FileMatchSource source, long number)
    {
        double[] values = source.Values(number);
        writer.WriteLine($"drawn for match {number}:");
        for (int i = 0; i < values.Length; i++)
        {
            writer.WriteLine(PlainText.Of(string.Create(CultureInfo.InvariantCulture, $"  {source.Quantities[i].Name} = {values[i]:G6}")));
        }
    }
}
