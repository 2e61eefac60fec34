using System.Diagnostics;
using System.Globalization;
using PushSim.Analysis;
using PushSim.Analysis.Chance;
using PushSim.Cli.Chance;
using PushSim.Plotting;
using PushSim.Scenarios;
using PushSim.Scenarios.Drawing;
using PushSim.Simulation;

namespace PushSim.Cli;

/// <summary>One call of `odds`: reads, runs or joins, reports.</summary>
internal sealed class OddsRun(OddsRequest request, TextWriter output, TextWriter error, CancellationToken cancel)
{
    private double _seconds;
    private long _ran;

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
            return MatchReplay.Show(own.Source, request, number, own.Read.Notes, output, error, cancel);
        }

        bool hasFiles = !request.Json || request.Out is not null;
        string path = request.Out ?? Path.Combine("pushsim-out", own.Source.Middle.Name + "-odds");
        OutputFolder? folder = !hasFiles ? null : request.Part is not null ? OutputFolder.Join(path, request.Force) : OutputFolder.Open(path, request.Force);
        Side[] sides = other is null ? [own] : [own, other];
        if (request.Merge)
        {
            if (Array.Exists(sides, s => !Merge(s, folder!)))
            {
                return ExitCode.RunFailed;
            }
        }
        else
        {
            RunSides(sides, folder);
        }

        if (request.Part is (int k, int n))
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"part {k} of {n}: {own.Outcomes.Count} matches {(cancel.IsCancellationRequested ? "so far, interrupted; the same command goes on" : "finished")}, in {Path.Combine(folder!.Path, FinishedMatches.NameOf(k, n, false))}"));
            return cancel.IsCancellationRequested ? ExitCode.Interrupted : ExitCode.Done;
        }

        return Report(own, other, folder);
    }

    private int Report(Side own, Side? other, OutputFolder? folder)
    {
        bool isInterrupted = cancel.IsCancellationRequested;
        OddsResult result = OddsResult.Of(own, other, request, isInterrupted, _seconds > 0.0 ? _ran / _seconds : 0.0);
        List<string> files = folder is null || own.Outcomes.Count == 0 ? [] : Write(folder, own, other, result);
        if (request.Json)
        {
            output.WriteLine(OddsReport.Json(result));
        }
        else if (request.Quiet)
        {
            output.WriteLine(result.Verdict);
        }
        else
        {
            OddsReport.Write(output, result, files);
        }

        if (isInterrupted)
        {
            string kept = folder is null ? "" : $"; they are kept in {folder.Path}, and the same command goes on from there";
            error.WriteLine($"pushsim: interrupted after {own.Outcomes.Count} of {request.Matches} matches{kept}");
            return ExitCode.Interrupted;
        }

        if (result.Tally.Matches == 0)
        {
            error.WriteLine("pushsim: error: every match failed; the first: " + PlainText.Of(own.Outcomes.FirstOrDefault().Cause ?? "none was run"));
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

        return new Side(new FileMatchSource(scenario, request.Seed), scenario.Values, Fingerprint.Of(read), read.Read, isAgainst);
    }

    private void RunSides(Side[] sides, OutputFolder? folder)
    {
        (int k, int n) = request.Part ?? (1, 1);
        (long From, long To) range = Campaign.Part(k, n, request.Matches);
        if (request.Part is null)
        {
            // the journal comes long before the first file of the result: without a mark a killed run's folder would be nobody's
            folder?.Claim([.. sides.Select(s => FinishedMatches.NameOf(k, n, s.IsAgainst) + FinishedMatches.Beside)]);
        }

        var progress = new ProgressLine(error, "matches", (range.To - range.From) * sides.Length, request.Quiet || request.Json);
        foreach (Side side in sides)
        {
            FinishedHead head = Head(side, k, n);
            string? path = folder is null ? null : Path.Combine(folder.Path, FinishedMatches.NameOf(k, n, side.IsAgainst));
            double before = 0.0;
            IReadOnlyList<MatchEnd>? kept = path is null ? null : FinishedMatches.Read(path, head, out before);
            if (path is not null && kept is null && File.Exists(path))
            {
                error.WriteLine($"pushsim: {Path.GetFileName(path)} is of other files, seed or count; starting anew");
            }
            else if (kept is { Count: > 0 })
            {
                error.WriteLine($"pushsim: going on after {kept.Count} finished matches");
            }

            using FinishedMatches? journal = path is null ? null : FinishedMatches.Begin(path, head, kept ?? [], before);
            long start = Stopwatch.GetTimestamp();
            long done = progress.Done;
            side.Outcomes = Campaign.Run(
                new BatchMatchRunner(side.Source.Middle), side.Source, range, kept ?? [], side.IsAgainst ? 0.0 : request.Within, request.Threads, o => Take(o, journal, progress), cancel);
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            journal?.AddSeconds(seconds);
            _seconds += seconds;
            _ran += progress.Done - done;
            if (side == sides[0] && request.Within > 0.0)
            {
                // the other scenario runs the matches that this one needed
                range = (range.From, side.Outcomes.Count);
            }
        }

        progress.End();
    }

    private static void Take(MatchEnd outcome, FinishedMatches? journal, ProgressLine progress)
    {
        journal?.Add(outcome);
        progress.Step();
    }

    private bool Merge(Side side, OutputFolder folder)
    {
        string pattern = side.IsAgainst ? "part-*-of-*-against.csv" : "part-*-of-*.csv";
        int[] counts = [.. Directory.EnumerateFiles(folder.Path, pattern).Select(f => CountIn(Path.GetFileNameWithoutExtension(f), side.IsAgainst)).Where(c => c > 0).Distinct()];
        if (counts.Length != 1)
        {
            error.WriteLine(counts.Length == 0 ? $"pushsim: error: no finished parts in {folder.Path}" : $"pushsim: error: parts of different splits in {folder.Path} ({string.Join(", ", counts)} parts); keep one split there");
            return false;
        }

        int n = counts[0];
        var all = new SortedDictionary<long, MatchEnd>();
        List<string> missing = [];
        for (int k = 1; k <= n; k++)
        {
            (long from, long to) = Campaign.Part(k, n, request.Matches);
            IReadOnlyList<MatchEnd> found = FinishedMatches.Read(Path.Combine(folder.Path, FinishedMatches.NameOf(k, n, side.IsAgainst)), Head(side, k, n), out double seconds) ?? [];
            _seconds += seconds;
            foreach (MatchEnd o in found.Where(o => o.Number >= from && o.Number < to))
            {
                all[o.Number] = o;
            }

            long have = found.Select(o => o.Number).Distinct().LongCount();
            if (have < to - from)
            {
                missing.Add(string.Create(CultureInfo.InvariantCulture, $"{k}/{n} ({have} of {to - from})"));
            }
        }

        if (missing.Count > 0)
        {
            error.WriteLine("pushsim: error: these parts are not finished, or are of other files, seed or count: " + string.Join(", ", missing));
            error.WriteLine("help: run each with --part and the same --matches and --seed; a part that was begun goes on where it stopped");
            return false;
        }

        side.Outcomes = [.. all.Values];
        _ran += all.Count;
        return true;
    }

    // part-3-of-16 or part-3-of-16-against
    private static int CountIn(string name, bool isAgainst)
    {
        string[] words = name.Split('-');
        return words.Length == (isAgainst ? 5 : 4) && int.TryParse(words[3], NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 0;
    }

    private FinishedHead Head(Side side, int k, int n) => new(side.Fingerprint, request.Seed, request.Matches, k, n);

    private List<string> Write(OutputFolder folder, Side own, Side? other, OddsResult result)
    {
        Side[] sides = other is null ? [own] : [own, other];
        List<string> files = [];
        foreach (Side side in sides)
        {
            files.Add(folder.Write(side.IsAgainst ? "matches-against.csv" : "matches.csv", stream => WriteMatches(stream, side)));
        }

        if (!request.NoPlots && result.Tally.Matches > 0)
        {
            PlotSheet picture = OddsPlot.Of(own.Source.Robot, own.Source.Opponent, own.Outcomes, result.Inputs);
            files.AddRange(folder.WritePicture("plot", picture));
        }

        if (request.Report)
        {
            files.Add(folder.Write(RunPage.FileName, OddsPage.Of(request, result, own, other, cancel).Write));
        }

        // what was there to go on from has done its work
        if (!cancel.IsCancellationRequested && !request.Merge)
        {
            Array.ForEach(sides, s => File.Delete(Path.Combine(folder.Path, FinishedMatches.NameOf(1, 1, s.IsAgainst))));
        }

        return files;
    }

    private void WriteMatches(Stream stream, Side side)
    {
        using var writer = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        FinishedMatches.WriteHead(writer, Head(side, 1, 1));
        foreach (MatchEnd outcome in side.Outcomes)
        {
            writer.WriteLine(FinishedMatches.Line(outcome));
        }
    }

    /// <summary>One of the scenarios that are run.</summary>
    internal sealed record Side(FileMatchSource Source, IReadOnlyList<TolerancedValue> Values, string Fingerprint, ReadResult Read, bool IsAgainst)
    {
        public IReadOnlyList<MatchEnd> Outcomes { get; set; } = [];

        /// <summary>Number of the match with the middle one of all grounds gained; null if none was finished.</summary>
        public long? Middling()
        {
            MatchEnd[] good = [.. Outcomes.Where(o => !o.HasFailed).OrderBy(o => o.GroundGained)];
            return good.Length > 0 ? good[good.Length / 2].Number : null;
        }
    }
}
