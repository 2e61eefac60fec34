using PushSim.Analysis.Fit;
using PushSim.Cli.Matches;
using PushSim.Scenarios.Keys;
using PushSim.Words.Fits;
using Spectre.Console;

namespace PushSim.Cli.Fit;

/// <summary>A fit as text for a person.</summary>
internal static class FitText
{
    /// <summary>What the tables of the tyres are for.</summary>
    public const string ListingTitle = "To paste into a robot file";

    /// <summary>The tables of a fit, for screen and page.</summary>
    public static IReadOnlyList<AnswerTable> Tables(FitResult o) =>
    [
        FitTables.Tyres(o.Fits),
        .. o.Simulated.Select(s => SimulationFitTables.Table(s.Tyre, s.Fit)),
        .. o.Comparison is TyreComparison c && TyreComparisonTables.Table(c, o.Fits.Count) is AnswerTable compared ? [compared] : Array.Empty<AnswerTable>(),
        .. o.Meaning is MeaningResult m ? MeaningTables.Tables(m, UsualTolerances.Of(m.Drawn)) : [],
    ];

    /// <summary>The verdict with what the tyres make of the robot.</summary>
    public static string Verdict(FitResult o) => FitWords.Verdict(o.Fits, o.Comparison) + SimulationFitWords.Verdict(o.Simulated) + (o.Meaning is MeaningResult m ? MeaningWords.Verdict(m) : "");

    /// <summary>The card of a fit.</summary>
    public static AnswerCard Card(FitResult o) => FitCard.Of(o.Fits, Verdict(o), o.Comparison);

    /// <summary>The card, or with --details all of it; the tables to paste stand in a file, too.</summary>
    public static void Write(TextWriter output, FitResult outcome, IReadOnlyList<string> blocks, IReadOnlyList<string> files, bool isDetailed)
    {
        if (!isDetailed)
        {
            CardText.Write(output, Card(outcome), [.. Warnings(outcome.Fits).Select(w => w.Whose + w.Warning)], files);
            return;
        }

        IReadOnlyList<TyreFit> fits = outcome.Fits;
        IAnsiConsole console = CommandText.Console(output);
        CommandText.Line(console, Verdict(outcome), Decoration.Bold);
        console.WriteLine();
        foreach (AnswerTable table in Tables(outcome))
        {
            CommandText.Write(console, table);
        }

        foreach ((string warning, string whose) in Warnings(fits))
        {
            CommandText.Line(console, "warning: " + whose + warning);
        }

        foreach (string note in outcome.Notes)
        {
            CommandText.Line(console, "note: " + note, Decoration.Dim);
        }

        console.WriteLine();
        output.WriteLine(ListingTitle + ":");
        output.WriteLine();
        foreach (string block in blocks)
        {
            output.WriteLine(block);
        }

        CommandText.Line(console, Cautions.OfFits, Decoration.Dim);
        CommandText.WriteFiles(output, files);
    }

    /// <summary>A warning that all tyres share is said once.</summary>
    public static IReadOnlyList<(string Warning, string Whose)> Warnings(IReadOnlyList<TyreFit> fits) =>
    [
        .. fits.SelectMany(f => Unusual(f).Concat(PullWords.Warnings(f)).Select(w => (w, f.Name))).GroupBy(w => w.w).Select(g => (g.Key, g.Count() == fits.Count ? "" : string.Join(", ", g.Select(w => w.Name)) + ": ")),
    ];

    // A friction that no tyre of a small robot has is kept, but most likely comes from a wrong load, unit or tare. A lower bound may be as low as it likes.
    private static IEnumerable<string> Unusual(TyreFit f)
    {
        bool isOfMotors = f.Cause.IsOfMotors;
        (string What, string Key, double? Value, bool IsLowerBound)[] found =
        [
            ("sliding friction", "kinetic_friction", f.KineticFriction?.Value, isOfMotors),
            ("breakaway friction", "static_friction", f.StaticFriction.Value, isOfMotors || f.IsStaticLowerBound),
        ];
        string[] odd =
        [
            .. found.Where(v => KeyTable.Find("tyre", v.Key) is { } usual && (v.Value > usual.UsualMax || (v.Value < usual.UsualMin && !v.IsLowerBound)))
                .Select(v => FormattableString.Invariant($"{v.What} {v.Value:0.000}")),
        ];
        if (odd.Length > 0)
        {
            KeyDefinition usual = KeyTable.Find("tyre", "kinetic_friction")!;
            yield return FormattableString.Invariant($"{string.Join(" and ", odd)}: tyres of small robots lie between {usual.UsualMin:0.#} and {usual.UsualMax:0.#}; check the load on the tyres or the robot's mass ({f.Load:0.00} N was taken), the unit of the force and the tare");
        }
    }
}
