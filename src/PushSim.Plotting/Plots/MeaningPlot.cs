using PushSim.Analysis.Chance;
using PushSim.Analysis.Meaning;
using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>Picture of what fitted tyres make of a robot: the share of shoves that it wins on each.</summary>
public static class MeaningPlot
{
    /// <summary>Shares of shoves won with their intervals; null without shoves.</summary>
    /// <param name="tyres">The tyres, with the robot's motors and with stronger ones.</param>
    /// <param name="opponent">Name of the opponent.</param>
    /// <param name="times">Stall torque of the stronger motors over that of the others [1]; null: there are none.</param>
    public static PlotSheet? Of(IReadOnlyList<TyreMeaning> tyres, string opponent, double? times) =>
        tyres.Any(t => t.Shoves is { Matches: > 0 }) ? new PlotSheet(() => [PanelOf(tyres, opponent, times)]) : null;

    private static Panel PanelOf(IReadOnlyList<TyreMeaning> tyres, string opponent, double? times)
    {
        TyreMeaning[] own = [.. tyres.Where(t => !t.IsStronger)];
        Panel panel = new Panel($"Shoves won against {opponent} on each tyre; bars: 95 % intervals", "Tyre", "Shoves won [%]").AddBars([.. own.Select(Bar)], "motors of the file", times is null ? 0.0 : -0.08, 0);
        if (times is double t)
        {
            panel.AddBars([.. tyres.Where(m => m.IsStronger).Select(Bar)], FormattableString.Invariant($"{t:0.##} times their torque"), 0.08, 1);
        }

        return panel.WithNames([.. own.Select(o => o.Tyre.Name + (o.Tyre.IsAtLeast ? " (at least)" : ""))]).WithRange(-4.0, 104.0);
    }

    private static (double Value, double Low, double High) Bar(TyreMeaning m)
    {
        if (m.Shoves is not { Matches: > 0 } t)
        {
            return (double.NaN, double.NaN, double.NaN);
        }

        Bounds i = m.WinShare!.Value;
        return (100.0 * t.Share(t.Wins), 100.0 * i.Low, 100.0 * i.High);
    }
}
