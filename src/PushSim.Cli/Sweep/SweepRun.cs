using System.Diagnostics;
using PushSim.Analysis.Sweep;
using PushSim.Analysis.Turning;
using PushSim.Cli.Matches;
using PushSim.Scenarios.Drawing;
using PushSim.Words.Answers;

namespace PushSim.Cli.Sweep;

/// <summary>One call of `sweep`: reads every point, runs them, reports.</summary>
internal sealed class SweepRun(SweepRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
{
    private const string SweepFileName = "sweep.csv";
    private const long MostPoints = 10_000;

    private readonly long _start = Stopwatch.GetTimestamp();

    public int Run()
    {
        IReadOnlyList<int[]> places = SweepRuns.Places(request.Inputs);
        if (places.Count > MostPoints)
        {
            error.WriteLine($"pushsim: error: {places.Count} points; at most {MostPoints} are run");
            return ExitCode.WrongCommandLine;
        }

        // all points are read before the first one runs: a mistake shows at once
        DrawableResult[]? points = Open(places, out int code);
        if (points is null)
        {
            return code;
        }

        ScenarioSettings middle = points[0].Scenario!.Middle;
        if (request.Odds > 0 && middle.Opponent is null)
        {
            error.WriteLine("pushsim: error: --odds needs a scenario with an opponent");
            return ExitCode.WrongCommandLine;
        }

        IReadOnlyList<Answer> known = AnswerCatalogue.Askable(middle);
        string[] keys = [.. request.Asked.Count > 0 ? request.Asked.Distinct() : AnswerCatalogue.Defaults(middle.Manoeuvre.Kind).TakeLast(request.Odds > 0 ? 1 : int.MaxValue).Select(a => a.Key)];
        if (Array.Find(keys, k => known.All(a => a.Key != k)) is string unknown)
        {
            error.WriteLine($"pushsim: error: --ask: this run gives no \"{PlainText.Of(unknown)}\"");
            error.WriteLine("advice: " + NearestWord.Advice(unknown, known.Select(a => a.Key)) + "it gives " + string.Join(", ", known.Select(a => a.Key)));
            return ExitCode.WrongCommandLine;
        }

        Answer[] asked = [.. keys.Select(k => known.First(a => a.Key == k))];
        string name = Path.GetFileNameWithoutExtension(request.File);
        using OutputFolder? folder = MatchJob.Open(request.Output, new OutputAsk("sweep", name + "-sweep", [request.File], error, cancel), request.Plan);
        if (request.Odds == 0)
        {
            return Report(places.Count, [.. RunPoints(places, points, asked, isQuiet: request.Output.HasNoProgress).OfType<SweepPoint>()], null, asked, folder, points[0].Read, "");
        }

        // all points on the same draws
        var contest = new ContestKey(request.Plan.Seed, request.Contest ?? points[0].Scenario!.Label);
        FileMatchSource[] sources = [.. points.Select(p => new FileMatchSource(p.Scenario!, contest))];
        var work = new MatchWork(request.Plan, () => [.. points.Zip(sources, Fingerprint.Of)], sources, KeptMatchWords.Instance, MatchJob.Store(folder, request.Plan));
        var job = new MatchJob(request.Plan, work, folder, error, cancel);
        // the runs without draws first: they are quick, and an interrupt of the matches then finds them done
        SweepPoint?[] done = request.Plan.Part is not null || request.Plan.Check ? [] : RunPoints(places, points, asked, isQuiet: true);
        if (job.Run(output, request.Output) is int end)
        {
            return end;
        }

        if (request.Plan.Part is not null)
        {
            return job.EndPart(output);
        }

        int[] finished = [.. Enumerable.Range(0, done.Length).Where(i => done[i] is not null && work.TallyOf(i).All == request.Odds)];
        SweepPoint[] whole = [.. finished.Select(i => done[i]! with { Odds = work.TallyOf(i) })];
        return Report(places.Count, whole, job, asked, folder, points[0].Read, UsualTolerances.Of(points[0].Scenario!.Values), (a, b) => Comparison.Of(work.Of(finished[a]), work.Of(finished[b])));
    }

    private int Report(int asked, SweepPoint[] points, MatchJob? job, Answer[] quantities, OutputFolder? folder, ReadResult read, string usual, Func<int, int, Comparison>? paired = null)
    {
        SweepResult result = SweepResult.Of(request, quantities, points, read.Scenario!, cancel.IsCancellationRequested, Stopwatch.GetElapsedTime(_start).TotalSeconds, paired) with { Usual = usual };
        List<string> files = folder is null ? [] : folder.Put(WriteFiles(folder, result, read), !cancel.IsCancellationRequested);
        request.Output.Print(output, () => SweepJson.Of(request, result), result.Verdict, () => SweepText.Write(output, request, result, files));
        if (cancel.IsCancellationRequested)
        {
            error.WriteLine($"pushsim: interrupted after {points.Length} of {asked} points; what is shown is from these");
            return job?.EndInterrupted() ?? ExitCode.Interrupted;
        }

        if (Array.TrueForAll(points, p => p.Failed is not null))
        {
            return Complaint.OfRun(error, "every run failed; the first: " + RunWords.Cause(points[0].Failed));
        }

        return ExitCode.Done;
    }

    private List<string> WriteFiles(OutputFolder folder, SweepResult result, ReadResult read)
    {
        List<string> files = [folder.Write(SweepFileName, stream => SweepCsv.Write(stream, request, result))];
        if (!request.Output.NoPlots && result.Table.Points.Count > 1)
        {
            files.AddRange(folder.WritePicture("plot", SweepPicture.Of(request, result)));
        }

        if (request.Output.Report)
        {
            files.Add(folder.Write(PageReport.FileName, SweepPage.Of(request, result, read, Path.GetFileNameWithoutExtension(request.File)).Write));
        }

        return files;
    }

    private DrawableResult[]? Open(IReadOnlyList<int[]> places, out int code)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        DrawableResult[] points = new DrawableResult[places.Count];
        code = ExitCode.Done;
        for (int i = 0; i < places.Count; i++)
        {
            points[i] = SweepFile.At(request.File, request.Inputs, places[i], request.Read);
            ReadResult read = points[i].Read;
            ProblemWriter.Write(error, read.Problems.Where(p => told.Add(p.ToString())));
            if (points[i].Scenario is null)
            {
                if (request.Inputs.Any(input => input.Numbers is null && input.Texts.Count > 1) && read.Problems.Any(p => p.Severity == Severity.Error && p.File == ReadOptions.CommandLine))
                {
                    error.WriteLine("advice: commas part the values of --vary; a name that holds a comma stands in quotes: KEY=[\"A, B\", C]");
                }

                code = ProblemWriter.Code(read.Problems, read.CannotRead) ?? ExitCode.WrongInput;
                return null;
            }
        }

        return points;
    }

    private SweepPoint?[] RunPoints(IReadOnlyList<int[]> places, DrawableResult[] points, Answer[] asked, bool isQuiet)
    {
        var progress = new ProgressLine(error, "points", places.Count, isQuiet);
        SweepPoint?[] done = SweepRuns.Run(
            places, i => points[i].Scenario!.Middle, Found, request.Plan.Threads, progress.Step, cancel);
        progress.End();
        return done;

        // chatter as `run` tells it
        double?[] Found(RunResult run)
        {
            RunResult told = asked.Any(a => a.Key == AnswerCatalogue.ChatterKey) ? ChatterReview.WithoutCure(run, cancel) : run;
            return [.. asked.Select(a => a.Of(told))];
        }
    }
}
