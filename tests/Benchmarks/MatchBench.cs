using System.Diagnostics;
using PushSim.Analysis;
using PushSim.Simulation;
using PushSim.Tests;

namespace PushSim.Benchmarks;

/// <summary>Matches per second of the lanes, of the scalar integrator and of recorded runs, in one run: `Benchmarks matches [MATCHES] [TOLERANCE] [THREADS]`.</summary>
internal static class MatchBench
{
    public static void Run(string[] args)
    {
        int count = args.Length > 0 ? int.Parse(args[0]) : 1000;
        double tolerance = args.Length > 1 ? double.Parse(args[1]) : 1e-3;
        int threads = args.Length > 2 ? int.Parse(args[2]) : 2;
        string method = args.Length > 3 ? args[3] : "ARK4(3)";
        ScenarioSettings s = RandomMatches.Damped();
        s = s with { Numerics = s.Numerics with { Tolerance = tolerance, Method = method }, Shove = s.Shove with { Line = 50.0 } };
        Console.WriteLine($"3 s shove of two four-wheel robots, damped tyres, {method} at {tolerance:0e0}, {threads} threads");
        foreach (int lanes in args.Length > 4 ? [int.Parse(args[4])] : new[] { 8, 4, 1 })
        {
            var batch = new MatchBatch(threads, lanes);
            Time(batch, s, Math.Max(lanes * threads, count / 10));
            GC.Collect();
            long bytes = GC.GetTotalAllocatedBytes();
            (double seconds, long evaluations, long rejected, double cpu) = Time(batch, s, count);
            bytes = GC.GetTotalAllocatedBytes() - bytes;
            Console.WriteLine(
                $"{lanes} lanes: {count / seconds,7:0} matches/s, {1e3 * cpu / count:0.000} ms of a core per match, {evaluations / count} evaluations, {(double)rejected / count:0} rejected steps, {bytes / count} bytes allocated per match");
        }

        if (args.Length > 4)
        {
            return;
        }

        int few = Math.Max(20, count / 20);
        MatchBatch.RunAlone(0, RandomMatches.Draw(s, 0));
        long start = Stopwatch.GetTimestamp();
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        for (int i = 0; i < few; i++)
        {
            MatchBatch.RunAlone(i, RandomMatches.Draw(s, i));
        }

        double spent = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds;
        Console.WriteLine($"scalar integrator, one thread: {Stopwatch.GetElapsedTime(start).TotalMilliseconds / few:0.00} ms a match, {spent / few:0.00} ms of a core");
        Simulator.Run(RandomMatches.Draw(s, 0));
        start = Stopwatch.GetTimestamp();
        for (int i = 0; i < few; i++)
        {
            Simulator.Run(RandomMatches.Draw(s, i));
        }

        Console.WriteLine($"recorded run, one thread: {Stopwatch.GetElapsedTime(start).TotalMilliseconds / few:0.00} ms a match");
    }

    private static (double Seconds, long Evaluations, long Rejected, double Cpu) Time(MatchBatch batch, ScenarioSettings s, int count)
    {
        long evaluations = 0, rejected = 0;
        TimeSpan cpu = Process.GetCurrentProcess().TotalProcessorTime;
        long start = Stopwatch.GetTimestamp();
        batch.Run(0, count, i => RandomMatches.Draw(s, i), (in MatchOutcome o) =>
        {
            evaluations += o.Evaluations;
            rejected += o.RejectedSteps;
        });
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        return (seconds, evaluations, rejected, (Process.GetCurrentProcess().TotalProcessorTime - cpu).TotalSeconds);
    }
}
