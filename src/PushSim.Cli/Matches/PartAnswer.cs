namespace PushSim.Cli.Matches;

/// <summary>The parts of a campaign in words and as JSON.</summary>
internal static class PartAnswer
{
    /// <summary>Tells of each part whether it is whole.</summary>
    public static int Check(MergeState state, MatchPlan plan, OutputFolder folder, OutputRequest request, TextWriter output)
    {
        string verdict = state.Splits.Count != 1 ? Splits(state, folder.Path)
            : state.IsWhole ? Text($"All {state.Splits[0]} parts are whole: {state.Parts.Sum(p => p.Finished)} matches.")
            : Text($"{state.Unfinished.Count()} of {state.Splits[0]} parts are not whole: {state.Parts.Sum(p => p.Finished)} of {state.Parts.Sum(p => p.All)} matches are there.");
        request.Print(output, () => Json(state, plan, verdict), verdict, () =>
        {
            output.WriteLine(PlainText.Of(verdict));
            foreach (PartState part in state.Parts)
            {
                output.WriteLine("  " + PlainText.Of(Line(part)));
            }
        });
        return state.IsWhole ? ExitCode.Done : ExitCode.RunFailed;
    }

    /// <summary>What is wrong with the parts' names.</summary>
    public static string Splits(MergeState state, string folder) =>
        state.Splits.Count == 0 ? $"no finished parts in {folder}" : $"parts of different splits in {folder} ({string.Join(", ", state.Splits)} parts); keep one split there";

    /// <summary>How a part is, in a line.</summary>
    public static string Line(PartState p) => Text($"{p.Part}/{p.Parts} ({p.Finished} of {p.All}) {Word(p.Condition)}{(Reason(p) is { Length: > 0 } reason ? ": " + reason : "")}");

    private static string Reason(PartState p) => p.Problem is JournalProblem problem ? JournalWords.Of(problem) : JournalWords.Of(p.Misfit);

    private static string Word(PartCondition condition) => condition switch
    {
        PartCondition.Foreign => "of something else",
        _ => condition.ToString().ToLowerInvariant(),
    };

    private static string Json(MergeState state, MatchPlan plan, string verdict) => CommandJson.Write(w =>
    {
        CommandJson.WriteHead(w, plan.Command, verdict, []);
        w.WriteBoolean("whole", state.IsWhole);
        CommandJson.WriteRows(w, "parts", state.Parts, p =>
        {
            w.WriteNumber("part", p.Part);
            w.WriteNumber("parts", p.Parts);
            w.WriteString("state", p.Condition.ToString().ToLowerInvariant());
            w.WriteNumber("finished_matches", p.Finished);
            w.WriteNumber("matches", p.All);
            w.WriteString("reason", Reason(p));
        });
    });

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
