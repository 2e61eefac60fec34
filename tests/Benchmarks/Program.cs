using System.Diagnostics;
using PushSim.Simulation;
using PushSim.Tests;
Console.WriteLine($"{PushSim.Benchmarks.PassTimer.NanosecondsPerPass():0} ns/pass");
foreach (double rate in new[] { 1000.0, 10.0 })
{
    ScenarioSettings x = TestRobots.Launch();
    x = x with { Numerics = x.Numerics with { SampleRate = rate } };
    double best = 1e9;
    for (int i = 0; i < 60; i++)
    {
        long t0 = Stopwatch.GetTimestamp();
        Simulator.Run(x);
        best = Math.Min(best, Stopwatch.GetElapsedTime(t0).TotalMilliseconds);
    }
    Console.WriteLine($"rate {rate} {best:0.00} ms");
}
return 0;
