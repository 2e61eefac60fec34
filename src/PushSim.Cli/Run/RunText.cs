using PushSim.Words.Designs;
using PushSim.Words.Turns;
using PushSim.Words.Wear;

namespace PushSim.Cli.Run;

/// <summary>A run as text for a person.</summary>
internal static class RunText
{
    /// <summary>All of a run that nothing looked at closer.</summary>
    public static void Write(TextWriter output, RunResult result, RunCost cost, ReadResult read, AskedFiles asked, IReadOnlyList<string> files, bool isDetailed)
    {
        CardText? card = WriteHead(output, result, isDetailed);
        WriteRest(output, card, result, cost, read, asked, files);
    }

    /// <summary>Question and answer of the run itself, before anything looks closer; the card they begin, null where all tables are wanted.</summary>
    public static CardText? WriteHead(TextWriter output, RunResult result, bool isDetailed)
    {
        if (isDetailed)
        {
            TextReport.WriteHead(output, RunWords.Verdict(result), result.Scenario.Question);
            return null;
        }

        var card = new CardText(output);
        card.WriteHead(RunCard.Answer(result), result.Scenario.Question);
        return card;
    }

    /// <summary>What a closer look and other designs add to the answer, and all that follows.</summary>
    public static void WriteRest(
        TextWriter output, CardText? card, RunResult result, RunCost cost, ReadResult read, AskedFiles asked, IReadOnlyList<string> files, TyreAnswers? tyres = null, TurnMap? map = null, IReadOnlyList<Design>? designs = null)
    {
        if (card is not null)
        {
            card.WriteRest(Card(result, asked, designs, map, tyres), Warnings(result, designs), files);
            return;
        }

        foreach (string added in new[] { LookWords.Of(result), DesignWords.Verdict(designs ?? []) }.Where(w => w.Length > 0))
        {
            TextReport.WriteHead(output, added);
        }

        TextReport.WriteRest(
            output,
            [
                .. Compared(designs), .. RunTables.Of(result), .. TurnTables.Of(result),
                .. map is null ? Array.Empty<AnswerTable>() : [new AnswerTable("Map").AddRemark(MapWords.Of(map.Map))], .. tyres is null ? [] : TyreText.Tables(tyres),
            ],
            Warnings(result, designs),
            [],
            [.. EstimateText.Lines(read), RunTables.Computation(result, cost)],
            files,
            Card(result, asked, designs, map, tyres).Suggestions.Concat(EstimateText.Suggestions(read, asked)).DistinctBy(s => s.Line));
    }

    /// <summary>The card of a run, with how other designs differ, what a map shows and which tyres do best.</summary>
    public static AnswerCard Card(RunResult result, AskedFiles asked, IReadOnlyList<Design>? designs, TurnMap? map = null, TyreAnswers? tyres = null)
    {
        AnswerCard card = RunCard.Of(result, asked);
        string[] facts = [DesignWords.Short(designs ?? []), map is null ? "" : $"The {MapWords.Of(map.Map)}.", TyreTables.Summary(tyres?.Ranking ?? []), card.Facts];
        return card with { Facts = string.Join(' ', facts.Where(f => f.Length > 0)) };
    }

    /// <summary>The verdict of the first design, and how the others differ.</summary>
    public static string Verdict(RunResult result, IReadOnlyList<Design>? designs) => $"{RunWords.Verdict(result)} {DesignWords.Verdict(designs ?? [])}".TrimEnd();

    /// <summary>The table of differences; none of one design alone.</summary>
    public static IEnumerable<AnswerTable> Compared(IReadOnlyList<Design>? designs) => designs is { Count: > 1 } ? [DesignWords.Table(designs)] : [];

    /// <summary>Warnings of the first design, then those of the others that it does not share.</summary>
    public static IReadOnlyList<string> Warnings(RunResult result, IReadOnlyList<Design>? designs)
    {
        IReadOnlyList<string> own = Of(result);
        return [.. own, .. (designs ?? []).Skip(1).SelectMany(d => Of(d.Run!).Except(own).Select(w => $"{d.Label}: {w}"))];
    }

    /// <summary>Warnings of one design, and what its closer look left out.</summary>
    public static IReadOnlyList<string> Of(RunResult result) => [.. RunWords.Warnings(result), .. LookWords.LeftOut(result.Look) is { Length: > 0 } cut ? [cut] : Array.Empty<string>()];
}
