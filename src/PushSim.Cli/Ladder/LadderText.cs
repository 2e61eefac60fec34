namespace PushSim.Cli.Ladder;

/// <summary>A ladder as text for a person.</summary>
internal static class LadderText
{
    public static void Write(TextWriter output, LadderResult r, IReadOnlyList<string> files) => TextReport.Write(output, r.Verdict, Tables(r), r.Warnings, [], [Computation(r, r.MatchesPerSecond)], files);

    /// <summary>The tables, for screen and page.</summary>
    public static IReadOnlyList<AnswerTable> Tables(LadderResult r) => LadderTables.Of(r.Robots, r.Table, r.Setting);

    public static string Computation(LadderResult r, double? rate = null) => LadderWords.Computation(r.Matches, r.Seed, rate);
}
