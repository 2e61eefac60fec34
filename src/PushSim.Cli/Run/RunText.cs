using PushSim.Words.Turns;

namespace PushSim.Cli.Run;

/// <summary>A run as text for a person.</summary>
internal static class RunText
{
    public static void Write(TextWriter output, RunResult result, double milliseconds, ReadResult read, string file, IReadOnlyList<string> files, TyreAnswers? tyres = null, TurnMap? map = null) => TextReport.Write(
        output,
        RunWords.Verdict(result),
        [
            .. RunTables.Of(result), .. TurnTables.Of(result),
            .. map is null ? Array.Empty<AnswerTable>() : [new AnswerTable("Map").AddRemark(MapWords.Of(map.Map))], .. tyres is null ? [] : TyreText.Tables(tyres),
        ],
        RunWords.Warnings(result),
        [],
        [.. EstimateText.Lines(read, file), RunTables.Computation(result, milliseconds)],
        files,
        result.Scenario.Question);
}
