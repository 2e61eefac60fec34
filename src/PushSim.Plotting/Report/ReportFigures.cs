using PushSim.Analysis.Fit;
using PushSim.Analysis.Limits;
using PushSim.Analysis.Wear;
using PushSim.Runs;

namespace PushSim.Plotting.Report;

/// <summary>The plots of each command for its page: the same panels as in its picture files.</summary>
public static class ReportFigures
{
    /// <summary>Limits of a robot.</summary>
    /// <param name="report">The limits.</param>
    /// <param name="run">The run of the scenario; null where there was none.</param>
    /// <param name="bindings">What bound each wheel over the run.</param>
    public static IReadOnlyList<ReportFigure> Of(LimitReport report, RunResult? run, IReadOnlyList<WheelBindings> bindings) =>
        ReportFigure.Of(() => LimitsPlot.Panels(report, run, bindings));

    /// <summary>Fits of tyres.</summary>
    /// <param name="fits">At least one tyre.</param>
    public static IReadOnlyList<ReportFigure> Of(IReadOnlyList<TyreFit> fits) => ReportFigure.Of(() => FitPlot.Panels(fits));

    /// <summary>Wear of each wheel.</summary>
    /// <param name="report">The wear.</param>
    public static IReadOnlyList<ReportFigure> Of(WearReport report) => ReportFigure.Of(() => TyrePlots.WearPanels(report));

    /// <summary>Grip after each run.</summary>
    /// <param name="series">The series.</param>
    /// <param name="wheels">Names of the wheels in its order.</param>
    public static IReadOnlyList<ReportFigure> Of(GripSeries series, IReadOnlyList<string> wheels) => ReportFigure.Of(() => TyrePlots.GripPanels(series, wheels));

    /// <summary>Tyre materials compared.</summary>
    /// <param name="ranking">The materials.</param>
    public static IReadOnlyList<ReportFigure> Of(IReadOnlyList<RankedTyre> ranking) => ReportFigure.Of(() => TyrePlots.RankingPanels(ranking));
}
