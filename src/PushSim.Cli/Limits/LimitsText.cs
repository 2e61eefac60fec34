using PushSim.Words.Designs;
using PushSim.Words.Limits;

namespace PushSim.Cli.Limits;

/// <summary>Limits of one design or several as text for a person: all of the first, and how the others differ.</summary>
internal static class LimitsText
{
    public static string Verdict(IReadOnlyList<ComparedDesign> designs) => $"{LimitVerdict.Of(designs[0].Limits!)} {DesignWords.Verdict(designs)}".TrimEnd();

    /// <summary>The card of the first design, with how the others differ.</summary>
    public static AnswerCard Card(IReadOnlyList<ComparedDesign> designs)
    {
        AnswerCard card = LimitCard.Of(designs[0].Limits!);
        return card with { Facts = $"{DesignWords.Short(designs)} {card.Facts}".Trim() };
    }

    public static IReadOnlyList<AnswerTable> Tables(IReadOnlyList<ComparedDesign> designs, RunResult? run) =>
        [.. designs.Count > 1 ? [DesignWords.Table(designs)] : Array.Empty<AnswerTable>(), .. LimitTables.Of(designs[0].Limits!, run)];

    public static IReadOnlyList<string> Warnings(IReadOnlyList<ComparedDesign> designs)
    {
        IReadOnlyList<string> own = LimitWarnings.Of(designs[0].Limits!);
        return [.. own, .. designs.Skip(1).SelectMany(d => LimitWarnings.Of(d.Limits!).Except(own).Select(w => $"{d.Label}: {w}"))];
    }
}
