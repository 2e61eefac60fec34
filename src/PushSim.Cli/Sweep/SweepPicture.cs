using PushSim.Analysis.Sweep;

namespace PushSim.Cli.Sweep;

/// <summary>Curves or maps of a sweep, for a file and for a page.</summary>
internal static class SweepPicture
{
    /// <summary>The picture of two points or more.</summary>
    public static PlotSheet Of(SweepRequest request, SweepResult r) => request.Inputs.Count == 1 ? Curves(request.Told(r), r) : Maps(request.Told(r), r);

    private static PlotSheet Curves(SweepRequest request, SweepResult r)
    {
        SweepInput input = request.Inputs[0];
        SweepInput shown = input with { Texts = [.. r.Table.Points.Select(p => input.Texts[p.Place[0]])], Numbers = input.Numbers is null ? null : [.. r.Table.Points.Select(p => input.Numbers[p.Place[0]])] };
        return SweepPlot.OfOne(shown, [.. r.Table.Columns.Select((c, k) => (
            c.Key,
            (IReadOnlyList<double?>)[.. r.Table.Points.Select(p => r.Table.Value(p, k))],
            c.Key == SweepTable.WinShare ? (IReadOnlyList<(double, double)?>)[.. r.Table.Points.Select(p => p.Odds is Tally t ? ((double, double)?)(t.WinInterval.Low, t.WinInterval.High) : null)] : null,
            c.Alone is null ? null : c.Flatness))], r.Shove);
    }

    private static PlotSheet Maps(SweepRequest request, SweepResult r)
    {
        (SweepInput across, SweepInput up) = (request.Inputs[0], request.Inputs[1]);
        return SweepPlot.OfTwo(across, up, [.. r.Table.Columns.Select((c, k) =>
        {
            double?[,] values = new double?[across.Texts.Count, up.Texts.Count];
            foreach (SweepPoint p in r.Table.Points)
            {
                values[p.Place[0], p.Place[1]] = r.Table.Value(p, k);
            }

            return (c.Key, values, c.Alone is int b ? ((int, int)?)(r.Table.Points[b].Place[0], r.Table.Points[b].Place[1]) : null);
        })]);
    }
}
