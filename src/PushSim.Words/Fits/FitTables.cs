using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Words.Tables;

namespace PushSim.Words.Fits;

/// <summary>Fitted tyres, in words and as a table.</summary>
public static class FitTables
{
    /// <summary>The answer as one sentence.</summary>
    /// <param name="fits">The tyres.</param>
    /// <param name="compared">How they compare; null: not said.</param>
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
            : Text($"{fits.Count} tyres fitted; {most}: {best.Name}, friction {Word(best)}{best.ForModel.Kinetic:0.00}.") + (compared is null ? "" : ComparisonTables.Verdict(compared, best.Name)) + rest;
    }

    /// <summary>The tyres with what set each pull.</summary>
    /// <param name="fits">The tyres.</param>
    public static AnswerTable Tyres(IReadOnlyList<TyreFit> fits)
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

    private static string Ends(Interval? i) => i is { IsBounded: true } b ? Text($"{b.Low:0.000} to {b.High:0.000}") : "";

    private static string Sentence(TyreFit f)
    {
        string kinetic = f.KineticFriction is Interval k ? $"sliding friction {Word(f)}{Ranged(k)}" : "no sliding seen";
        string atRest = $"breakaway {(f.IsStaticLowerBound ? "at least " : "")}{Ranged(f.StaticFriction)}";
        string by = f.Limit.IsInconsistent ? "inconsistent with the robot file" : f.Limit.By switch
        {
            BindingKind.Tyre => "the tyre set it",
            BindingKind.Motor => "the motors set it, the tyre grips at least that well",
            _ => "whether tyre or motors set it is unknown",
        };
        return $"{f.Name}: {kinetic}, {atRest}; {by}.";
    }

    private static string Word(TyreFit f) => f.Limit.IsOfMotors ? "at least " : "";

    private static string Ranged(Interval i) => i.IsBounded
        ? Text($"{i.Value:0.000} ({i.Low:0.000} to {i.High:0.000})")
        : Text($"{i.Value:0.000}");
}
