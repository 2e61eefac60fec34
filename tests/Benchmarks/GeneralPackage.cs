using System.Diagnostics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using PushSim.Simulation;

namespace PushSim.Benchmarks;

/// <summary>The general numerics package's fixed-step RK4 on the same right-hand side.</summary>
internal static class GeneralPackage
{
    public static (double[] Y, double Ms) FixedStep(ScenarioSettings scenario, int steps)
    {
        var system = new SceneSystem(scenario);
        double[] y = system.InitialState();
        double end = scenario.Manoeuvre.EndTime;
        double[] cuts = [0.0, .. system.Breakpoints, end];
        long start = Stopwatch.GetTimestamp();
        for (int i = 0; i + 1 < cuts.Length; i++)
        {
            system.EnterSegment(i);
            int n = Math.Max(2, (int)(steps * (cuts[i + 1] - cuts[i]) / end));
            Vector<double>[] path = RungeKutta.FourthOrder(Vector<double>.Build.DenseOfArray(y), cuts[i], cuts[i + 1], n, (t, v) =>
            {
                double[] dy = new double[v.Count];
                system.Evaluate(t, 0.0, v.ToArray(), dy);
                return Vector<double>.Build.Dense(dy);
            });
            y = path[^1].ToArray();
        }

        return (y, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
    }
}
