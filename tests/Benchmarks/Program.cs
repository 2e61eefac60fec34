using PushSim.Benchmarks;
using System.Diagnostics;
using PushSim.Simulation;
using PushSim.Tests;

foreach ((string name, ScenarioSettings s) in new[] { ("launch", TestRobots.Launch()), ("spot", TestRobots.Spot()), ("pull", TestRobots.Pull()) })
{
    foreach (string method in new[] { "ARK3(2)", "ARK4(3)", "ARK5(4)" })
    {
        foreach (double tol in new[] { 1e-2, 1e-3, 1e-4, 1e-6 })
        {
            ScenarioSettings x = s with { Numerics = s.Numerics with { Tolerance = tol, Method = method } };
            RunResult r = Simulator.Run(x);
            double best = double.MaxValue;
            for (int i = 0; i < 5; i++)
            {
                long t0 = Stopwatch.GetTimestamp();
                r = Simulator.Run(x);
                best = Math.Min(best, Stopwatch.GetElapsedTime(t0).TotalMilliseconds);
            }

            Console.WriteLine($"{name,-8} {method} {tol:0e0} evals {r.RhsEvaluations,7} steps {r.Steps,6} rej {r.RejectedSteps,5} {best,7:0.00} ms  x {r["x_m"].Values[^1]:0.00000} psi {r["heading_rad"].Values[^1]:0.0000} res {r.EnergyResidualRatio:0.0e0} {r.Status} {r.Cause} {r.Verdict}");
        }
    }
}

Console.WriteLine($"{PassTimer.NanosecondsPerPass():0} ns per pass");
return 0;
