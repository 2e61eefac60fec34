using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using PushSim.Analysis.Turning;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests.Tyres;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Analysis.Turning;

/// <summary>The ring criterion against eigenvalues of the engine's own wheel with its rim held, and the steady share against the engine's bristle.</summary>
public class RingCheckTests
{
    // own check: for the plain law and a held rim the criterion is exact
    [Fact]
    public void Criterion_is_the_sign_of_the_eigenvalues_of_a_held_rim()
    {
        var r = new Random(7);
        int buzzes = 0;
        List<string> wrong = [];
        for (int i = 0; i < 200; i++)
        {
            double load = Between(0.5, 6.0);
            double still = Between(0.5, 1.3);
            double speed = Between(0.05, 2.0);
            var tyre = new TyreSettings
            {
                Name = "ring", StaticFriction = still, KineticFriction = still * Between(0.4, 1.0), SlipSpeed = Between(0.1, 1.5), PlainFriction = true, RollingRenewal = 0.0,
                BreakawayDeflection = Between(0.1e-3, 0.6e-3), BodyStiffness = Between(500.0, 5000.0), BodyDamping = Between(0.0, 3.0), TreadMass = Between(0.001, 0.006),
                VerticalStiffness = 1.0, ViscousFriction = Between(0.0, 0.05),
            };
            double sigma0 = still / tyre.BreakawayDeflection;
            double sigma1 = Between(0.0, 0.6) * Math.Sqrt(tyre.TreadMass * sigma0 / load);
            double drop = (still - tyre.KineticFriction) * Math.Exp(-Math.Pow(speed / tyre.SlipSpeed, 2));
            double mu = tyre.KineticFriction + drop;
            double slope = -2.0 * speed / (tyre.SlipSpeed * tyre.SlipSpeed) * drop;
            double margin = RingCriterion.MarginOf(
                tyre.TreadMass, tyre.BodyStiffness, tyre.BodyDamping + (load * tyre.ViscousFriction), mu / (sigma0 * speed), load * slope, sigma1 / sigma0);
            double growth = Growth(new RingBlock(tyre, sigma1, load) { RimSpeed = _ => (speed, 0.0) }, speed, mu / sigma0);
            buzzes += growth > 0.0 ? 1 : 0;
            if (margin < 1.0 != growth > 0.0)
            {
                wrong.Add(string.Create(CultureInfo.InvariantCulture, $"case {i}: margin {margin}, growth {growth} 1/s"));
            }
        }

        Assert.InRange(buzzes, 20, 180);
        Assert.True(wrong.Count == 0, string.Join("; ", wrong));

        double Between(double low, double high) => low + (r.NextDouble() * (high - low));
    }

    // own check: the engine's bristle rests at this share
    [Theory]
    [InlineData(0.0, false)]
    [InlineData(0.3, false)]
    [InlineData(1.2, false)]
    [InlineData(2.0, false)]
    [InlineData(0.3, true)]
    public void Steady_share_is_where_the_bristle_rests(double rho, bool isPlain)
    {
        TyreSettings tyre = TestRobots.SoftTyre with { KineticFriction = 1.0, PlainFriction = isPlain, RollingRenewal = 100.0, ViscousFriction = 0.0 };
        double sigma0 = tyre.StaticFriction / tyre.BreakawayDeflection;
        const double speed = 0.2;
        double surface = rho * sigma0 * speed / 100.0;
        RingBlock block = new(tyre, 0.0, 3.0) { SurfaceSpeed = surface, RimSpeed = _ => (0.0, speed) };
        double share = RingCriterion.SteadyShare(rho, tyre.ElasticShare, isPlain);
        double[] dy = new double[6];
        block.Evaluate(0.0, 0.0, new double[] { 0, 0, 0, speed, 0, share * tyre.BreakawayDeflection }, dy);
        Assert.Equal(0.0, dy[5], 1e-12);
    }

    // the bench of the literature's bouncy and dull tyre: loads of 1.1 N, 1500 N/m, 4 g, friction 1.0 to 0.6 over 0.5 m/s, 60 % turn; computed here by a prototype
    [Theory]
    [InlineData(0.1, true)]
    [InlineData(0.3, true)]
    [InlineData(1.0, false)]
    [InlineData(2.0, false)]
    public void Light_bouncy_tyres_buzz_and_dull_ones_do_not(double damping, bool buzzes)
    {
        TyreSettings tyre = GrowthTests.Bouncy with { BodyDamping = damping };
        ScenarioSettings scenario = TestRobots.Spot(TestRobots.FourWheels(tyre).WithMass(4.0 * 1.1 / 9.81));
        SteadyTurn turn = RandomTurns.Turn(scenario)!;
        Assert.Equal(buzzes, turn.Growth > 0.0);
        Assert.Equal(buzzes, turn.RingMargin < 1.0);
        if (buzzes)
        {
            Assert.Equal(TurnPart.Ring, turn.Modes[0].Part);
            Assert.InRange(turn.Modes[0].Frequency, 70.0, 200.0);
        }
    }

    // largest real part of q, v, z along the slip, by central differences of the engine's own derivatives
    private static double Growth(RingBlock block, double speed, double z)
    {
        double[] y = [0.0, 0.0, speed, 0.0, z, 0.0];
        int[] states = [0, 2, 4];
        double[] steps = [1e-6, 1e-5 * speed, 1e-5 * z];
        Matrix<double> a = Matrix<double>.Build.Dense(3, 3);
        for (int j = 0; j < 3; j++)
        {
            double[] plus = At(y, states[j], steps[j]);
            double[] minus = At(y, states[j], -steps[j]);
            for (int i = 0; i < 3; i++)
            {
                a[i, j] = (plus[states[i]] - minus[states[i]]) / (2.0 * steps[j]);
            }
        }

        return a.Evd().EigenValues.Max(e => e.Real);

        double[] At(double[] from, int state, double step)
        {
            double[] moved = [.. from];
            moved[state] += step;
            double[] dy = new double[6];
            block.Evaluate(0.0, 0.0, moved, dy);
            return dy;
        }
    }
}
