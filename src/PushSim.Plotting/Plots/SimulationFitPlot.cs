using PushSim.Analysis.FitBySimulation;
using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>Picture of a fit by simulation: measured and simulated force over each other, and what is left.</summary>
public static class SimulationFitPlot
{
    // Pulls drawn; more would be too narrow to see [1].
    private const int MostPulls = 4;

    // Between one pull and the next [s].
    private const double Gap = 0.2;

    /// <summary>One tyre's pulls, one after the other.</summary>
    /// <param name="tyre">Name of the tyre.</param>
    /// <param name="fit">The fit.</param>
    public static PlotSheet Of(string tyre, SimulationFit fit) => new(() => Panels(tyre, fit));

    private static IReadOnlyList<Panel> Panels(string tyre, SimulationFit fit)
    {
        List<(double X, double Y)> measured = [];
        List<(double X, double Y)> simulated = [];
        List<(double X, double Y)> left = [];
        double start = 0.0;
        foreach (FollowedPull p in fit.Pulls.Take(MostPulls))
        {
            double end = start;
            for (int i = 0; i < p.Time.Length; i++)
            {
                end = start + p.Time[i] - p.Time[0];
                measured.Add((end, p.Measured[i]));
                simulated.Add((end, p.Simulated[i]));
                left.Add((end, p.Measured[i] - p.Simulated[i]));
            }

            simulated.Add((end, double.NaN));
            start = end + Gap;
        }

        double last = start - Gap;
        string some = fit.Pulls.Count > MostPulls ? FormattableString.Invariant($", the first {MostPulls} of {fit.Pulls.Count}") : "";
        return
        [
            Panel.OverTime($"Pull after pull: {tyre}{some}", "Force on the cell [N]").AddPoints(measured, "measured").AddPieces(simulated, "simulated with the fitted tyre").WithSpan(0.0, last),
            Panel.OverTime("What the simulated test leaves", "Measured less simulated [N]").AddPoints(left, "residual").WithSpan(0.0, last),
        ];
    }
}
