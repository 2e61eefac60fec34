using System.Collections.Concurrent;
using System.Diagnostics;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Sweep;
using PushSim.Cli.Chance;
using PushSim.Scenarios;
using PushSim.Scenarios.Drawing;
using PushSim.Simulation;

namespace PushSim.Cli;

/// <summary>One call of `sweep`: reads every point, runs them, reports.</summary>
internal sealed class SweepRun(SweepRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
{
    private const long MostPoints = 10_000;

    private const string CommandLine = "command line";

    public int Run()
    {
        IReadOnlyList<int[]> places = Places();
        if (places.Count > MostPoints)
        {
            error.WriteLine($"pushsim: error: {places.Count} points; at most {MostPoints} are run");
            return ExitCode.WrongCommandLine;
        }

        // all points are read before the first one runs: a mistake shows at once
        DrawableScenario[]? scenarios = Open(places, out int code, out string name, out ReadResult? first);
        if (scenarios is null)
        {
            return code;
        }

        bool isShove = scenarios[0].Middle.Opponent is not null;
        if (request.Odds > 0 && !isShove)
        {
            error.WriteLine("pushsim: error: --odds needs a scenario with an opponent");
            return ExitCode.WrongCommandLine;
        }

        string[] asked = [.. request.Asked.Count > 0 ? request.Asked.Distinct() : [AskedQuantity.Default(scenarios[0].Middle.Manoeuvre.Kind)]];
        IReadOnlyList<string> known = AskedQuantity.Names(Simulator.Run(scenarios[0].Middle, cancel));
        if (Array.Find(asked, a => !known.Contains(a)) is string unknown)
        {
            error.WriteLine($"pushsim: error: --ask: this run gives no \"{PlainText.Of(unknown)}\"");
            error.WriteLine("help: it gives " + string.Join(", ", known));
            return ExitCode.WrongCommandLine;
        }

        OutputFolder? folder = request.Json && request.Out is null ? null : OutputFolder.Open(request.Out ?? Path.Combine("pushsim-out", name + "-sweep"), request.Force);
        long start = Stopwatch.GetTimestamp();
        SweepPoint[] points = RunPoints(places, scenarios, asked);
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        SweepResult result = SweepResult.Of(request, asked, points, cancel.IsCancellationRequested, seconds);
        List<string> files = folder is null ? [] : SweepReport.WriteFiles(folder, request, result);
        if (folder is not null && request.Report)
        {
            files.Add(folder.Write(RunPage.FileName, SweepPage.Of(request, result, first!, name).Write));
        }

        if (request.Json)
        {
            output.WriteLine(SweepReport.Json(request, result));
        }
        else if (request.Quiet)
        {
            output.WriteLine(result.Verdict);
        }
        else
        {
            SweepReport.Write(output, request, result, files);
        }

        if (cancel.IsCancellationRequested)
        {
            error.WriteLine($"pushsim: interrupted after {points.Length} of {places.Count} points; what is shown is from these");
            return ExitCode.Interrupted;
        }

        if (Array.TrueForAll(points, p => p.Cause.Length > 0))
        {
            error.WriteLine("pushsim: error: every run failed; the first: " + PlainText.Of(points[0].Cause));
            return ExitCode.RunFailed;
        }

        return ExitCode.Done;
    }

    private List<int[]> Places()
    {
        List<int[]> places = [];
        for (int i = 0; i < request.Inputs[0].Texts.Count; i++)
        {
            if (request.Inputs.Count == 1)
            {
                places.Add([i]);
                continue;
            }

            for (int j = 0; j < request.Inputs[1].Texts.Count; j++)
            {
                places.Add([i, j]);
            }
        }

        return places;
    }

    private DrawableScenario[]? Open(IReadOnlyList<int[]> places, out int code, out string name, out ReadResult? first)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        DrawableScenario[] scenarios = new DrawableScenario[places.Count];
        code = ExitCode.Done;
        first = null;
        name = Path.GetFileNameWithoutExtension(request.File);
        for (int i = 0; i < places.Count; i++)
        {
            (string, string)[] set = [.. request.Inputs.Select((input, k) => (input.Key, input.Texts[places[i][k]]))];
            DrawableResult read = DrawableScenario.Open(request.File, set);
            ProblemWriter.Write(error, read.Read.Problems.Where(p => told.Add(p.ToString())));
            first ??= read.Read;
            if (read.Scenario is null)
            {
                bool isOurs = read.Read.Problems.All(p => p.Severity != Severity.Error || p.File == CommandLine);
                code = read.Read.CannotRead ? ExitCode.CannotReadOrWrite : isOurs ? ExitCode.WrongCommandLine : ExitCode.WrongInput;
                return null;
            }

            scenarios[i] = read.Scenario;
        }

        return scenarios;
    }

    private SweepPoint[] RunPoints(IReadOnlyList<int[]> places, DrawableScenario[] scenarios, string[] asked)
    {
        var progress = new ProgressLine(error, request.Odds > 0 ? "matches" : "points", places.Count * Math.Max(1, request.Odds), request.Quiet || request.Json);
        var done = new SweepPoint?[places.Count];
        if (request.Odds > 0)
        {
            // matches use the threads; points come one after the other, all on the same draws
            for (int i = 0; i < places.Count && !cancel.IsCancellationRequested; i++)
            {
                var source = new FileMatchSource(scenarios[i], request.Seed);
                IReadOnlyList<MatchEnd> outcomes = Campaign.Run(new BatchMatchRunner(scenarios[i].Middle), source, (0, request.Odds), [], 0.0, request.Threads, _ => progress.Step(), cancel);
                done[i] = cancel.IsCancellationRequested ? null : RunPoint(places[i], scenarios[i], asked) with { Odds = Tally.Of(outcomes) };
            }
        }
        else
        {
            var gate = new object();
            try
            {
                Parallel.For(0, places.Count, new ParallelOptions { MaxDegreeOfParallelism = request.Threads, CancellationToken = cancel }, i =>
                {
                    SweepPoint point = RunPoint(places[i], scenarios[i], asked);
                    lock (gate)
                    {
                        done[i] = point;
                        progress.Step();
                    }
                });
            }
            catch (OperationCanceledException)
            {
                // what is finished is reported
            }
        }

        progress.End();
        return [.. done.OfType<SweepPoint>()];
    }

    private SweepPoint RunPoint(int[] place, DrawableScenario scenario, string[] asked)
    {
        long start = Stopwatch.GetTimestamp();
        RunResult result = Simulator.Run(scenario.Middle, cancel);
        double?[] answers = AskedQuantity.Of(result, Stopwatch.GetElapsedTime(start).TotalMilliseconds, asked);
        return result.Status == RunStatus.Failed ? new SweepPoint(place, new double?[asked.Length], null, result.Cause) : new SweepPoint(place, answers, null, "");
    }
}
