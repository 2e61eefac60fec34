using PushSim.Words.Answers;
using PushSim.Words.Limits;
using PushSim.Words.Tables;

namespace PushSim.Words.Designs;

/// <summary>How designs differ, in sentences and a table. The first is the one that the others are compared with.</summary>
public static class DesignWords
{
    /// <summary>A sentence for each design but the first; empty for one alone.</summary>
    public static string Verdict(IReadOnlyList<Design> designs) => string.Join(' ', designs.Skip(1).Select(d => string.Join(' ', Sentences(designs[0], d))));

    /// <summary>The first two sentences for each design but the first: what a card has room for.</summary>
    public static string Short(IReadOnlyList<Design> designs) => string.Join(' ', designs.Skip(1).SelectMany(d => Sentences(designs[0], d).Take(2)));

    /// <summary>Every quantity of all designs, and by how much each differs from the first.</summary>
    public static AnswerTable Table(IReadOnlyList<Design> designs)
    {
        AnswerTable table = new AnswerTable("Side by side").AddColumn("Quantity").AddNumberColumn(designs[0].Shown);
        foreach (Design d in designs.Skip(1))
        {
            table.AddNumberColumn(d.Label).AddNumberColumn("difference");
        }

        table.AddColumn("Unit");
        foreach ((Measure m, Func<Design, double?> of) in Measures(designs[0]))
        {
            double? first = of(designs[0]);
            if (designs.Any(d => of(d) is not null))
            {
                table.AddRow([m.Words, m.Shown(first), .. designs.Skip(1).SelectMany(d => new[] { m.Shown(of(d)), Difference(m, first, of(d)) }), m.Unit]);
            }
        }

        return table.AddRemark($"difference: from {designs[0].Shown}, in the unit and in per cent of it", isAside: true);
    }

    private static IEnumerable<(Measure Measure, Func<Design, double?> Of)> Measures(Design first) => first.Run is null
        ? LimitMeasure.All.Select(m => ((Measure)m, (Func<Design, double?>)(d => m.Of(d.Report!))))
        : AnswerCatalogue.All.Where(a => !a.IsForScripts).Select(a => ((Measure)(a with { Better = a.BetterIn(first.Run.Scenario.Manoeuvre.Kind) }), (Func<Design, double?>)(d => a.Of(d.Run!))));

    private static IEnumerable<(Measure Measure, Func<Design, double?> Of)> Asked(Design first) => first.Run is null
        ? Measures(first).Take(1)
        : AnswerCatalogue.Asked(first.Run.Scenario).Select(a => ((Measure)a, (Func<Design, double?>)(d => a.Of(d.Run!))));

    private static string[] Sentences(Design first, Design other)
    {
        List<string> clauses = [];
        foreach ((Measure m, Func<Design, double?> of) in Asked(first))
        {
            if (Clause(m, of(first), of(other), first, clauses.Count == 0 ? other.Robot : "it", isFirst: clauses.Count == 0) is { Length: > 0 } clause)
            {
                clauses.Add(clause);
            }
        }

        string[] told = [.. clauses.Count > 0 ? clauses : [$"{other.Robot} gives no number to compare"], .. Winner(first, other), .. Limit(first, other)];
        told[0] = other.With + told[0];
        string[] names = [first.Robot, other.Robot, first.Run?.Opponent?.Robot.Name ?? "", other.Run?.Opponent?.Robot.Name ?? ""];

        // a name keeps its letters
        return [.. told.Select(t => (names.Any(n => n.Length > 0 && t.StartsWith(n, StringComparison.Ordinal)) ? t : Phrase.Capital(t)) + ".")];
    }

    private static string Clause(Measure m, double? first, double? own, Design one, string who, bool isFirst)
    {
        if (own is not double v || first is not double w)
        {
            return own is null && first is null ? "" : $"{m.Clause(who, own)} ({one.Shown}: {(first is double told ? m.Spoken(told) : "none")})";
        }

        string clause = m.Clause(who, v);
        if (m.Difference(v, w) == 0.0m)
        {
            return one.IsPlain ? $"{clause} either way" : $"{clause}, as {(one.Shown == one.Robot ? "does " : "")}{one.Than}";
        }

        if (v < 0.0 != w < 0.0)
        {
            return $"{clause}, {one.With}{m.Clause(one.Robot, w)}";
        }

        decimal difference = m.Difference(Math.Abs(v), Math.Abs(w));
        return $"{clause}, {Text($"{Math.Abs(difference)} {m.Unit}").TrimEnd()}{Percent(m, v, w)} {(difference > 0.0m ? "more" : "less")}{(isFirst ? $" than {one.Than}" : "")}";
    }

    private static IEnumerable<string> Winner(Design first, Design other)
    {
        if (first.Run?.Shove is not { } w || other.Run?.Shove is not { } v)
        {
            return [];
        }

        return [v.Winner == w.Winner && Name(first, w.Winner) == Name(other, v.Winner)
            ? v.Winner < 0 ? "nobody wins either way" : $"{Name(other, v.Winner)} wins both"
            : v.Winner == 0 && w.Winner == 0 ? $"{other.Robot} and {first.Robot} both win"
            : $"{Wins(other, v.Winner)}, {first.With}{Wins(first, w.Winner)}"];
    }

    private static string Wins(Design d, int winner) => winner < 0 ? "nobody wins" : Name(d, winner) + " wins";

    private static string Name(Design d, int winner) => winner < 0 ? "" : winner == 0 ? d.Robot : d.Run!.Opponent!.Robot.Name;

    private static IEnumerable<string> Limit(Design first, Design other) => (first.Limit, other.Limit) switch
    {
        ({ } w, { } v) when w.Leading == v.Leading => [$"the {BindingTable.Words(v.Leading)} {Verb(v.Leading)} both"],
        ({ } w, { } v) => [$"the {BindingTable.Words(v.Leading)} {Verb(v.Leading)} it, {first.With}the {BindingTable.Words(w.Leading)} {Verb(w.Leading)} {first.Robot}"],
        _ => [],
    };

    private static string Verb(BindingKind kind) => kind is BindingKind.Battery or BindingKind.Series ? "limits" : "limit";

    // "+1.20 (10 %), better"
    private static string Difference(Measure m, double? first, double? own)
    {
        if (own is not double v || first is not double w)
        {
            return "";
        }

        decimal difference = m.Difference(v, w);
        if (difference == 0.0m)
        {
            return "same";
        }

        bool isMore = m.IsSided ? Math.Abs(v) > Math.Abs(w) : difference > 0.0m;
        string worth = m.Better == Better.Neither ? "" : isMore == (m.Better == Better.More) ? ", better" : ", worse";
        return Text($"{(difference > 0.0m ? "+" : "-")}{Math.Abs(difference)}{Percent(m, v, w)}{worth}");
    }

    // none of a temperature, whose zero means nothing, and of what is nothing as shown
    private static string Percent(Measure m, double value, double of) =>
        m.Unit is "°C" or "deg" || m.Difference(of, 0.0) == 0.0m ? "" : Text($" ({100.0 * Math.Abs((value - of) / of):0.#} %)");
}
