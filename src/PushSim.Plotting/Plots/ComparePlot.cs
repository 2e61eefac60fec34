using PushSim.Analysis.Compare;
using PushSim.Plotting.Drawing;
using PushSim.Words.Fits;

namespace PushSim.Plotting.Plots;

/// <summary>A log and the run beside it: a panel for each quantity, first the one that the answer names.</summary>
public static class ComparePlot
{
    /// <summary>The picture.</summary>
    /// <param name="time">Times of the log [s].</param>
    /// <param name="errors">At least one quantity.</param>
    /// <param name="from">Where counting begins; what lies before was used to find values [s].</param>
    public static PlotSheet Of(double[] time, IReadOnlyList<ChannelError> errors, double from) => new(() => [.. CompareWords.FurthestFirst(errors).Select(e => Panel(time, e, from))]);

    private static Panel Panel(double[] time, ChannelError error, double from)
    {
        int[] seen = [.. Enumerable.Range(0, time.Length).Where(i => double.IsFinite(error.Channel.Values[i]))];
        int[] run = [.. Enumerable.Range(0, time.Length).Where(i => double.IsFinite(error.Model[i]))];
        string part = from > 0.0 ? FormattableString.Invariant($", judged from {from:0.##} s on") : "";
        string title = Clauses.Sentence(CompareWords.Words(error.Channel));
        return Drawing.Panel.OverTime($"{title}: log and run{part}", $"{title} [{error.Channel.Unit}]")
            .Add([.. seen.Select(i => time[i])], [.. seen.Select(i => error.Channel.Values[i])], "log")
            .Add([.. run.Select(i => time[i])], [.. run.Select(i => error.Model[i])], "run");
    }
}
