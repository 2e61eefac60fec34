using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Tyres;

/// <summary>The implicit block of a wheel against the equations that it solves, and its bound on steps.</summary>
public class TreadRingTests
{
    // z = z* + g z', v = v* + g v', q = q* + g q' with the rates of the wheel at the solution, over stiff and soft tyres, stuck and sliding
    [Theory]
    [InlineData(false, 1e3, 1e-3)]
    [InlineData(false, 1e6, 1e-3)]
    [InlineData(false, 1e5, 1e-2)]
    [InlineData(true, 1e3, 1e-3)]
    [InlineData(true, 1e6, 1e-4)]
    public void The_stage_solves_its_equations(bool isPlain, double stiffness, double g)
    {
        var random = new Random(7);
        int slides = 0;
        for (int n = 0; n < 200; n++)
        {
            TyreSettings tyre = TestRobots.SoftTyre with { PlainFriction = isPlain, BodyStiffness = stiffness, BodyDamping = 0.05 * Math.Sqrt(stiffness) };
            double zMax = tyre.BreakawayDeflection;
            double v = Math.Pow(10.0, -3.0 + (3.0 * random.NextDouble()));
            var block = new RingBlock(tyre, 0.01, 3.0, isLimited: !isPlain) { RimSpeed = _ => (v, -0.4 * v), SurfaceSpeed = 0.2 };
            double[] known = [0.0, 0.0, v * random.NextDouble(), -0.4 * v, zMax * (random.NextDouble() - 0.5), zMax * (random.NextDouble() - 0.5)];
            double[] y = [.. known];
            double[] dy = new double[6];
            block.Evaluate(0.0, g, y, [.. known], dy);
            slides += block.Slides ? 1 : 0;
            for (int i = 0; i < 6; i++)
            {
                // the decay is that of the block's own switch and damping, so that only rounding is left
                double unit = i is 2 or 3 ? v : i < 2 ? v * g : zMax;
                Assert.Equal(y[i], known[i] + (g * dy[i]), 1e-9 * unit);
            }
        }

        Assert.InRange(slides, 5, 200);
    }

    // A plain evaluation moves no bit of the state.
    [Fact]
    public void Without_a_step_nothing_moves()
    {
        var block = new RingBlock(TestRobots.SoftTyre, 0.01, 3.0) { RimSpeed = _ => (0.3, 0.1) };
        double[] known = [1e-4, -2e-4, 0.31, 0.13, 2.9e-4, 1e-5];
        double[] y = [.. known];
        block.Evaluate(0.0, 0.0, y, new double[6]);
        Assert.Equal(known.Select(BitConverter.DoubleToInt64Bits), y.Select(BitConverter.DoubleToInt64Bits));
    }

    // Friction that falls by 0.4 over 0.5 m/s feeds at most 3 N x 0.4 x 0.86 / 0.5 m/s = 2 N s/m: a body that loses less grows, one that loses more does not (model of the criterion).
    [Theory]
    [InlineData(0.1, 0.35, true)]
    [InlineData(4.0, 0.35, false)]
    [InlineData(0.1, 3.0, false)]
    public void Only_a_ring_that_grows_bounds_the_step(double damping, double slip, bool grows)
    {
        TyreSettings tyre = TestRobots.SoftTyre with
        {
            StaticFriction = 1.0, KineticFriction = 0.6, SlipSpeed = 0.5, BodyDamping = damping, BodyStiffness = 1500.0, TreadMass = 0.004, RollingRenewal = 0.0, ViscousFriction = 0.0,
        };
        var block = new RingBlock(tyre, 0.0, 3.0) { RimSpeed = _ => (slip, 0.0) };
        block.Evaluate(0.0, 0.0, [0.0, 0.0, slip, 0.0, tyre.BreakawayDeflection, 0.0], new double[6]);
        Assert.Equal(grows ? Math.Sqrt(0.004 / 1500.0) : double.PositiveInfinity, block.StepBound, 1e-15);
    }
}
