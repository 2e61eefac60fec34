using PushSim.Numerics;
using PushSim.Tests.Problems;
using Xunit;

namespace PushSim.Tests.Numerics;

/// <summary>The curve between two steps.</summary>
public class DenseOutputTests
{
    [Theory]
    [InlineData(0.0)]
    [InlineData(0.1)]
    [InlineData(0.55)]
    [InlineData(0.9)]
    [InlineData(2.0)]
    public void Explicit_component_reproduces_a_cubic(double t)
    {
        // y = t^3 - 2 t^2 + t/2 + 1 on [0, 2]
        DenseOutput dense = View(explicitCount: 1, 0.0, 2.0, y0: 1.0, k0: 0.5, y1: 2.0, k1: 4.5);
        Assert.Equal((t * t * t) - (2.0 * t * t) + (0.5 * t) + 1.0, dense.Evaluate(t, 0), 1e-14);
    }

    [Theory]
    [InlineData(1.0, -1e6, 0.0, 0.0)]
    [InlineData(0.0, 5e5, 1.0, -4e5)]
    [InlineData(0.5, 1e3, 0.5, -1e3)]
    [InlineData(0.2, 2.9, 1.2, 2.9)]
    [InlineData(-1.0, 3.1, 1.0, -0.1)]
    [InlineData(1.0, 0.0, -1.0, -6.0)]
    public void Implicit_component_never_leaves_the_range_of_its_ends(double y0, double k0, double y1, double k1)
    {
        DenseOutput dense = View(explicitCount: 0, 0.0, 1.0, y0, k0, y1, k1);
        double previous = y0;
        for (int i = 0; i <= 1000; i++)
        {
            double value = dense.Evaluate(i / 1000.0, 0);
            Assert.InRange(value, Math.Min(y0, y1), Math.Max(y0, y1));
            Assert.True((value - previous) * Math.Sign(y1 - y0) >= -1e-15, "monotone");
            previous = value;
        }
    }

    [Fact]
    public void Implicit_component_with_fair_slopes_keeps_the_cubic()
    {
        // z = t^2 on [1, 2]: slopes 2 and 4 against a chord of 3
        DenseOutput dense = View(explicitCount: 0, 1.0, 2.0, 1.0, 2.0, 4.0, 4.0);
        Assert.Equal(1.5 * 1.5, dense.Evaluate(1.5, 0), 1e-14);
    }

    [Fact]
    public void Ends_are_returned_to_the_bit_and_whole_state_agrees_with_its_components()
    {
        StiffFollower p = new(300.0);
        IntegrationSettings settings = new() { RelativeTolerance = 1.0, AbsoluteTolerances = [1.0, 1.0], InitialStep = 0.03 };
        Ends ends = new(p.Start);
        IntegrationOutcome report = new SingleRun<Problem>(p, AdditiveTableau.ByName("ARK4(3)")).Run(0.1, 0.1 + 0.03, p.Start, [], settings, ends);
        Assert.Equal(1, report.Steps);
        Assert.True(ends.WereSeen);
    }

    private sealed class Ends(double[] start) : IStepObserver
    {
        public bool WereSeen { get; private set; }

        public StepDecision OnStep(DenseOutput step)
        {
            double[] whole = new double[2];
            step.Evaluate(0.1, whole);
            Assert.Equal(start, whole);
            step.Evaluate(0.1 + 0.03, whole);
            Assert.Equal(step.Y1.ToArray(), whole);
            step.Evaluate(0.11, whole);
            Assert.Equal([step.Evaluate(0.11, 0), step.Evaluate(0.11, 1)], whole);
            WereSeen = true;
            return StepDecision.Continue;
        }
    }

    internal static DenseOutput View(int explicitCount, double t0, double t1, double y0, double k0, double y1, double k1)
    {
        DenseOutput dense = new([y0, k0, y1, k1], 0, 1, 2, 3, 1, explicitCount, []);
        dense.SetInterval(t0, t1);
        return dense;
    }
}
