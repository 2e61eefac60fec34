using PushSim.Words.Designs;
using PushSim.Words.Turns;

namespace PushSim.Cli.Run;

/// <summary>A run as text for a person.</summary>
internal static class RunText
{
    public static void Write(
        TextWriter output, RunResult result, double milliseconds, ReadResult read, string file, IReadOnlyList<string> files, TyreAnswers? tyres = null, TurnMap? map = null, IReadOnlyList<Design>? designs = null) => TextReport.Write(
        output,
        Verdict(result, designs),
        [
            .. Compared(designs), .. RunTables.Of(result), .. TurnTables.Of(result),
            .. map is null ? Array.Empty<AnswerTable>() : [new AnswerTable("Map").AddRemark(MapWords.Of(map.Map))], .. tyres is null ? [] : TyreText.Tables(tyres),
        ],
        Warnings(result, designs),
        [],
        [.. EstimateText.Lines(read, file), RunTables.Computation(result, milliseconds)],
        files,
        result.Scenario.Question);

    /// <summary>The verdict of the first design, and how the others differ.</summary>
    public static string Verdict(RunResult result, IReadOnlyList<Design>? designs) => $"{RunWords.Verdict(result)} {DesignWords.Verdict(designs ?? [])}".TrimEnd();

    /// <summary>The table of differences; none of one design alone.</summary>
    public static IEnumerable<AnswerTable> Compared(IReadOnlyList<Design>? designs) => designs is { Count: > 1 } ? [DesignWords.Table(designs)] : [];

    /// <summary>Warnings of the first design, then those of the others that it does not share.</summary>
    public static IReadOnlyList<string> Warnings(RunResult result, IReadOnlyList<Design>? designs)
    {
        IReadOnlyList<string> own = RunWords.Warnings(result);
        return [.. own, .. (designs ?? []).Skip(1).SelectMany(d => RunWords.Warnings(d.Run!).Except(own).Select(w => $"{d.Label}: {w}"))];
    }
}
