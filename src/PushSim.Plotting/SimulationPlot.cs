using PushSim.Analysis.FitBySimulation;
using PushSim.Plotting.Report;

namespace PushSim.Plotting;

/// <summary>Picture of a fit by simulation: measured and simulated force over each other, and what is left.</summary>
public static class SimulationPlot
{
    // Pulls drawn; more would be too narrow to see [1].
    private const int MostPulls = 4;

    // Between one pull and the next [s].
    private const double Gap = 0.2;

    /// <summary>One tyre's pulls, one after the other.</summary>
    /// <param name="tyre">Name of the tyre.</param>
    /// <param name="fit">The fit.</param>
    public static RunPlot Of(string tyre, SimulationFit fit) => new(Panels(tyre, fit));

    /// <summary>The same for a page.</summary>
    /// <param name="tyre">Name of the tyre.</param>
    /// <param name="fit">The fit.</param>
    public static IReadOnlyList<ReportFigure> Figures(string tyre, SimulationFit fit) => ReportFigure.Of(() => Panels(tyre, fit));

    private static IReadOnlyList<Panel> Panels(string tyre, SimulationFit fit)
    {
        List<double> time = [];
        List<double> measured = [];
        List<double> simulated = [];
        List<(double X, double Y)> left = [];
        double start = 0.0;
        foreach (FollowedPull p in fit.Pulls.Take(MostPulls))
        {
            for (int i = 0; i < p.Time.Length; i++)
            {
                double t = start + p.Time[i] - p.Time[0];
                time.Add(t);
                measured.Add(p.Measured[i]);
                simulated.Add(p.Simulated[i]);
                left.Add((t, p.Measured[i] - p.Simulated[i]));
            }

            // a break in the lines
            time.Add(time[^1]);
            measured.Add(double.NaN);
            simulated.Add(double.NaN);
            start = time[^1] + Gap;
        }

        string some = fit.Pulls.Count > MostPulls ? FormattableString.Invariant($", the first {MostPulls} of {fit.Pulls.Count}") : "";
        return
        [
            RunPlot.Time($"Pull after pull: {tyre}{some}", "Force on the cell [N]").Add([.. time], [.. measured], "measured").Add([.. time], [.. simulated], "simulated with the fitted tyre"),
            RunPlot.Time("What the simulated test leaves", "Measured less simulated [N]").AddPoints(left, "residual").WithSpan(time[0], time[^1]),
        ];
    }
}
