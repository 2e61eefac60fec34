using System.Reflection;
using System.Runtime.InteropServices;
using MathNet.Numerics.Interpolation;
using PushSim.Numerics;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Tyres;

/// <summary>Friction's optional terms, the friction table and a bristle in the air.</summary>
public class WheelLawTests
{
    private static readonly (double Speed, double Friction)[] s_points = [(0.0, 0.6), (0.1, 0.9), (0.2, 1.0), (0.3, 0.8), (0.4, 0.75), (0.5, 0.7)];

    // mu_k + (mu_s - mu_k) exp(-(v/v_s)^2) + mu_r ln(1 + v/v_r), times (N/N_0)^-e. Computed here.
    [Theory]
    [InlineData(0.0, 5.0)]
    [InlineData(0.07, 5.0)]
    [InlineData(0.07, 20.0)]
    [InlineData(0.9, 1.0)]
    public void Rise_and_load_change_friction_as_written(double speed, double load)
    {
        WheelParameters<R1> p = new()
        {
            KineticFriction = 0.7, FrictionDrop = 0.3, InverseSlipSpeed = 1.0 / 0.1,
            FrictionRise = 0.04, InverseRiseSpeed = 1.0 / 0.2,
            LoadExponent = 0.12, InverseReferenceLoad = 1.0 / 5.0,
        };
        double Friction(bool hasRise, bool hasLoadExponent) =>
            WheelEquations.Friction<R1>(p, new(new WheelShape { HasRise = hasRise, HasLoadExponent = hasLoadExponent }), speed, load).Value;
        double expected = (0.7 + (0.3 * Math.Exp(-Math.Pow(speed / 0.1, 2.0))) + (0.04 * Math.Log(1.0 + (speed / 0.2)))) * Math.Pow(load / 5.0, -0.12);
        Assert.Equal(expected, Friction(true, true), 1e-13);
        Assert.Equal(expected * Math.Pow(load / 5.0, 0.12), Friction(true, false), 1e-13);
        Assert.Equal(0.7 + (0.3 * Math.Exp(-Math.Pow(speed / 0.1, 2.0))), Friction(false, false), 1e-13);
    }

    // Fritsch and Butland's slopes are the harmonic mean where points stand evenly: away from the ends MathNet's curve is the same
    [Fact]
    public void A_table_is_the_monotone_cubic_of_a_general_package()
    {
        var table = new FrictionTable<R1>(s_points);
        CubicSpline other = CubicSpline.InterpolatePchipSorted([.. s_points.Select(p => p.Speed)], [.. s_points.Select(p => p.Friction)]);
        for (double v = 0.1; v < 0.4; v += 0.0037)
        {
            Assert.Equal(other.Interpolate(v), table.Evaluate(v).Value, 1e-12);
        }
    }

    [Fact]
    public void A_table_goes_through_its_points_without_overshoot_and_stays_level_beyond_them()
    {
        (double Speed, double Friction)[] uneven = [(0.02, 0.6), (0.05, 0.9), (0.3, 1.0), (0.31, 0.5), (2.0, 0.45)];
        var table = new FrictionTable<R1>(uneven);
        Assert.All(uneven, p => Assert.Equal(p.Friction, table.Evaluate(p.Speed).Value, 1e-13));
        Assert.Equal((0.6, 0.45), (table.Evaluate(0.0).Value, table.Evaluate(9.0).Value));
        for (int i = 0; i + 1 < uneven.Length; i++)
        {
            double last = uneven[i].Friction;
            double sign = Math.Sign(uneven[i + 1].Friction - last);
            for (int k = 1; k <= 200; k++)
            {
                double now = table.Evaluate(uneven[i].Speed + (k / 200.0 * (uneven[i + 1].Speed - uneven[i].Speed))).Value;
                Assert.True(sign * (now - last) >= -1e-13, $"interval {i}, step {k}");
                last = now;
            }
        }
    }

    // Every number and switch is set, so that a term which Flat forgets shows
    [Fact]
    public void Flattened_friction_is_the_same_at_every_slip_speed()
    {
        WheelParameters<R1> p = new();
        MemoryMarshal.Cast<WheelParameters<R1>, R1>(MemoryMarshal.CreateSpan(ref p, 1)).Fill(0.5);
        WheelKind<R1> kind = AllOn();
        double Slope() => WheelEquations.Friction<R1>(p, kind, 2.0, 2.0).Value - WheelEquations.Friction<R1>(p, kind, 0.1, 2.0).Value;
        Assert.NotEqual(0.0, Slope(), 1e-3);
        kind = kind.Flat(ref p, 0.9);
        Assert.Equal(0.0, Slope());
        kind = new WheelKind<R1>(AllOn().Shape, new FrictionTable<R1>(s_points)).Flat(ref p, 0.9);
        Assert.Equal(0.0, Slope());
    }

    // Every number of the tyre that is off is set, so that a term which Gripping or WithFriction forgets shows
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_tyre_scales_and_replaces_all_its_friction(bool hasTable)
    {
        TyreSettings tyre = TestRobots.SoftTyre with { FrictionTable = hasTable ? s_points : null };
        foreach (PropertyInfo number in typeof(TyreSettings).GetProperties().Where(n => n.GetValue(tyre) is 0.0))
        {
            number.SetValue(tyre, 0.1);
        }

        foreach (double v in new[] { 0.0, 0.07, 0.4, 2.0 })
        {
            Assert.Equal(0.5 * Friction(tyre, v), Friction(tyre.Gripping(0.5), v), 1e-13);
        }

        TyreSettings plain = tyre.WithFriction(0.9, 0.6);
        Assert.Equal((0.9, 0.6), (Friction(plain, 0.0), Friction(plain, 50.0)));
        Assert.Equal((0.0, 1.0), (plain.FoulingDistance, plain.DustyFriction));
    }

    // z' = -z/tau in both directions, and the stage (z - z0)/g = z'. Computed here.
    [Fact]
    public void In_the_air_a_bristle_only_relaxes()
    {
        var ring = new RingBlock(FrictionExperiments.LuGre(1.0)) { Load = -1.0 };
        double[] y = [0.0, 0.0, 0.3, -0.2, 2e-4, -5e-4];
        double[] dy = new double[6];
        ring.Evaluate(0.0, 0.0, y, dy);
        Assert.Equal(-2e-4 / BristleLaw.RelaxationTime, dy[4], 1e-12);
        Assert.Equal(5e-4 / BristleLaw.RelaxationTime, dy[5], 1e-12);
        const double g = 0.003;
        ring.Evaluate(0.0, g, y, dy);
        Assert.Equal(2e-4 / (1.0 + (g / BristleLaw.RelaxationTime)), y[4], 1e-15);
        Assert.Equal((y[4] - 2e-4) / g, dy[4], 1e-12);
        Assert.Equal((y[5] + 5e-4) / g, dy[5], 1e-12);
    }

    private static WheelKind<R1> AllOn()
    {
        object all = default(WheelShape);
        foreach (PropertyInfo property in typeof(WheelShape).GetProperties().Where(p => p.PropertyType == typeof(bool)))
        {
            property.SetValue(all, true);
        }

        return new WheelKind<R1>((WheelShape)all);
    }

    // at the reference load
    private static double Friction(TyreSettings tyre, double speed)
    {
        RobotEquations<R1> eq = new RobotSystem(TestRobots.Pull(TestRobots.FourWheels(tyre))).Equations;
        return WheelEquations.Friction<R1>(eq.Wheels[0], eq.Kinds[0], speed, tyre.TreadArea * tyre.ReferenceLoad).Value;
    }
}
