using System.Diagnostics;
using System.Runtime.InteropServices;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests;

namespace PushSim.Benchmarks;

/// <summary>
/// Nanoseconds per right-hand-side pass of a shove in one, four and eight lanes, best of short rounds once it falls no more: guards against the
/// JIT giving up inlining, and tells the pass from the integrator around it.
/// </summary>
internal static class LanePassTimer
{
    public static void Run()
    {
        foreach ((string name, double at) in new[] { ("apart", 0.12), ("touching", 1.0) })
        {
            double one = Pass<R1>(at), four = Pass<R4>(at), eight = Pass<R8>(at);
            Console.WriteLine($"pass of a shove, {name,-8}: scalar {one:0} ns, 4 lanes {four:0} ns ({4 * one / four:0.0} times as fast), 8 lanes {eight:0} ns ({8 * one / eight:0.0} times as fast)");
        }
    }

    private static double Pass<T>(double at)
        where T : struct, ILanes<T>, IReal<T>
    {
        ScenarioSettings s = RandomMatches.Damped();
        s = s with { Shove = s.Shove with { Line = 50.0 }, Manoeuvre = s.Manoeuvre with { EndTime = at } };
        LaneScene<T>? scene = null;
        double[] store = [];
        var queue = new Numbers(s);
        var match = new PreparedMatch();
        for (int lane = 0; lane < T.Lanes; lane++)
        {
            match.Prepare(lane, RandomMatches.Draw(s, lane));
            if (scene is null)
            {
                scene = new LaneScene<T>(match);
                scene.Take(queue);
                store = GC.AllocateArray<double>((2 * match.Start.Length * T.Lanes) + 8, pinned: true);
            }

            scene.TryBegin(lane, match.Start, out _);
            scene.EnterSegment(lane, match.Breakpoints.Length);
            double[] y = [.. match.Start];
            var observer = new Blind();
            new SingleRun<SceneSystem>(match.Scene!, match.Tableau).Run(0.0, at, y, match.Breakpoints, match.Settings, observer);
            for (int i = 0; i < y.Length; i++)
            {
                store[Aligned(store) + (i * T.Lanes) + lane] = y[i];
            }
        }

        int n = match.Start.Length * T.Lanes;
        double[] kept = [.. store.AsSpan(Aligned(store), n)];
        var settled = new Settled();
        while (!settled.IsReached)
        {
            const int passes = 100;
            Span<T> y = MemoryMarshal.Cast<double, T>(store.AsSpan(Aligned(store), n));
            Span<T> dy = MemoryMarshal.Cast<double, T>(store.AsSpan(Aligned(store) + n, n));
            kept.CopyTo(store.AsSpan(Aligned(store)));
            long t0 = Stopwatch.GetTimestamp();
            for (int i = 0; i < passes; i++)
            {
                scene!.Evaluate(at, 1e-6, y, y[scene.ExplicitCount..], dy);
            }

            settled.Add(Stopwatch.GetElapsedTime(t0).TotalNanoseconds / passes);
        }

        return settled.Best;
    }

    private static unsafe int Aligned(double[] pinned)
    {
        fixed (double* p = pinned)
        {
            return (int)((8 - (((ulong)p / 8) % 8)) % 8);
        }
    }

    private sealed class Numbers(ScenarioSettings s) : IMatchQueue
    {
        private long _next;

        public bool TryTake(PreparedMatch match)
        {
            match.Prepare(_next, RandomMatches.Draw(s, _next));
            _next++;
            return true;
        }

        public void Done(in MatchOutcome outcome)
        {
        }
    }
}
