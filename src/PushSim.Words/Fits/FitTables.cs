using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Words.Tables;

namespace PushSim.Words.Fits;

/// <summary>Fitted tyres as a table.</summary>
public static class FitTables
{
    /// <summary>The tyres with what set each pull.</summary>
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
}
