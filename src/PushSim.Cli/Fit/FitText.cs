using System.Globalization;
using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Binding;
using PushSim.Cli.Shared;
using PushSim.Scenarios.Keys;
using PushSim.Words.Fits;
using PushSim.Words.Tables;
using Spectre.Console;

namespace PushSim.Cli.Fit;

/// <summary>A fit as text for a person.</summary>
internal static class FitText
{
    /// <summary>Short cautions, once per report.</summary>
    public const string Cautions =
        "A fit is an estimate for this floor, dust and load. A pull test stores energy: keep clear of taut tethers, wheels off the floor until ready. "
        + "Stalled motors and lithium batteries burn: keep pulls short. Weapons removed or locked.";

    /// <summary>What the tables of the tyres are for.</summary>
    public const string ListingTitle = "To paste into a robot file";

    public static string Verdict(IReadOnlyList<TyreFit> fits, TyreComparison? compared = null)
    {
        if (fits.Count == 1)
        {
            return Sentence(fits[0]);
        }

        List<TyreFit> sure = [.. fits.Where(f => !f.Limit.IsInconsistent)];
        List<TyreFit> slid = [.. sure.Where(f => f.KineticFriction is not null)];
        TyreFit? best = slid.MaxBy(f => f.ForModel.Kinetic) ?? sure.MaxBy(f => f.ForModel.Static);
        string most = slid.Count == 0 ? "most grip before breaking away (none was seen sliding)" : slid.Count < sure.Count ? "most grip of those seen sliding" : "most grip";
        int motors = fits.Count(f => f.Limit.IsOfMotors);
        int inconsistent = fits.Count - sure.Count;
        string rest = (motors > 0 ? $" {motors} set by the motors (lower bounds)." : "") + (inconsistent > 0 ? $" {inconsistent} inconsistent with the robot file." : "");
        return best is null
            ? $"{fits.Count} tyres fitted, all inconsistent with the robot file."
            : FormattableString.Invariant($"{fits.Count} tyres fitted; {most}: {best.Name}, friction {Word(best)}{best.ForModel.Kinetic:0.00}.") + (compared is null ? "" : ComparisonText.Verdict(compared, best.Name)) + rest;
    }

    /// <summary>The tables of a fit, for screen and page.</summary>
    public static IReadOnlyList<AnswerTable> Tables(FitResult o) =>
    [
        Table(o.Fits),
        .. o.Simulated.Select(s => SimulationText.Table(s.Tyre, s.Fit)),
        .. o.Comparison is TyreComparison c && ComparisonText.Table(c, o.Fits.Count) is AnswerTable compared ? [compared] : Array.Empty<AnswerTable>(),
        .. o.Meaning is MeaningResult m ? MeaningText.Tables(m) : [],
    ];

    /// <summary>The verdict with what the tyres make of the robot.</summary>
    public static string Verdict(FitResult o) => Verdict(o.Fits, o.Comparison) + SimulationText.Verdict(o.Simulated) + (o.Meaning is MeaningResult m ? MeaningText.Verdict(m) : "");

    public static void Write(TextWriter output, FitResult outcome, IReadOnlyList<string> blocks, IReadOnlyList<string> files)
    {
        IReadOnlyList<TyreFit> fits = outcome.Fits;
        IAnsiConsole console = TextReport.Console(output);
        console.MarkupLine("[bold]" + PlainText.Marked(Verdict(outcome)) + "[/]");
        console.WriteLine();
        foreach (AnswerTable table in Tables(outcome))
        {
            TextReport.Write(console, table);
        }

        foreach ((string warning, string whose) in Warnings(fits))
        {
            console.MarkupLine("warning: " + PlainText.Marked(whose + warning));
        }

        foreach (string note in outcome.Notes)
        {
            console.MarkupLine("[dim]note: " + PlainText.Marked(note) + "[/]");
        }

        console.WriteLine();
        output.WriteLine(ListingTitle + ":");
        output.WriteLine();
        foreach (string block in blocks)
        {
            output.WriteLine(block);
        }

        console.MarkupLine("[dim]" + Markup.Escape(Cautions) + "[/]");
        TextReport.WriteFiles(output, files);
    }

    private static string Sentence(TyreFit f)
    {
        string kinetic = f.KineticFriction is Interval k ? $"sliding friction {Word(f)}{Text(k)}" : "no sliding seen";
        string atRest = $"breakaway {(f.IsStaticLowerBound ? "at least " : "")}{Text(f.StaticFriction)}";
        string by = f.Limit.IsInconsistent ? "inconsistent with the robot file" : f.Limit.By switch
        {
            BindingKind.Tyre => "the tyre set it",
            BindingKind.Motor => "the motors set it, the tyre grips at least that well",
            _ => "whether tyre or motors set it is unknown",
        };
        return $"{f.Name}: {kinetic}, {atRest}; {by}.";
    }

    private static string Word(TyreFit f) => f.Limit.IsOfMotors ? "at least " : "";

    private static string Text(Interval i) => i.IsBounded
        ? FormattableString.Invariant($"{i.Value:0.000} ({i.Low:0.000} to {i.High:0.000})")
        : FormattableString.Invariant($"{i.Value:0.000}");

    /// <summary>A warning that all tyres share is said once.</summary>
    public static IReadOnlyList<(string Warning, string Whose)> Warnings(IReadOnlyList<TyreFit> fits) =>
    [
        .. fits.SelectMany(f => Unusual(f).Concat(PullWords.Warnings(f)).Select(w => (w, f.Name))).GroupBy(w => w.w).Select(g => (g.Key, g.Count() == fits.Count ? "" : string.Join(", ", g.Select(w => w.Name)) + ": ")),
    ];

    // A friction that no tyre of a small robot has is kept, but most likely comes from a wrong load, unit or tare. A lower bound may be as low as it likes.
    private static IEnumerable<string> Unusual(TyreFit f)
    {
        bool isOfMotors = f.Limit.IsOfMotors;
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

    /// <summary>The tyres, for screen and page, with what set each pull.</summary>
    public static AnswerTable Table(IReadOnlyList<TyreFit> fits)
    {
        AnswerTable table = new AnswerTable("Tyre").AddColumn("Name").AddNumberColumn("Sliding friction").AddNumberColumn("95 %")
            .AddNumberColumn("Breakaway").AddNumberColumn("95 %").AddNumberColumn("Pulls").AddColumn("Set by");
        foreach (TyreFit f in fits.OrderByDescending(f => f.ForModel.Kinetic))
        {
            table.AddRow(
                f.Name,
                Number(f.KineticFriction?.Value),
                Ends(f.KineticFriction),
                (f.IsStaticLowerBound ? ">= " : "") + Number(f.StaticFriction.Value),
                f.IsStaticLowerBound ? "" : Ends(f.StaticFriction),
                f.Pulls.ToString(CultureInfo.InvariantCulture),
                f.Limit.IsInconsistent ? "inconsistent" : PullWords.Key(f.Limit));
        }

        foreach (IGrouping<string, TyreFit> same in fits.GroupBy(f => PullWords.Reason(f.Limit)))
        {
            string whose = fits.Count > 1 && same.Count() == fits.Count ? "all" : string.Join(", ", same.Select(f => f.Name));
            table.AddRemark($"{whose}: {same.Key}");
        }

        return table;
    }

    private static string Number(double? v) => v?.ToString("0.000", CultureInfo.InvariantCulture) ?? "not seen";

    private static string Ends(Interval? i) => i is { IsBounded: true } b ? FormattableString.Invariant($"{b.Low:0.000} to {b.High:0.000}") : "";
}
