using System.Runtime.InteropServices;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Numerics;

/// <summary>Runs in lanes against the same runs one by one: the same bits in every width, whatever runs beside them.</summary>
public class LaneIntegrationTests
{
    private const int Count = 120;

    public static TheoryData<string> Methods => [.. AdditiveTableau.All.Select(t => t.Name)];

    [Theory]
    [MemberData(nameof(Methods))]
    public void Every_width_gives_the_bits_of_the_scalar_integrator(string method)
    {
        AdditiveTableau tableau = AdditiveTableau.ByName(method);
        Outcome[] alone = [.. Enumerable.Range(0, Count).Select(i => Alone(Job.Draw(i), tableau))];
        Assert.All(Enum.GetValues<IntegrationStatus>(), s => Assert.Contains(alone, o => o.Report.Status == s));
        Assert.Contains(alone, o => o.Report.Rejected > 0);
        Same(alone, InLanes<R1>(tableau, reversed: false));
        Same(alone, InLanes<R4>(tableau, reversed: false));
        Same(alone, InLanes<R8>(tableau, reversed: false));
    }

    [Fact]
    public void The_order_of_the_queue_changes_nothing()
    {
        AdditiveTableau tableau = AdditiveTableau.ByName("ARK4(3)");
        Outcome[] forward = InLanes<R4>(tableau, reversed: false);
        Same(forward, InLanes<R4>(tableau, reversed: true));
        Same(forward, InLanes<R8>(tableau, reversed: true));
    }

    [Fact]
    public void Nothing_is_allocated_per_run()
    {
        AdditiveTableau tableau = AdditiveTableau.ByName("ARK4(3)");
        Job[] jobs = [.. Enumerable.Range(0, Count).Select(Job.Draw)];
        var feed = new Feed<R4>(jobs);
        var lanes = new LaneIntegration<R4, Feed<R4>, Feed<R4>>(feed, feed, tableau);
        lanes.Run();
        long least = long.MaxValue;
        for (int i = 0; i < 5; i++)
        {
            feed.Rewind();
            long before = GC.GetAllocatedBytesForCurrentThread();
            lanes.Run();
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.Equal(0, least);
    }

    private static void Same(Outcome[] expected, Outcome[] actual)
    {
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i].Report, actual[i].Report);
            Assert.Equal(expected[i].Y.Select(BitConverter.DoubleToInt64Bits), actual[i].Y.Select(BitConverter.DoubleToInt64Bits));
        }
    }

    private static Outcome Alone(Job job, AdditiveTableau tableau)
    {
        var system = new Scalar(job);
        var integration = new SingleRun<Scalar>(system, tableau);
        double[] y = [.. job.Start];
        var observer = new StopAt(job.Limit);
        return new Outcome(integration.Run(0.0, job.End, y, job.Breakpoints, job.Settings, observer), y);
    }

    private static Outcome[] InLanes<T>(AdditiveTableau tableau, bool reversed)
        where T : struct, ILanes<T>, IReal<T>
    {
        Job[] jobs = [.. Enumerable.Range(0, Count).Select(Job.Draw)];
        var feed = new Feed<T>(reversed ? [.. jobs.Reverse()] : jobs);
        new LaneIntegration<T, Feed<T>, Feed<T>>(feed, feed, tableau).Run();
        return reversed ? [.. feed.Outcomes.Reverse()] : feed.Outcomes;
    }

    private sealed class Outcome(IntegrationOutcome report, double[] y)
    {
        public IntegrationOutcome Report { get; set; } = report;

        public double[] Y { get; } = y;
    }

    // Numbers of one run: a driven oscillator x, u with a stiff follower z of x, the integral of z, and a gain that jumps.
    private sealed record Job(double[] Start, double Lambda, double Omega, double[] Gains, double[] Breakpoints, double End, double Limit, double Longest, IntegrationSettings Settings)
    {
        public static Job Draw(int seed)
        {
            var r = new Random(seed);
            double tolerance = Math.Pow(10.0, -3.0 - (4.0 * r.NextDouble()));
            double[] cuts = [.. Enumerable.Range(0, r.Next(4)).Select(_ => 4.0 * r.NextDouble()).Order()];
            int kind = seed % 12;
            return new Job(
                [r.NextDouble(), r.NextDouble(), 0.0, r.NextDouble()],
                Math.Pow(10.0, 1.0 + (5.0 * r.NextDouble())), 1.0 + (20.0 * r.NextDouble()),
                [.. Enumerable.Range(0, cuts.Length + 1).Select(i => kind == 3 && i == cuts.Length ? double.NaN : (2.0 * r.NextDouble()) - 1.0)],
                cuts, 1.0 + (3.0 * r.NextDouble()), kind == 5 ? 0.9 : 1e3, r.Next(3) == 0 ? 0.01 : double.PositiveInfinity,
                new IntegrationSettings
                {
                    RelativeTolerance = tolerance,
                    AbsoluteTolerances = [tolerance, tolerance * 2.0, double.PositiveInfinity, tolerance],
                    InitialStep = kind == 7 ? 0.5 : null,
                    MinimumStep = kind == 9 ? 0.4 : 1e-12,
                    MaximumStep = kind == 1 ? 0.003 : double.PositiveInfinity,
                    MaximumEvaluations = kind == 11 ? 100 : 10_000_000,
                });
        }
    }

    private static void Rates<T>(T lambda, T omega, T gain, T t, T g, Span<T> y, Span<T> dy)
        where T : struct, IReal<T>
    {
        T.SinCos(3.0 * t, out T s, out _);
        dy[0] = y[1];
        dy[1] = (gain * s) - (omega * omega * (y[0] + (y[0] * y[0] * y[0]))) - (0.1 * y[3]);
        T z = T.Fma(g * lambda, y[0], y[3]) / (1.0 + (g * lambda));
        dy[3] = lambda * (y[0] - z);
        y[3] = z;
        dy[2] = z;
    }

    private sealed class Scalar(Job job) : IAdditiveSystem, ISegmented
    {
        private double _gain;

        public int ExplicitCount => 3;

        public int ImplicitCount => 1;

        public double LongestStep => job.Longest;

        public void EnterSegment(int index) => _gain = job.Gains[index];

        public void Evaluate(double t, double g, Span<double> y, Span<double> dy) =>
            Rates<R1>(job.Lambda, job.Omega, _gain, t, g, MemoryMarshal.Cast<double, R1>(y), MemoryMarshal.Cast<double, R1>(dy));
    }

    private struct StopAt(double limit) : IStepObserver
    {
        public readonly StepDecision OnStep(DenseOutput step) => step.Y1[0] > limit ? StepDecision.Stop : StepDecision.Continue;
    }

    // The third component, an integral, is integrated here too, so that its bits are compared.
    private sealed class Feed<T>(Job[] jobs) : ILaneSystem<T>, ILaneFeed<T>
        where T : struct, ILanes<T>, IReal<T>
    {
        private readonly int[] _job = new int[T.Lanes];
        private readonly double[] _last = new double[4 * T.Lanes];
        private T _lambda = 1.0, _omega = 1.0, _gain = 0.0;
        private int _next;

        public Outcome[] Outcomes { get; } = [.. jobs.Select(_ => new Outcome(default, new double[4]))];

        public int ExplicitCount => 3;

        public int ImplicitCount => 1;

        public IReadOnlyList<(int From, int To)> ExplicitRanges => [(0, 3)];

        public void Rewind() => _next = 0;

        public void Evaluate(T t, T g, Span<T> y, ReadOnlySpan<T> predicted, Span<T> dy) => Rates(_lambda, _omega, _gain, t, g, y, dy);

        public bool TryBegin(int lane, Span<double> y, out LaneRun run)
        {
            if (_next == jobs.Length)
            {
                run = default;
                return false;
            }

            Job job = jobs[_next];
            _job[lane] = _next++;
            job.Start.CopyTo(y);
            job.Start.CopyTo(_last.AsSpan(4 * lane));
            Lane.Set(ref _lambda, lane, job.Lambda);
            Lane.Set(ref _omega, lane, job.Omega);
            run = new LaneRun(0.0, job.End, job.Breakpoints, job.Settings);
            return true;
        }

        public double EnterSegment(int lane, int index)
        {
            Lane.Set(ref _gain, lane, jobs[_job[lane]].Gains[index]);
            return jobs[_job[lane]].Longest;
        }

        public void OnStepEnds()
        {
        }

        public StepDecision OnStep(int lane, in LaneStep step)
        {
            for (int i = 0; i < 4; i++)
            {
                _last[(4 * lane) + i] = step.Y1(i);
            }

            return step.Y1(0) > jobs[_job[lane]].Limit ? StepDecision.Stop : StepDecision.Continue;
        }

        public void End(int lane, in IntegrationOutcome report)
        {
            _last.AsSpan(4 * lane, 4).CopyTo(Outcomes[_job[lane]].Y);
            Outcomes[_job[lane]].Report = report;
        }
    }
}
