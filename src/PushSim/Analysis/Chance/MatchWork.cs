using System.Diagnostics;
using System.Globalization;
using PushSim.Analysis.Chance;
using PushSim.Cli.Shared;

namespace PushSim.Cli.Matches;

/// <summary>
/// The drawn matches of a command, of one contest or of several: run, kept on the disk as they end, gone on with, split into parts and joined. A part holds its
/// share of every contest's matches, so that each part takes about as long as any other.
/// </summary>
internal sealed class MatchWork(MatchPlan plan, string fingerprint, IReadOnlyList<FileMatchSource> contests, TextWriter error, CancellationToken cancel)
{
    private readonly List<MatchEnd>[] _outcomes = [.. contests.Select(_ => new List<MatchEnd>())];
    private double _seconds;
    private long _timed;

    /// <summary>Matches that are there [1].</summary>
    public long Finished => _outcomes.Sum(o => (long)o.Count);

    /// <summary>Matches in a second of one process; 0 if none was timed.</summary>
    public double Rate => _seconds > 0.0 ? _timed / _seconds : 0.0;

    private (int K, int N) Part => plan.Part ?? (1, 1);

    private (long From, long To) Range => Campaign.Part(Part.K, Part.N, plan.Matches);

    /// <summary>Finished matches of a contest, by number.</summary>
    public IReadOnlyList<MatchEnd> Of(int contest) => _outcomes[contest];

    /// <summary>Runs what is missing or, if that was asked, joins the finished parts.</summary>
    /// <param name="folder">Where finished matches are kept; null keeps none.</param>
    /// <param name="isQuiet">No progress.</param>
    /// <param name="within">Half-width of the first contest's win share at which it stops, the others after as many; 0 runs all [1].</param>
    /// <param name="rounds">Rounds over all contests, so that an interrupt leaves some matches of each [1].</param>
    /// <param name="words">Why all contests together have so many matches, told with their count; empty if that is plain.</param>
    /// <returns>False, with the cause told, if parts cannot be joined.</returns>
    public bool Run(OutputFolder? folder, bool isQuiet, double within = 0.0, int rounds = 1, string words = "")
    {
        if (plan.Merge)
        {
            return Merge(folder!);
        }

        (long from, long to) = Range;
        using FinishedMatches? journal = folder is null ? null : Begin(folder);
        long all = (to - from) * contests.Count;
        var progress = new ProgressLine(error, "matches", all - Finished, isQuiet) { Head = words.Length == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{all} matches in all: {words}") };
        IMatchRunner[] runners = [.. contests.Select(c => new BatchMatchRunner(c.Middle))];
        long start = Stopwatch.GetTimestamp();
        for (int round = 1; round <= rounds; round++)
        {
            long end = from + Campaign.Part(round, rounds, to - from).To;
            for (int c = 0; c < contests.Count && !cancel.IsCancellationRequested; c++)
            {
                IReadOnlyList<MatchEnd> done = Campaign.Run(runners[c], contests[c], (from, end), _outcomes[c], c == 0 ? within : 0.0, plan.Threads, o => Take(c, o, journal, progress), cancel);
                end = c == 0 && within > 0.0 ? from + done.Count : end;
                _outcomes[c] = [.. done, .. _outcomes[c].Where(o => o.Number >= end && within <= 0.0)];
            }
        }

        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        journal?.AddSeconds(seconds);
        _seconds += seconds;
        _timed += progress.Done;
        progress.End();
        return true;
    }

    /// <summary>Says how far the part came.</summary>
    /// <returns>The exit code.</returns>
    public int EndPart(TextWriter output, OutputFolder folder)
    {
        (int k, int n) = Part;
        string state = cancel.IsCancellationRequested ? "so far, interrupted; the same command goes on" : "finished";
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"part {k} of {n}: {Finished} matches {state}, in {Path.Combine(folder.Path, FinishedMatches.NameOf(k, n))}"));
        return cancel.IsCancellationRequested ? ExitCode.Interrupted : ExitCode.Done;
    }

    /// <summary>Says how far an interrupted command came, and what is kept.</summary>
    /// <returns>The exit code.</returns>
    public int EndInterrupted(OutputFolder? folder)
    {
        string kept = folder is null ? "" : $"; they are kept in {folder.Path}, and the same command goes on from there";
        error.WriteLine($"pushsim: interrupted after {Finished} of {plan.Matches * contests.Count} matches{kept}");
        return ExitCode.Interrupted;
    }

    /// <summary>Removes what there was to go on from, once the result is written; parts of a split stay.</summary>
    public void Forget(OutputFolder folder)
    {
        if (!cancel.IsCancellationRequested && plan is { Merge: false, Part: null })
        {
            File.Delete(Path.Combine(folder.Path, FinishedMatches.NameOf(1, 1)));
        }
    }

    private bool Merge(OutputFolder folder)
    {
        int[] counts = [.. Directory.EnumerateFiles(folder.Path, "part-*-of-*.csv").Select(FinishedMatches.PartsOf).Where(c => c > 0).Distinct()];
        if (counts.Length != 1)
        {
            error.WriteLine(counts.Length == 0 ? $"pushsim: error: no finished parts in {folder.Path}" : $"pushsim: error: parts of different splits in {folder.Path} ({string.Join(", ", counts)} parts); keep one split there");
            return false;
        }

        int n = counts[0];
        List<string> missing = [];
        for (int k = 1; k <= n; k++)
        {
            (long from, long to) = Campaign.Part(k, n, plan.Matches);
            IReadOnlyList<(int Contest, MatchEnd End)> found = FinishedMatches.Read(Path.Combine(folder.Path, FinishedMatches.NameOf(k, n)), Head(k, n), out double seconds) ?? [];
            _seconds += seconds;
            long before = Finished;
            Keep(found, from, to);
            long have = Finished - before;
            long whole = (to - from) * contests.Count;
            if (have < whole)
            {
                missing.Add(string.Create(CultureInfo.InvariantCulture, $"{k}/{n} ({have} of {whole})"));
            }
        }

        _timed = Finished;
        if (missing.Count == 0)
        {
            return true;
        }

        error.WriteLine("pushsim: error: these parts are not finished, or are of other files, options, seed or count, or of another version: " + string.Join(", ", missing));
        error.WriteLine("advice: run each with --part and otherwise the same command; a part that was begun goes on where it stopped");
        return false;
    }

    private FinishedMatches Begin(OutputFolder folder)
    {
        FinishedHead head = Head(Part.K, Part.N);
        string name = FinishedMatches.NameOf(Part.K, Part.N);
        string path = Path.Combine(folder.Path, name);
        if (plan.Part is null)
        {
            // the journal comes long before the first file of the result: without a mark a killed run's folder would be nobody's
            folder.Claim(name + FinishedMatches.Beside);
        }

        IReadOnlyList<(int Contest, MatchEnd End)>? kept = FinishedMatches.Read(path, head, out double before);
        if (kept is null && File.Exists(path))
        {
            error.WriteLine($"pushsim: {name} is of other files, options, seed or count, or of another version; starting anew");
        }

        Keep(kept ?? [], Range.From, Range.To);
        if (Finished > 0)
        {
            error.WriteLine($"pushsim: going on after {Finished} finished matches");
        }

        return FinishedMatches.Begin(path, head, _outcomes, before);
    }

    private void Keep(IReadOnlyList<(int Contest, MatchEnd End)> found, long from, long to)
    {
        foreach (IGrouping<int, (int Contest, MatchEnd End)> rows in found.Where(r => r.Contest < contests.Count && r.End.Number >= from && r.End.Number < to).GroupBy(r => r.Contest))
        {
            _outcomes[rows.Key].AddRange(rows.Select(r => r.End).DistinctBy(o => o.Number).OrderBy(o => o.Number));
        }
    }

    private FinishedHead Head(int k, int n) => new(plan.Command, fingerprint, plan.Seed, plan.Matches, k, n);

    private static void Take(int contest, MatchEnd outcome, FinishedMatches? journal, ProgressLine progress)
    {
        journal?.Add(contest, outcome);
        progress.Step();
    }
}
