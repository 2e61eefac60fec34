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
            foreach (FileAccuracy a in Of(file, count))
            {
                Console.WriteLine(
                    $"{Path.GetFileNameWithoutExtension(file),-20} {a.Precision,-6} {a.Evaluations,6} evaluations, {a.Core:0.000} ms of a core, {1.0 / a.Core * 1e3:0} a second on one core, ground off {a.Median:0.000} mm (median), {a.NineOfTen:0.000} (9 of 10), {a.Worst:0.0} (worst), bias {a.Bias:+0.000;-0.000}, {a.Winners} of {count} winners change");
            }
        }
    }

    /// <summary>One for each precision, doubles first.</summary>
    public static IEnumerable<FileAccuracy> Of(string file, int count)
    {
        DrawableScenario scenario = DrawableScenario.Open(file).Scenario!;
        var source = new FileMatchSource(scenario, new ContestKey(1, scenario.Label));
        (double[] exact, int[] right, _, _) = Play(source, count, Precision.Double, s => s with { Method = "ARK4(3)", Tolerance = 1e-6 });
        foreach (Precision precision in new[] { Precision.Double, Precision.Single })
        {
            (double[] ground, int[] winner, long work, double cpu) = Play(source, count, precision, s => s);
            double[] by = [.. ground.Zip(exact, (a, b) => 1e3 * (a - b)).Where(double.IsFinite).Order()];
            double[] off = [.. by.Select(Math.Abs).Order()];
            yield return new FileAccuracy(precision, work / count, cpu / count, off[off.Length / 2], off[off.Length * 9 / 10], off[^1], by[by.Length / 2], winner.Zip(right, (a, b) => a == b ? 0 : 1).Sum());
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

/// <summary>Drawn matches of a file against the reference.</summary>
/// <param name="Precision">Number type.</param>
/// <param name="Evaluations">Evaluations a match [1].</param>
/// <param name="Core">Time of a core a match [ms].</param>
/// <param name="Median">Ground off, median [mm].</param>
/// <param name="NineOfTen">Ground off of nine in ten at most [mm].</param>
/// <param name="Worst">Ground off at most [mm].</param>
/// <param name="Bias">Ground off with its sign, median [mm].</param>
/// <param name="Winners">Winners that change [1].</param>
internal sealed record FileAccuracy(Precision Precision, long Evaluations, double Core, double Median, double NineOfTen, double Worst, double Bias, int Winners);
