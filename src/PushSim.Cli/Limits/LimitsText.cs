using PushSim.Words.Designs;
using PushSim.Words.Limits;

namespace PushSim.Cli.Limits;

/// <summary>Limits of one design or several as text for a person: all of the first, and how the others differ.</summary>
internal static class LimitsText
{
    public static string Verdict(IReadOnlyList<Design> designs) => $"{LimitVerdict.Of(designs[0].Report!)} {DesignWords.Verdict(designs)}".TrimEnd();

    /// <summary>The card of the first design, with how the others differ.</summary>
    public static AnswerCard Card(IReadOnlyList<Design> designs)
    {
        AnswerCard card = LimitCard.Of(designs[0].Report!);
        return card with { Facts = $"{DesignWords.Short(designs)} {card.Facts}".Trim() };
    }

    public static IReadOnlyList<AnswerTable> Tables(IReadOnlyList<Design> designs, RunResult? run) =>
        [.. designs.Count > 1 ? [DesignWords.Table(designs)] : Array.Empty<AnswerTable>(), .. LimitTables.Of(designs[0].Report!, run)];

    public static IReadOnlyList<string> Warnings(IReadOnlyList<Design> designs)
    {
        IReadOnlyList<string> own = LimitWarnings.Of(designs[0].Report!);
        return [.. own, .. designs.Skip(1).SelectMany(d => LimitWarnings.Of(d.Report!).Except(own).Select(w => $"{d.Label}: {w}"))];
    }
}
