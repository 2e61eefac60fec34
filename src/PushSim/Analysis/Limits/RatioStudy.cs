using PushSim.Simulation;

namespace PushSim.Analysis.Limits;

/// <summary>What another gear ratio of every motor would make of a robot.</summary>
internal static class RatioStudy
{
    private const int RatioPoints = 21;
    private const double LeastRatio = 0.4;
    private const double GreatestRatio = 2.5;

    /// <summary>Pull, dash and top speed over the ratio; null where no ratio lets the robot pull or start.</summary>
    /// <param name="scenario">Checked settings in canonical order.</param>
    /// <param name="condition">Heat, charge and throttle.</param>
    /// <param name="hook">Where the robot is held back.</param>
    public static RatioCurve? Of(ScenarioSettings scenario, LimitCondition condition, LimitHook hook)
    {
        List<RatioPoint> points = [];
        for (int n = 0; n < RatioPoints; n++)
        {
            double factor = LeastRatio * Math.Pow(GreatestRatio / LeastRatio, n / (RatioPoints - 1.0));
            points.Add(At(scenario, condition, hook, factor));
        }

        RatioPoint[] dashes = [.. points.Where(p => double.IsFinite(p.DashTime))];
        RatioPoint[] pulls = [.. points.Where(p => double.IsFinite(p.Pull))];
        double[] ratios = [.. scenario.Robot.Drives.SelectMany(d => d.Motors).Select(m => m.Ratio)];
        if (dashes.Length == 0 || pulls.Length == 0)
        {
            return null;
        }

        double most = pulls.Max(p => p.Pull);
        return new RatioCurve(points, pulls.First(p => p.Pull >= RatioCurve.NearlyMost * most).Factor, Lowest(points, dashes), ratios.Average());
    }

    private static RatioPoint At(ScenarioSettings scenario, LimitCondition condition, LimitHook hook, double factor)
    {
        var model = new LimitModel<R1>(scenario, condition, LimitInput.Ratio, factor);
        double pull = StandingPull.Solve(model, hook).Steady?.Pull(model, hook).Value ?? double.NaN;
        var launch = new LaunchEstimate<R1>(new LimitModel<R1>(scenario, condition, LimitInput.Ratio, factor));
        return new RatioPoint(factor, pull, launch.Starts ? launch.TimeFor(1.0).Value : double.NaN, launch.TopSpeed.Value);
    }

    // Least of a parabola through the best point and its neighbours, over the logarithm of the factor
    private static double Lowest(List<RatioPoint> points, RatioPoint[] dashes)
    {
        int best = points.IndexOf(dashes.MinBy(p => p.DashTime)!);
        if (best == 0 || best == points.Count - 1 || !double.IsFinite(points[best - 1].DashTime) || !double.IsFinite(points[best + 1].DashTime))
        {
            return points[best].Factor;
        }

        double left = points[best - 1].DashTime - points[best].DashTime;
        double right = points[best + 1].DashTime - points[best].DashTime;
        double step = Math.Log(points[best + 1].Factor / points[best].Factor);
        return points[best].Factor * Math.Exp(0.5 * step * (left - right) / (left + right));
    }
}
