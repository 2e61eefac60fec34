using System.Diagnostics;
using PushSim.Simulation;
using PushSim.Tests;

namespace PushSim.Benchmarks;

/// <summary>Nanoseconds per right-hand-side pass of one four-wheel robot: guards against the JIT giving up inlining.</summary>
internal static class PassTimer
{
    public static double NanosecondsPerPass()
    {
        ScenarioSettings s = TestRobots.Launch();
        s = s with { Robot = ModelBuilder.InCanonicalOrder(s.Robot) };
        var system = new SceneSystem(s);
        system.EnterSegment(1);
        double[] y = system.InitialState();
        y[StateLayout.U] = 0.5;
        double[] dy = new double[y.Length];
        var settled = new Settled();
        while (!settled.IsReached)
        {
            const int passes = 1000;
            long t0 = Stopwatch.GetTimestamp();
            for (int i = 0; i < passes; i++)
            {
                system.Evaluate(0.2, 1e-4, y, dy);
            }

            settled.Add(Stopwatch.GetElapsedTime(t0).TotalNanoseconds / passes);
        }

        return settled.Best;
    }
}
