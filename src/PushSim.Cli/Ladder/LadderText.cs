namespace PushSim.Cli.Ladder;

/// <summary>A ladder as text for a person.</summary>
internal static class LadderText
{
    public static void Write(TextWriter output, LadderResult r, IReadOnlyList<string> files, bool isDetailed) => new CommandAnswer(Card(r), r.Verdict)
    {
        Tables = Tables(r), Warnings = r.Warnings, Asides = [Computation(r, r.MatchesPerSecond)], Files = files,
    }.Write(output, isDetailed);

    public static AnswerCard Card(LadderResult r) => LadderCard.Of(r.Robots, r.Table, r.Setting, r.Matches);

    /// <summary>The tables, for screen and page.</summary>
    public static IReadOnlyList<AnswerTable> Tables(LadderResult r) => LadderTables.Of(r.Robots, r.Table, r.Setting);

    public static string Computation(LadderResult r, double? rate = null) => LadderWords.Computation(r.Matches, r.Seed, rate);
}
