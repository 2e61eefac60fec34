using System.Diagnostics;
using System.Reflection;
using System.Runtime.Loader;

namespace PushSim.Benchmarks;

/// <summary>Engine time of a run of each file, settled, beside that of another build: `Benchmarks runs [--base FOLDER] FILE...`, where the folder holds that build's PushSim.Scenarios.dll
/// and what it needs. Both take turns in one process, so that noise of the machine meets both.</summary>
internal static class RunBench
{
    // Rounds whose least time counts [1], and time after which no more begin [s].
    private const int Rounds = 12;
    private const double Longest = 20.0;

    public static void Run(string[] args)
    {
        string? folder = args is ["--base", string given, ..] ? given : null;
        Engine own = new(typeof(Scenarios.ScenarioReader).Assembly);
        Engine? other = folder is null ? null : new(new Beside(Path.GetFullPath(folder)).LoadFromAssemblyPath(Path.GetFullPath(Path.Combine(folder, "PushSim.Scenarios.dll"))));
        List<double> ratios = [];
        foreach (string file in folder is null ? args : args[2..])
        {
            object[] scenarios = [.. new[] { own, other }.OfType<Engine>().Select(e => e.Read(file)).OfType<object>()];
            if (scenarios.Length < (other is null ? 1 : 2))
            {
                Console.WriteLine($"{Path.GetFileNameWithoutExtension(file),-24} is not read by both");
                continue;
            }

            double[] best = [.. scenarios.Select(_ => double.MaxValue)];
            long start = Stopwatch.GetTimestamp();
            long[] work = new long[best.Length];
            for (int n = 0; n < Rounds && (n < 3 || Stopwatch.GetElapsedTime(start).TotalSeconds < Longest); n++)
            {
                for (int k = 0; k < best.Length; k++)
                {
                    (double ms, work[k]) = (k == 0 ? own : other!).Time(scenarios[k]);
                    best[k] = Math.Min(best[k], ms);
                }
            }

            Console.Write($"{Path.GetFileNameWithoutExtension(file),-24} {work[0],8} evaluations, {best[0],8:0.00} ms");
            if (best.Length == 2)
            {
                ratios.Add(best[0] / best[1]);
                Console.Write($"; base {work[1],8} evaluations, {best[1],8:0.00} ms; {best[0] / best[1]:0.00} times as long");
            }

            Console.WriteLine();
        }

        if (ratios.Count > 0)
        {
            ratios.Sort();
            Console.WriteLine($"{ratios.Count} files: {ratios[ratios.Count / 2]:0.00} times as long in the median, {ratios[0]:0.00} at least, {ratios[^1]:0.00} at most");
        }
    }

    // A build's reader and simulator.
    private sealed class Engine(Assembly scenarios)
    {
        private readonly MethodInfo _read = scenarios.GetType("PushSim.Scenarios.ScenarioReader")!.GetMethod("Read")!;

        public object? Read(string file)
        {
            object result = _read.Invoke(null, [file, null])!;
            return result.GetType().GetProperty("Scenario")!.GetValue(result);
        }

        public (double Milliseconds, long Evaluations) Time(object scenario)
        {
            MethodInfo run = scenario.GetType().Assembly.GetType("PushSim.Runs.Simulator")!.GetMethod("Run", [scenario.GetType(), typeof(CancellationToken)])!;
            long start = Stopwatch.GetTimestamp();
            object result = run.Invoke(null, [scenario, CancellationToken.None])!;
            double ms = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            return (ms, Convert.ToInt64(result.GetType().GetProperty("RhsEvaluations")!.GetValue(result)));
        }
    }

    // The base's assemblies, apart from this build's.
    private sealed class Beside(string folder) : AssemblyLoadContext("base")
    {
        protected override Assembly? Load(AssemblyName name)
        {
            string path = Path.Combine(folder, name.Name + ".dll");
            return File.Exists(path) ? LoadFromAssemblyPath(path) : null;
        }
    }
}
