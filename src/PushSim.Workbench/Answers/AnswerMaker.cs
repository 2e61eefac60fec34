using PushSim.Plotting.Report;
using PushSim.Words.Runs;
using PushSim.Words.Tables;
using PushSim.Words.Terms;

namespace PushSim.Workbench.Answers;

/// <summary>Makes the message of an answer of a run. Every word is that of the commands.</summary>
internal static class AnswerMaker
{
    /// <summary>The message.</summary>
    /// <param name="run">The run.</param>
    /// <param name="before">The run to compare with; null: none.</param>
    public static AnswerMessage Of(RunResult run, RunResult? before)
    {
        AnswerCard card = RunCard.Of(run, AskedFiles.Unknown);
        bool hasHistory = run.Time.Length >= 2;
        bool canCompare = before is not null && before.Time.Length >= 2;
        return OfCard(card, before is null ? null : RunCard.Of(before, AskedFiles.Unknown)) with
        {
            Winner = run.Shove is { } shove ? shove.Winner switch { 0 => "a", 1 => "b", _ => "" } : null,
            Cautions = [.. RunWords.Warnings(run), .. LookWords.LeftOut(run.Look) is { Length: > 0 } cut ? [cut] : Array.Empty<string>(), .. card.IsCautioned ? new[] { Cautions.OfPredictions } : []],
            Curves = hasHistory ? Curves.Of(run, canCompare ? before : null) : [],
            Ribbon = hasHistory ? Curves.Ribbon(run) : [],
            Lines = Curves.Lines(run),
            Replay = new RawJson(hasHistory ? ReplayJson.Of(run) : null),
            BeforeReplay = new RawJson(canCompare ? ReplayJson.Of(before!) : null),
        };
    }

    /// <summary>What a card says, and how it differs from another.</summary>
    /// <param name="card">The card.</param>
    /// <param name="before">That of the design to compare with; null: none.</param>
    public static AnswerMessage OfCard(AnswerCard card, AnswerCard? before) => new()
    {
        Number = 0, Sentence = card.Answer, BeforeSentence = before?.Answer ?? "", Reason = card.Facts, Numbers = Numbers(card.Numbers, before?.Numbers ?? []),
        Sure = Clauses.Sentence(card.Sure), Next = Clauses.Sentence(card.Next),
    };

    private static IReadOnlyList<NumberMessage> Numbers(IReadOnlyList<CardNumber> numbers, IReadOnlyList<CardNumber> before) =>
        [.. numbers.Select(n => new NumberMessage(Key(n.Label), n.Label, n.Value, n.Beside, n.Note, Before(n, before.FirstOrDefault(b => b.Label == n.Label))))];

    private static string Key(string label) => label.Replace(' ', '_');

    // both as they are shown, so that the numbers add up for who reads them
    private static string Before(CardNumber now, CardNumber? before)
    {
        if (before is null)
        {
            return "";
        }

        if (Number(now.Value) is not (decimal value, string unit) || Number(before.Value) is not (decimal other, string same) || unit != same)
        {
            return now.Value == before.Value ? "" : $"before {before.Value}";
        }

        decimal difference = value - other;
        return difference == 0.0m ? $"before {before.Value}: the same" : string.Create(CultureInfo.InvariantCulture, $"before {before.Value}: {$"{Math.Abs(difference)} {unit}".TrimEnd()} {(difference > 0.0m ? "more" : "less")}");
    }

    private static (decimal Value, string Unit)? Number(string text)
    {
        string[] parts = text.Split(' ', 2);
        return decimal.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out decimal value) ? (value, parts.Length > 1 ? parts[1] : "") : null;
    }
}
