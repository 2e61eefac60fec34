using PushSim.Analysis.Chance;
using PushSim.Analysis.Sweep;
using PushSim.Plotting.Plots;

namespace PushSim.Cli.Sweep;

/// <summary>Curves or maps of a sweep, for a file and for a page.</summary>
internal static class SweepPicture
{
    /// <summary>The picture of two points or more.</summary>
    public static SweepPlot Of(SweepRequest request, SweepResult r) => request.Inputs.Count == 1 ? Curves(request, r) : Maps(request, r);

    private static SweepPlot Curves(SweepRequest request, SweepResult r)
    {
        SweepInput input = request.Inputs[0];
        SweepInput shown = input with { Texts = [.. r.Points.Select(p => input.Texts[p.Place[0]])], Numbers = input.Numbers is null ? null : [.. r.Points.Select(p => input.Numbers[p.Place[0]])] };
        return SweepPlot.OfOne(shown, [.. r.Columns.Select((c, k) => (
            c.Key,
            (IReadOnlyList<double?>)[.. r.Points.Select(p => r.Value(p, k))],
            c.Key == SweepResult.WinShare ? (IReadOnlyList<(double, double)?>)[.. r.Points.Select(p => p.Odds is Tally t ? ((double, double)?)(t.WinInterval.Low, t.WinInterval.High) : null)] : null,
            c.Flatness))]);
    }

    private static SweepPlot Maps(SweepRequest request, SweepResult r)
    {
        (SweepInput across, SweepInput up) = (request.Inputs[0], request.Inputs[1]);
        return SweepPlot.OfTwo(across, up, [.. r.Columns.Select((c, k) =>
        {
            double?[,] values = new double?[across.Texts.Count, up.Texts.Count];
            foreach (SweepPoint p in r.Points)
            {
                values[p.Place[0], p.Place[1]] = r.Value(p, k);
            }

            return (c.Key, values, c.Best is int b ? ((int, int)?)(r.Points[b].Place[0], r.Points[b].Place[1]) : null);
        })]);
    }
}
