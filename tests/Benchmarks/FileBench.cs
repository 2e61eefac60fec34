using PushSim.Analysis.Chance;
using PushSim.Runs;
using PushSim.Scenarios.Drawing;
using PushSim.Simulation;

namespace PushSim.Benchmarks;

/// <summary>Drawn matches of scenario files at the accuracy of draws against a fine reference: `Benchmarks files MATCHES FILE...`. Ground off, winners that change, evaluations and core time a match.</summary>
internal static class FileBench
{
    public static void Run(string[] args)
    {
        int count = int.Parse(args[0]);
        foreach (string file in args[1..])
        {
            DrawableScenario scenario = DrawableScenario.Open(file).Scenario!;
            var source = new FileMatchSource(scenario, new ContestKey(1, scenario.Label));
            (double[] exact, int[] right, _, _) = Play(source, count, Precision.Double, s => s with { Method = "ARK4(3)", Tolerance = 1e-6 });
            foreach (Precision precision in Enum.GetValues<Precision>())
            {
                (double[] ground, int[] winner, long work, double cpu) = Play(source, count, precision, s => s);
                double[] by = [.. ground.Zip(exact, (a, b) => 1e3 * (a - b)).Where(double.IsFinite).Order()];
                double[] off = [.. by.Select(Math.Abs).Order()];
                Console.WriteLine(
                    $"{Path.GetFileNameWithoutExtension(file),-20} {precision,-6} {work / count,6} evaluations, {cpu / count:0.000} ms of a core, {1e3 * count / cpu:0} a second on one core, ground off {off[off.Length / 2]:0.000} mm (median), {off[off.Length * 9 / 10]:0.000} (9 of 10), {off[^1]:0.0} (worst), bias {by[by.Length / 2]:+0.000;-0.000}, {winner.Zip(right, (a, b) => a == b ? 0 : 1).Sum()} of {count} winners change");
            }
        }
    }

    private static (double[] Ground, int[] Winner, long Work, double Cpu) Play(FileMatchSource source, int count, Precision precision, Func<NumericsSettings, NumericsSettings> change)
    {
        double[] ground = new double[count];
        int[] winner = new int[count];
        long work = 0;
        var batch = new MatchBatch(2, precision: precision);
        TimeSpan cpu = default;
        foreach (int n in new[] { Math.Min(64, count), count })
        {
            // the first few are for the JIT
            cpu = System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime;
            work = 0;
            batch.Run(0, n, i => Changed(source.Match(i, out _)!), (in MatchOutcome o) =>
            {
                (ground[o.Number], winner[o.Number]) = (o.GroundGained, o.Winner);
                work += o.Evaluations;
            });
        }

        return (ground, winner, work, (System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime - cpu).TotalMilliseconds);

        ScenarioSettings Changed(ScenarioSettings s) => s with { Numerics = change(s.Numerics) with { Precision = precision } };
    }
}
