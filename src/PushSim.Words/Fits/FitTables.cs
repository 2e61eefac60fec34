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
                Number(f.KineticFriction, f.Cause.IsLowerBound),
                f.KineticFriction is Interval k ? IntervalWords.Of(k) : "",
                Number(f.StaticFriction, f.IsStaticLowerBound),
                f.IsBreakawayUnseen ? "" : IntervalWords.Of(f.StaticFriction),
                f.Pulls.ToString(CultureInfo.InvariantCulture),
                f.Cause.IsInconsistent ? "inconsistent" : PullWords.Key(f.Cause));
        }

        foreach (IGrouping<string, TyreFit> same in fits.GroupBy(f => PullWords.Reason(f.Cause)))
        {
            string whose = fits.Count > 1 && same.Count() == fits.Count ? "all" : string.Join(", ", same.Select(f => f.Name));
            table.AddRemark($"{whose}: {same.Key}");
        }

        if (fits.Any(f => f.Traces.Count > 0 && f.Sliding is not null && f.Trip?.Kinetic is null && !f.IsKineticSimulated))
        {
            table.AddRemark("sliding friction is that at the speed of the test; a scenario of the test (--robot) with tether and throttle brings it to the tyre's law", isAside: true);
        }

        return table.AddRemarks(fits.Where(f => f.IsStaticSimulated || f.IsKineticSimulated).Select(f => $"{f.Name}: {FitWords.Method(f)}"));
    }

    private static string Number(Interval? i, bool isLowerBound) => i is { } v ? Text($"{(isLowerBound ? ">= " : "")}{v.Value:0.000}") : "not seen";
}
