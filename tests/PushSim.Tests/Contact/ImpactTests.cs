using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>Free bodies run into each other through the contact alone.</summary>
public class ImpactTests
{
    private const double LengthOfBox = 0.2, WidthOfBox = 0.18;

    // C1: v1' = ((m1 - e m2) v1 + (1 + e) m2 v2)/(m1 + m2), loss = m1 m2 (1 - e^2)(v1 - v2)^2/(2 (m1 + m2)); source: the
    // printed loss formula 2(m1+m2)E = m1 m2 (u1-u2)^2 (1-e^2), vbforums.com archive t-230549.
    // e by the exact relation of a damped contact, a - ln(1+a) = -a e - ln(1 - a e), a = d v (computed here from the
    // equation of motion; the same result in Marhefka and Orin 1999, from memory).
    [Theory]
    [InlineData(1.0, 1.0, 1.0, 0.0, 0.1)]
    [InlineData(1.0, 1.0, 1.0, 0.0, 1.0)]
    [InlineData(0.5, 1.5, 0.8, -0.6, 1.0)]
    [InlineData(2.0, 0.3, 0.2, -1.0, 0.5)]
    [InlineData(0.5, 0.5, 1.0, -1.0, 4.0)]
    public void Head_on_impact_has_the_exact_restitution(double m1, double m2, double v1, double v2, double damping)
    {
        FreeBodies bodies = HeadOn(m1, m2, v1, v2, damping, friction: 0.3);
        bodies.RunUntilApart();
        double before = v1 - v2;
        double after = bodies.Speed(1, 0) - bodies.Speed(0, 0);
        double a = damping * before;
        double e = after / before;
        Assert.Equal(a - Math.Log(1.0 + a), (-a * e) - Math.Log(1.0 - (a * e)), 1e-9);

        double expected1 = (((m1 - (e * m2)) * v1) + ((1.0 + e) * m2 * v2)) / (m1 + m2);
        double expected2 = (((m2 - (e * m1)) * v2) + ((1.0 + e) * m1 * v1)) / (m1 + m2);
        Assert.Equal(expected1, bodies.Speed(0, 0), 1e-11);
        Assert.Equal(expected2, bodies.Speed(1, 0), 1e-11);
        double loss = m1 * m2 * (1.0 - (e * e)) * before * before / (2.0 * (m1 + m2));
        double start = 0.5 * ((m1 * v1 * v1) + (m2 * v2 * v2));
        Assert.Equal(loss, start - bodies.KineticEnergy(), 1e-11);
        Assert.Equal(loss, bodies.Lost, 1e-8);
    }

    // table in the same source rows: a = 3(1-e)/2 at nominal e 0.8 really gives 0.832870 (CALC)
    [Fact]
    public void Hunt_and_Crossleys_factor_gives_the_tabled_restitution()
    {
        Assert.Equal(0.832870, Restitution(0.3), 1e-6);
    }

    /// <summary>Restitution [1] of two equal bodies that meet at 1 m/s, by the contact's damping [s/m].</summary>
    internal static double Restitution(double damping)
    {
        FreeBodies bodies = HeadOn(1.0, 1.0, 1.0, 0.0, damping, friction: 0.0);
        bodies.RunUntilApart();
        return bodies.Speed(1, 0) - bodies.Speed(0, 0);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void Free_collisions_keep_momentum_and_gain_no_energy(int seed)
    {
        var random = new Random(seed);
        double Wide(double width) => width * ((2.0 * random.NextDouble()) - 1.0);
        (ContactBody a, ContactBody b) = Touching.Two(new[] { 0, 1, 2, 5, 6, 7, 10, 11 }[seed % 8]);
        var pair = new ContactPair<R1>(a, b, Touching.Usual with { Friction = seed % 2 == 0 ? 0.0 : 0.3 });
        var bodies = new FreeBodies(pair, 0.7, 1.3, 0.005, 0.01);
        bodies.Place(0, 0.0, 0.0, Math.PI * random.NextDouble(), 0.5 + random.NextDouble(), 0.0, Wide(3.0));
        bodies.Place(1, 0.26, Wide(0.06), Math.PI * random.NextDouble(), -random.NextDouble(), 0.0, Wide(3.0));
        double energy = bodies.KineticEnergy();
        (double x, double y, double spin) = bodies.Momentum();
        bodies.RunThrough(0.4, 2e-5);
        (double endX, double endY, double endSpin) = bodies.Momentum();
        Assert.True(bodies.Greatest > 1.0, "they never met");
        Assert.Equal(0.0, bodies.Force);
        Assert.Equal(x, endX, 1e-12);
        Assert.Equal(y, endY, 1e-12);

        // the moment needs the positions of the steps' ends: good to the integrator
        Assert.Equal(spin, endSpin, 1e-9);
        Assert.True(bodies.KineticEnergy() <= energy, $"{energy} J before, {bodies.KineticEnergy()} J after");
    }

    [Fact]
    public void A_robot_bounces_off_a_wall()
    {
        var wall = new WallSettings(0.0, -1.0, 0.0, 1.0);
        var pair = new ContactPair<R1>(Touching.Box(), ContactBody.FromWall(wall), Touching.Usual with { Damping = 1.0 });
        var bodies = new FreeBodies(pair, 0.8, double.PositiveInfinity, 0.005, double.PositiveInfinity);
        bodies.Place(0, -0.1, 0.3, 0.0, 1.0, 0.0, 0.0);
        bodies.Place(1, ContactBody.WallPose<R1>(wall));
        bodies.RunUntilApart();
        double e = -bodies.Speed(0, 0);
        Assert.Equal(1.0 - Math.Log(2.0), -e - Math.Log(1.0 - e), 1e-9);
        Assert.Equal(0.0, bodies.Speed(0, 2), 1e-9);
    }

    /// <summary>Two boxes that meet face to face.</summary>
    internal static FreeBodies HeadOn(double m1, double m2, double v1, double v2, double damping, double friction)
    {
        ContactBody box = Touching.Box(LengthOfBox, WidthOfBox);
        var pair = new ContactPair<R1>(box, box, Touching.Usual with { Damping = damping, Friction = friction });
        var bodies = new FreeBodies(pair, m1, m2, 0.005, 0.005);
        bodies.Place(0, 0.0, 0.0, 0.0, v1, 0.0, 0.0);
        bodies.Place(1, Touching.Facing(LengthOfBox, 0.0), v2, 0.0, 0.0);
        return bodies;
    }
}
