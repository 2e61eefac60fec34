using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests;

namespace PushSim.Benchmarks;

/// <summary>Error of the ground gained against work, over drawn matches, for each method and tolerance.</summary>
internal static class AccuracyBench
{
    public static void Run()
    {
        const int Count = 48;
        ScenarioSettings s = RandomMatches.Damped();
        s = s with { Shove = s.Shove with { Line = 50.0 } };
        var batch = new MatchBatch();
        double[] exact = Play(batch, s, "ARK4(3)", 1e-8, Count, out _);
        foreach (string method in new[] { "ARK3(2)", "ARK4(3)", "ARK5(4)" })
        {
            foreach (double tolerance in new[] { 1e-2, 3e-3, 1e-3, 1e-4, 1e-5 })
            {
                double[] off = [.. Play(batch, s, method, tolerance, Count, out long evaluations).Zip(exact, (a, b) => 1e3 * Math.Abs(a - b)).Order()];
                Console.WriteLine($"{method} at {tolerance:0e0}: {evaluations / Count,6} evaluations, ground off {off[Count / 2]:0.000} mm (median), {off[Count * 9 / 10]:0.000} mm (9 of 10), {off[^1]:0.0} mm (worst)");
            }
        }
    }

    private static double[] Play(MatchBatch batch, ScenarioSettings s, string method, double tolerance, int count, out long evaluations)
    {
        double[] ground = new double[count];
        long work = 0;
        ScenarioSettings t = s with { Numerics = s.Numerics with { Method = method, Tolerance = tolerance } };
        batch.Run(0, count, i => RandomMatches.Draw(t, i), (in MatchOutcome o) => (ground[o.Number], work) = (o.GroundGained, work + o.Evaluations));
        evaluations = work;
        return ground;
    }
}
