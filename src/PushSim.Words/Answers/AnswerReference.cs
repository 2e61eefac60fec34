using System.Text;

namespace PushSim.Words.Answers;

/// <summary>The page of answers, src/docs/answers.md, made from the catalogue.</summary>
public static class AnswerReference
{
    private const string Head = """
        # Answers of a run

        Made from the catalogue in src/PushSim.Words/Answers: edit there, not here.

        The key is the name in `run --json`, in CSV heads, in `sweep --ask KEY` and in the list `ask` of a scenario, all of which its verdict tells. Its last
        part is the unit. A run gives null where an answer does not apply. `opponent.KEY` is the opponent's value of the keys marked with *. `energy.KEY` is an entry of the energy ledger. `--best` turns the better
        way of a sweep round.

        | key | answer | on the screen | better | manoeuvres |
        |---|---|---|---|---|

        """;

    /// <summary>The whole document.</summary>
    public static string Make()
    {
        var text = new StringBuilder(Head.ReplaceLineEndings("\n"));
        foreach (Answer a in AnswerCatalogue.All)
        {
            string shown = a.IsForScripts ? "no" : $"{a.Unit} {Digits(a.Digits)}".Trim();
            string kinds = a.Manoeuvres.Count == 0 ? "all" : string.Join(", ", a.Manoeuvres.Select(k => ManoeuvreTraits.Of(k).Name));
            text.Append($"| `{a.Key}`{(a.IsToldOfOpponent ? " *" : "")} | {a.Words} | {shown} | {Way(a.Better)} | {kinds} |\n");
        }

        text.Append("\n## Energy\n\n| key | entry |\n|---|---|\n");
        foreach (string key in EnergyWords.Keys)
        {
            text.Append($"| `energy.{key}` | {EnergyWords.Of(key)} |\n");
        }

        return text.ToString();
    }

    private static string Digits(int digits) => digits == 0 ? "whole" : $"to {digits} {(digits == 1 ? "digit" : "digits")}";

    private static string Way(Better better) => better switch { Better.More => "more", Better.Less => "less", _ => "" };
}
