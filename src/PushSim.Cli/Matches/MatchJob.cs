namespace PushSim.Cli.Matches;

/// <summary>The drawn matches of a command on their way: progress, what is kept in the folder, and what is said about it.</summary>
internal sealed class MatchJob(MatchPlan plan, MatchWork work, OutputFolder? folder, TextWriter error, CancellationToken cancel)
{
    /// <summary>Opens the command's folder: a part shares it with other processes.</summary>
    public static OutputFolder? Open(OutputRequest request, OutputAsk ask, MatchPlan plan) =>
        request.Open(plan.Part is (int k, int n) ? ask with { Piece = string.Create(CultureInfo.InvariantCulture, $"part-{k}-of-{n}") } : ask);

    /// <summary>Keeps matches in the folder; null without one.</summary>
    public static IMatchStore? Store(OutputFolder? folder, MatchPlan plan) => folder is null ? null : new FolderStore(folder, isShared: plan.Part is not null);

    /// <summary>Runs what is missing or, if that was asked, joins the finished parts.</summary>
    /// <param name="isQuiet">No progress.</param>
    /// <param name="within">Half-width of the first contest's win share at which it stops, the others after as many; 0 runs all [1].</param>
    /// <param name="rounds">Rounds over all contests, so that an interrupt leaves some matches of each [1].</param>
    /// <param name="words">Why all contests together have so many matches, told with their count; empty if that is plain.</param>
    /// <returns>False, with the cause told, if parts cannot be joined.</returns>
    public bool Run(bool isQuiet, double within = 0.0, int rounds = 1, string words = "")
    {
        if (plan.Merge)
        {
            return Merge();
        }

        if (!work.Resume())
        {
            error.WriteLine($"pushsim: {work.Kept.Name} is of other files, options, seed or count, or of another version; starting anew");
        }

        if (work.Finished > 0)
        {
            error.WriteLine($"pushsim: going on after {work.Finished} finished matches");
        }

        var progress = new ProgressLine(error, "matches", work.All - work.Finished, isQuiet) { Head = words.Length == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{work.All} matches in all: {words}") };
        work.Run(within, rounds, progress.Step, () => progress.Seconds, cancel);
        progress.End();
        return true;
    }

    /// <summary>Says how far the part came.</summary>
    public int EndPart(TextWriter output)
    {
        FinishedHead kept = work.Kept;
        string state = cancel.IsCancellationRequested ? "so far, interrupted; the same command goes on" : "finished";
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"part {kept.Part} of {kept.Parts}: {work.Finished} matches {state}, in {Path.Combine(folder!.Path, kept.Name)}"));
        return cancel.IsCancellationRequested ? ExitCode.Interrupted : ExitCode.Done;
    }

    /// <summary>Says how far an interrupted command came, and what is kept.</summary>
    public int EndInterrupted()
    {
        string kept = folder is null ? "" : $"; they are kept in {folder.Path}, and the same command goes on from there";
        error.WriteLine($"pushsim: interrupted after {work.Finished} of {work.All} matches{kept}");
        return ExitCode.Interrupted;
    }

    /// <summary>Removes what there was to go on from, once the result is written.</summary>
    public void Forget()
    {
        if (!cancel.IsCancellationRequested)
        {
            work.Forget();
        }
    }

    private bool Merge()
    {
        MergeState state = work.Merge();
        if (state.Splits.Count != 1)
        {
            error.WriteLine(state.Splits.Count == 0 ? $"pushsim: error: no finished parts in {folder!.Path}" : $"pushsim: error: parts of different splits in {folder!.Path} ({string.Join(", ", state.Splits)} parts); keep one split there");
        }
        else if (!state.IsWhole)
        {
            error.WriteLine("pushsim: error: these parts are not finished, or are of other files, options, seed or count, or of another version: "
                + string.Join(", ", state.Unfinished.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Part}/{p.Parts} ({p.Finished} of {p.All})"))));
            error.WriteLine("advice: run each with --part and otherwise the same command; a part that was begun goes on where it stopped");
        }

        return state.IsWhole;
    }
}
