using PushSim.Numerics;
using PushSim.Tests.Problems;
using Xunit;

namespace PushSim.Tests.Numerics;

/// <summary>Step control, failure, breakpoints, cost of the driver.</summary>
public class IntegrationTests
{
    public static TheoryData<string> Names => new(AdditiveTableau.All.Select(t => t.Name));

    [Theory]
    [MemberData(nameof(Names))]
    public void Evaluations_are_the_stages_plus_one_per_step(string name)
    {
        AdditiveTableau tableau = AdditiveTableau.ByName(name);
        Brusselator p = new();
        SingleRun<Problem> integration = new(p, tableau);
        SilentObserver observer = new();
        IntegrationOutcome r = integration.Run(0.0, p.End, p.Start, [], Settings(2, 1e-4), observer);

        // two at the start: k_1 and the estimate of the first step; a rejected trial keeps k_1
        int implicitStages = tableau.Stages - 1;
        Assert.True(r.Rejected > 0);
        Assert.Equal(2 + (r.Steps * (implicitStages + 1)) + (r.Rejected * implicitStages), r.Evaluations);
        Assert.Equal(p.Calls, r.Evaluations);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_is_allocated_by_a_warm_run(string name)
    {
        double[] breakpoints = [0.5];
        StiffFollower p = new(1000.0);
        SingleRun<StiffFollower> integration = new(p, AdditiveTableau.ByName(name));
        IntegrationSettings settings = Settings(2, 1e-6);
        double[] y = p.Start;
        SilentObserver observer = new();
        integration.Run(0.0, 1.0, y, breakpoints, settings, observer);

        long before = GC.GetAllocatedBytesForCurrentThread();
        IntegrationOutcome r = integration.Run(0.0, 1.0, y, breakpoints, settings, observer);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.True(r.Steps > 10);
        Assert.Equal(0, allocated);
    }

    [Fact]
    public void Trial_that_turns_NaN_is_rejected_with_the_smallest_factor()
    {
        LogDecay p = new();
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName("ARK4(3)"));
        double[] y = p.Start;
        StepRecorder observer = new();
        IntegrationOutcome r = integration.Run(0.0, p.End, y, [], Settings(1, 1e-6) with { InitialStep = 10.0 }, observer);

        Assert.Equal(IntegrationStatus.Completed, r.Status);
        Assert.True(r.Rejected >= 1);
        Assert.Equal(2.0, p.Steps[1] / p.Steps[0] * 10.0, 1e-12); // factor 0.2, the smallest
        Assert.InRange(Math.Abs(y[0] - p.Reference[0]), 0.0, 5e-6 * (1.0 + y[0]));
    }

    [Fact]
    public void Blow_up_ends_with_status_and_time()
    {
        BlowUp p = new();
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName("ARK4(3)"));
        double[] y = p.Start;
        SilentObserver observer = new();
        IntegrationOutcome r = integration.Run(0.0, 2.0, y, [], Settings(1, 1e-6), observer);

        Assert.Equal(IntegrationStatus.StepTooSmall, r.Status);
        Assert.InRange(r.Time, 0.9999, 1.0001);
        Assert.True(double.IsFinite(y[0]));
    }

    [Fact]
    public void Derivatives_that_are_NaN_at_the_start_end_the_run_there()
    {
        LogDecay p = new();
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName("ARK3(2)"));
        SilentObserver observer = new();
        IntegrationOutcome r = integration.Run(0.5, 1.0, [-1.0], [], Settings(1, 1e-6), observer);
        Assert.Equal((IntegrationStatus.NotFinite, 0.5, 0), (r.Status, r.Time, r.Steps));
    }

    [Theory]
    [InlineData(50)]
    [InlineData(333)]
    public void Cap_on_evaluations_holds(int cap)
    {
        Pleiades p = new();
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName("ARK4(3)"));
        SilentObserver observer = new();
        IntegrationOutcome r = integration.Run(0.0, 3.0, p.Start, [], Settings(28, 1e-6) with { MaximumEvaluations = cap }, observer);

        Assert.Equal(IntegrationStatus.EvaluationCap, r.Status);
        Assert.InRange(r.Evaluations, cap - 6, cap);
        Assert.Equal(p.Calls, r.Evaluations);
        Assert.InRange(r.Time, 1e-6, 2.9);
    }

    [Fact]
    public void Steps_end_on_every_breakpoint_to_the_bit_and_slopes_belong_to_their_segment()
    {
        double[] breakpoints = [-1.0, 0.1, 0.3, 0.1 + 0.2, 0.7, 1.0, 5.0];
        SingleRun<Ramp> integration = new(new Ramp(breakpoints.Length), AdditiveTableau.ByName("ARK4(3)"));
        StepRecorder observer = new();
        double[] y = [0.0];
        IntegrationOutcome r = integration.Run(0.0, 1.5, y, breakpoints, Settings(1, 1e-6), observer);

        Assert.Equal((IntegrationStatus.Completed, 1.5), (r.Status, r.Time));
        foreach (double b in breakpoints[1..^1])
        {
            Assert.Contains(b, observer.Ends);
        }

        for (int i = 0; i < observer.Ends.Count; i++)
        {
            double rate = Ramp.Rate(breakpoints.Count(b => b <= observer.Starts[i]));
            Assert.Equal((rate, rate), (observer.StartSlopes[i], observer.EndSlopes[i]));
        }

        double exact = (0.1 * Ramp.Rate(1)) + (0.2 * Ramp.Rate(2)) + (0.4 * Ramp.Rate(4)) + (0.3 * Ramp.Rate(5)) + (0.5 * Ramp.Rate(6));
        Assert.Equal(exact, y[0], 1e-13);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Equal_components_get_equal_bits_wherever_they_lie(string name)
    {
        // Seven copies: four in a vector, three in the scalar tail.
        SingleRun<Copies> integration = new(new Copies(), AdditiveTableau.ByName(name));
        double[] y = [.. Enumerable.Repeat(1.0 / 3.0, 7)];
        SilentObserver observer = new();
        integration.Run(0.0, 7.0, y, [], Settings(7, 1e-5), observer);
        Assert.All(y, value => Assert.Equal(BitConverter.DoubleToInt64Bits(y[0]), BitConverter.DoubleToInt64Bits(value)));
        Assert.NotEqual(1.0 / 3.0, y[0]);
    }

    [Fact]
    public void Component_with_infinite_tolerance_does_not_move_the_steps()
    {
        IntegrationOutcome with = RunWithQuadrature(double.PositiveInfinity);
        IntegrationOutcome judged = RunWithQuadrature(1e-9);
        Assert.True(with.Steps * 3 < judged.Steps, $"{with.Steps} steps out of the norm, {judged.Steps} in it");
    }

    [Theory]
    [InlineData(0, double.NaN)]
    [InlineData(3, double.PositiveInfinity)]
    [InlineData(5, double.NaN)]
    [InlineData(6, double.NegativeInfinity)]
    public void Trial_is_not_a_number_if_any_component_is_not_finite_even_outside_the_norm(int component, double value)
    {
        SingleRun<Spoiled> run = new(new Spoiled(component, value), AdditiveTableau.ByName("ARK4(3)"));
        IntegrationSettings settings = Settings(7, 1.0) with { InitialStep = 0.2, MinimumStep = 0.1 };
        settings.AbsoluteTolerances[component] = double.PositiveInfinity;
        IntegrationOutcome spoiled = run.Run(0.0, 0.2, new double[7], [], settings, new SilentObserver());
        Assert.Equal((IntegrationStatus.StepTooSmall, 0.0), (spoiled.Status, spoiled.Time));
        Assert.Equal(IntegrationStatus.Completed, run.Run(0.0, 0.05, new double[7], [], settings, new SilentObserver()).Status);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    public void New_state_that_overflows_with_finite_slopes_is_not_accepted(int component)
    {
        SingleRun<Spoiled> run = new(new Spoiled(component, 1e308), AdditiveTableau.ByName("ARK4(3)"));
        double[] y = new double[7];
        y[component] = 1.7e308;
        IntegrationOutcome report = run.Run(0.2, 1.2, y, [], Settings(7, 1.0) with { InitialStep = 1.0, MinimumStep = 0.5 }, new SilentObserver());
        Assert.Equal((IntegrationStatus.StepTooSmall, 0.2), (report.Status, report.Time));
    }

    [Fact]
    public void Second_run_repeats_the_first_to_the_bit()
    {
        Brusselator p = new();
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName("ARK5(4)"));
        (double[] first, double[] second) = (p.Start, p.Start);
        SilentObserver observer = new();
        IntegrationOutcome a = integration.Run(0.0, 20.0, first, [3.0], Settings(2, 1e-5), observer);
        IntegrationOutcome b = integration.Run(0.0, 20.0, second, [3.0], Settings(2, 1e-5), observer);
        Assert.Equal(a, b);
        Assert.Equal(first, second);
    }

    [Fact]
    public void Observer_stops_the_run()
    {
        Brusselator p = new();
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName("ARK4(3)"));
        StepRecorder observer = new() { StopAfter = 3 };
        IntegrationOutcome r = integration.Run(0.0, 20.0, p.Start, [], Settings(2, 1e-5), observer);
        Assert.Equal((IntegrationStatus.Stopped, 3), (r.Status, r.Steps));
        Assert.Equal(observer.Ends[^1], r.Time);
    }

    [Fact]
    public void Empty_span_needs_no_evaluation()
    {
        Brusselator p = new();
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName("ARK4(3)"));
        SilentObserver observer = new();
        IntegrationOutcome r = integration.Run(2.0, 2.0, p.Start, [], Settings(2, 1e-5), observer);
        Assert.Equal(new IntegrationOutcome(IntegrationStatus.Completed, 2.0, 0, 0, 0), r);
    }

    [Fact]
    public void Span_that_runs_backwards_is_a_programming_mistake()
    {
        SingleRun<Problem> integration = new(new Brusselator(), AdditiveTableau.ByName("ARK4(3)"));
        SilentObserver observer = new();
        Assert.Throws<ArgumentException>(() => integration.Run(2.0, 1.0, [1.0, 1.0], [], Settings(2, 1e-5), observer));
    }

    [Fact]
    public void Longest_step_is_kept()
    {
        Detest p = new(1);
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName("ARK4(3)"));
        StepRecorder observer = new();
        integration.Run(0.0, 20.0, p.Start, [], Settings(1, 1e-3) with { MaximumStep = 0.125 }, observer);
        Assert.InRange(observer.Ends.Zip(observer.Starts, (e, s) => e - s).Max(), 0.1, 0.125 + 1e-12);
    }

    private static IntegrationSettings Settings(int count, double tolerance) => new()
    {
        RelativeTolerance = tolerance,
        AbsoluteTolerances = [.. Enumerable.Repeat(tolerance, count)],
    };

    private static IntegrationOutcome RunWithQuadrature(double tolerance)
    {
        SingleRun<FastQuadrature> integration = new(new FastQuadrature(), AdditiveTableau.ByName("ARK4(3)"));
        SilentObserver observer = new();
        IntegrationSettings settings = new() { RelativeTolerance = 1e-5, AbsoluteTolerances = [1e-5, tolerance] };
        return integration.Run(0.0, 5.0, [1.0, 0.0], [], settings, observer);
    }

    private sealed class LogDecay : ExactProblem
    {
        public override string Name => "logarithmic decay";

        public override string Equation => "y' = -y ln y, NaN below zero; y = exp(ln 5 e^-t)";

        public override double End => 12.0;

        public List<double> Steps { get; } = [];

        protected override double[] Exact(double t) => [Math.Exp(Math.Log(5.0) * Math.Exp(-t))];

        protected override void Rates(double t, double g, Span<double> y, Span<double> dy)
        {
            if (g > 0.0 && (Steps.Count == 0 || Steps[^1] != g))
            {
                Steps.Add(g);
            }

            dy[0] = -y[0] * Math.Log(y[0]);
        }
    }

    private sealed class BlowUp : ExactProblem
    {
        public override string Name => "blow-up";

        public override string Equation => "y' = y^2; y = 1/(1 - t)";

        public override double End => 1.0;

        protected override double[] Exact(double t) => [1.0 / (1.0 - t)];

        protected override void Rates(double t, double g, Span<double> y, Span<double> dy) => dy[0] = y[0] * y[0];
    }

    // y' jumps at every breakpoint; a struct, so that the segment must reach the copy that is integrated.
    private struct Ramp(int segments) : IAdditiveSystem, ISegmented
    {
        private int _segment;

        public readonly int ExplicitCount => 1;

        public readonly int ImplicitCount => 0;

        public static double Rate(int segment) => segment % 2 == 0 ? 3.0 + segment : -1.5 - segment;

        public void EnterSegment(int index) => _segment = index <= segments ? index : throw new ArgumentOutOfRangeException(nameof(index));

        public readonly void Evaluate(double t, double g, Span<double> y, Span<double> dy) => dy[0] = Rate(_segment);
    }

    private readonly struct Copies : IAdditiveSystem
    {
        public int ExplicitCount => 7;

        public int ImplicitCount => 0;

        public void Evaluate(double t, double g, Span<double> y, Span<double> dy)
        {
            for (int i = 0; i < 7; i++)
            {
                dy[i] = (y[i] * Math.Cos(t)) - (0.1 * y[i] * y[i]);
            }
        }
    }

    // One rate is spoiled after t = 0.1.
    private readonly struct Spoiled(int component, double value) : IAdditiveSystem
    {
        public int ExplicitCount => 7;

        public int ImplicitCount => 0;

        public void Evaluate(double t, double g, Span<double> y, Span<double> dy)
        {
            dy.Fill(1.0);
            dy[component] = t > 0.1 ? value : 1.0;
        }
    }

    private readonly struct FastQuadrature : IAdditiveSystem
    {
        public int ExplicitCount => 2;

        public int ImplicitCount => 0;

        public void Evaluate(double t, double g, Span<double> y, Span<double> dy)
        {
            dy[0] = -y[0];
            dy[1] = Math.Sin(40.0 * t);
        }
    }
}
