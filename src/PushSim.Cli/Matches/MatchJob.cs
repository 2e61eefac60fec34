namespace PushSim.Cli.Matches;

/// <summary>The drawn matches of a command on their way: progress, what is kept in the folder, and what is said about it.</summary>
internal sealed class MatchJob(MatchPlan plan, KeptMatches work, OutputFolder? folder, TextWriter error, CancellationToken cancel)
{
    /// <summary>Opens the command's folder: a part shares it with other processes, and a check only looks into it.</summary>
    /// <remarks>The engine's hash takes longest of all that a part does before it shares the folder, so it is made before.</remarks>
    public static OutputFolder? Open(OutputRequest request, OutputAsk ask, MatchPlan plan) =>
        request.Open(plan.Part is (int k, int n) && EngineSelfTest.Hash(Precision.Single).Length > 0 ? ask with { Piece = FolderStore.PieceOf(JournalHead.NameOf(new PartNumbers(k, n))) } : ask with { IsSeen = plan.Check });

    /// <summary>Keeps matches in the folder; null without one.</summary>
    public static IMatchStore? Store(OutputFolder? folder, MatchPlan plan) => folder is null ? null : new FolderStore(folder, isShared: plan.Part is not null);

    /// <summary>Runs what is missing or, if that was asked, joins the finished parts.</summary>
    /// <param name="output">Takes what a check tells.</param>
    /// <param name="request">How much is shown, and whether as JSON.</param>
    /// <param name="within">Half-width of the first contest's win share at which it stops, the others after as many; 0 runs all [1].</param>
    /// <param name="rounds">Rounds over all contests, so that an interrupt leaves some matches of each [1].</param>
    /// <param name="words">Why all contests together have so many matches, told with their count; empty if that is plain.</param>
    /// <returns>An exit code if the command ends with it; null if it goes on.</returns>
    public int? Run(TextWriter output, OutputRequest request, double within = 0.0, int rounds = 1, string words = "")
    {
        if (plan.Merge)
        {
            return plan.Check ? PartAnswer.Check(work.Merge(), plan, folder!, request, output) : Merge();
        }

        Tell(work.Resume());
        if (work.Finished > 0)
        {
            error.WriteLine($"pushsim: going on after {work.Finished} finished matches");
        }

        var progress = new ProgressLine(error, "matches", work.All - work.Finished, request.HasNoProgress) { Head = words.Length == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{work.All} matches in all: {words}") };
        work.Run(within, rounds, progress.Step, () => progress.Seconds, cancel);
        progress.End();
        return null;
    }

    /// <summary>Says how far the part came.</summary>
    public int EndPart(TextWriter output)
    {
        string state = cancel.IsCancellationRequested ? "so far, interrupted; the same command goes on" : "finished";
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"part {work.Part.Part} of {work.Part.Parts}: {work.Finished} matches {state}, in {Path.Combine(folder!.Path, work.Name)}"));
        return cancel.IsCancellationRequested ? ExitCode.Interrupted : ExitCode.Done;
    }

    /// <summary>Says how far an interrupted command came, and what is kept.</summary>
    public int EndInterrupted()
    {
        string kept = folder is null ? "" : $"; they are kept in {folder.Path}, and the same command goes on from there";
        error.WriteLine($"pushsim: interrupted after {work.Finished} of {work.All} matches{kept}");
        return ExitCode.Interrupted;
    }

    private void Tell(ResumeState state)
    {
        if (state.Misfit != JournalMisfit.None)
        {
            error.WriteLine($"pushsim: {work.Name} does not fit: {JournalWords.Of(state.Misfit)}; it is kept as {state.Aside}, and this starts anew");
        }

        foreach (JournalProblem problem in state.Problems)
        {
            error.WriteLine($"pushsim: warning: {PlainText.Of(JournalWords.Of(problem))}");
        }

        if (state.Refused > 0)
        {
            string lines = state.Refused == 1 ? "1 line is" : string.Create(CultureInfo.InvariantCulture, $"{state.Refused} lines are");
            error.WriteLine($"pushsim: {lines} refused, and what is missing is played again; the journal as it was is kept as {state.Aside}");
        }
    }

    private int? Merge()
    {
        MergeState state = work.Merge();
        if (state.Splits.Count != 1)
        {
            error.WriteLine("pushsim: error: " + PartAnswer.Splits(state, folder!.Path));
        }
        else if (!state.IsWhole)
        {
            error.WriteLine("pushsim: error: these parts are not finished, or are of something else:");
            foreach (PartState part in state.Unfinished)
            {
                error.WriteLine("  " + PlainText.Of(PartAnswer.Line(part)));
            }

            error.WriteLine("advice: run each with --part and otherwise the same command; a part that was begun goes on where it stopped, and what is damaged is played again");
        }

        return state.IsWhole ? null : ExitCode.RunFailed;
    }
}
