using System.Diagnostics;
using PushSim.Numerics;
using PushSim.Runs;
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

        Scalar(s, threads, count);
        AtEqualError(s, threads);
    }

    private static void Scalar(ScenarioSettings s, int threads, int count)
    {
        int few = Math.Max(20, count / 20);
        MatchBatch.RunAlone(0, RandomMatches.Draw(s, 0));
        long start = Stopwatch.GetTimestamp();
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        for (int i = 0; i < few; i++)
        {
            MatchBatch.RunAlone(i, RandomMatches.Draw(s, i));
        }

        double spent = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds;
        Console.WriteLine($"scalar integrator, one thread: {Stopwatch.GetElapsedTime(start).TotalMilliseconds / few:0.00} ms a match, {spent / few:0.00} ms of a core, so at most {1e3 * threads * few / spent:0} matches/s");
        Simulator.Run(RandomMatches.Draw(s, 0));
        start = Stopwatch.GetTimestamp();
        for (int i = 0; i < few; i++)
        {
            Simulator.Run(RandomMatches.Draw(s, i));
        }

        Console.WriteLine($"recorded run, one thread: {Stopwatch.GetElapsedTime(start).TotalMilliseconds / few:0.00} ms a match");
    }

    // Ground gained is not enough to compare by: places of the first robot at the end, mean over a few matches.
    private static void AtEqualError(ScenarioSettings s, int threads)
    {
        const int few = 4;
        int[] steps = [12_500, 25_000, 50_000, 100_000];
        double off = 0.0;
        double[] offGeneral = new double[steps.Length], cpu = new double[steps.Length];
        for (int i = 0; i < few; i++)
        {
            ScenarioSettings match = SceneBuilder.InCanonicalOrder(RandomMatches.Draw(s, i));
            double[] exact = Place(match with { Numerics = match.Numerics with { Tolerance = 1e-9, Method = "ARK4(3)" } });
            off += Distance(Place(match), exact) / few;
            for (int k = 0; k < steps.Length; k++)
            {
                TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
                offGeneral[k] += Distance(GeneralPackage.FixedStep(match, steps[k]).Y, exact) / few;
                cpu[k] += (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds / few;
            }
        }

        Console.WriteLine($"error of the lanes and of the scalar integrator: {1e3 * off:0.00} mm");
        for (int k = 0; k < steps.Length; k++)
        {
            Console.WriteLine($"general package's RK4, {steps[k],6} steps: {cpu[k]:0} ms of a core a match, so at most {1e3 * threads / cpu[k]:0.0} matches/s, off {1e3 * offGeneral[k]:0.00} mm");
        }
    }

    private static double[] Place(ScenarioSettings match)
    {
        var system = new SceneSystem(match);
        double[] y = system.InitialState();
        var observer = default(Blind);
        new SingleRun<SceneSystem>(system, AdditiveTableau.ByName(match.Numerics.Method))
            .Run(0.0, match.Manoeuvre.EndTime, y, system.Breakpoints, Simulator.Settings(match, system), observer);
        return y;
    }

    private static double Distance(double[] a, double[] b) => double.Hypot(a[0] - b[0], a[1] - b[1]);

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
