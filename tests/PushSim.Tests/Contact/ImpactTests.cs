using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>Free bodies run into each other through the contact alone.</summary>
public class ImpactTests
{
    private const double Length = 0.2, Width = 0.18;

    // its centre of mass behind the middle of its face
    private static ContactBody Even => Touching.Box(low: 0.0, high: 0.04);

    // lambda v - ln(1 + lambda v) = -lambda e v - ln(1 - lambda e v): from the equation of motion, computed here; the same in Marhefka and Orin 1999 (from memory)
    [Theory]
    [InlineData(0.2, 4.919)]
    [InlineData(0.3, 3.087)]
    [InlineData(0.4, 2.083)]
    [InlineData(0.5, 1.43275)]
    [InlineData(0.6, 0.9749)]
    [InlineData(0.7, 0.6348)]
    [InlineData(0.8, 0.3732)]
    [InlineData(0.9, 0.1665)]
    public void Restitution_gives_the_damping_of_the_exact_relation(double share, double product)
    {
        double damping = Restitution.Damping(share);
        Assert.Equal(product, damping, 5e-4 * product);
        Assert.Equal(0.0, damping - Math.Log(1.0 + damping) + (damping * share) + Math.Log(1.0 - (damping * share)), 1e-12);
        Assert.Equal(share, Restitution.Share(damping, Restitution.StatedSpeed), 1e-12);
    }

    // v1' = ((m1 - e m2) v1 + (1 + e) m2 v2)/(m1 + m2), loss = m1 m2 (1 - e^2)(v1 - v2)^2/(2 (m1 + m2)): any textbook of mechanics
    [Theory]
    [InlineData(1.0, 1.0, 1.0, 0.0, 0.8)]
    [InlineData(1.0, 1.0, 1.0, 0.0, 0.2)]
    [InlineData(0.5, 1.5, 0.8, -0.6, 0.5)]
    [InlineData(2.0, 0.3, 0.2, -1.0, 0.3)]
    [InlineData(0.5, 0.5, 1.0, -1.0, 0.2)]
    public void Head_on_impact_has_the_exact_restitution(double m1, double m2, double v1, double v2, double share)
    {
        var settings = new ContactSettings { Restitution = share };
        var pair = new ContactPair<R1>(Even, Even, settings);
        FreeBodies bodies = Free(pair, m1, m2);
        bodies.Place(0, 0.0, 0.0, Touching.Centre, vx: v1);
        bodies.Place(1, Length, 0.0, Touching.Centre, vx: v2);
        bodies.RunUntilApart(5e-6);
        double before = v1 - v2;
        double e = (bodies.State(1, 7) - bodies.State(0, 7)) / before;
        Assert.Equal(Restitution.Share(Restitution.Damping(share), before), e, 1e-6);
        Assert.Equal((((m1 - (e * m2)) * v1) + ((1.0 + e) * m2 * v2)) / (m1 + m2), bodies.State(0, 7), 1e-9);
        double loss = m1 * m2 * (1.0 - (e * e)) * before * before / (2.0 * (m1 + m2));
        Assert.Equal(loss, (0.5 * ((m1 * v1 * v1) + (m2 * v2 * v2))) - bodies.KineticEnergy(), 1e-9);
        Assert.Equal(loss, bodies.Lost, 1e-7);
    }

    // a face, an edge and a corner under the centre of mass meet a face: the spring's shape does not matter
    [Theory]
    [InlineData(0.3, 0.0, 0.0)]
    [InlineData(1.0, 0.0, 0.0)]
    [InlineData(1.0, 0.7853981633974483, 0.0)]
    [InlineData(3.0, 0.7853981633974483, 0.0)]
    [InlineData(1.0, 0.7853981633974483, 0.6154797086703873)]
    public void Restitution_hangs_on_no_shape(double speed, double heading, double pitch)
    {
        // a cube about its centre, so that edge and corner stand before the centre of mass
        ContactBody cube = Touching.Box(0.1, 0.1, 0.0, 0.1, centre: 0.05);
        ContactBody wall = Touching.Box(0.1, 0.6, 0.0, 0.6, centre: 0.3);
        var pair = new ContactPair<R1>(cube, wall, new ContactSettings { Restitution = 0.5, Friction = 0.0 });
        double[] inertia = [1e-3, 1e-3, 1e-3];
        var bodies = new FreeBodies(pair, (1.0, double.PositiveInfinity), (inertia, inertia));
        double reach = pitch != 0.0 ? 0.05 * Math.Sqrt(3.0) : heading != 0.0 ? 0.05 * Math.Sqrt(2.0) : 0.05;
        bodies.PlaceTurned(0, (-reach, 0.0, 0.3), pitch, heading, speed);
        bodies.Place(1, 0.05, 0.0, 0.3);
        bodies.RunUntilApart(1e-5);
        Assert.Equal(Restitution.Share(Restitution.Damping(0.5), speed), -bodies.State(0, 7) / speed, 1e-5);
    }

    [Theory]
    [InlineData(0.02, 0.0)]
    [InlineData(0.05, 0.3)]
    [InlineData(0.09, 0.3)]
    [InlineData(0.07, -0.2)]
    public void Any_hit_keeps_the_momenta_and_only_loses_energy(double offset, double heading)
    {
        var pair = new ContactPair<R1>(Touching.Box(), Touching.Hexagon(), Touching.Usual);
        FreeBodies bodies = Free(pair, 1.0, 1.4);
        bodies.Place(0, 0.0, 0.0, Touching.Centre, vx: 1.0, pitch: 0.02);
        bodies.Place(1, 0.23, offset, Touching.Centre + 0.004, heading: Math.PI + heading, vx: -0.4, vy: 0.1);
        double[] before = bodies.Momentum();
        double energy = bodies.KineticEnergy();
        double start = energy;
        bool touched = false;
        bodies.Run(0.06, 2e-5, () => touched |= bodies.Force > 0.0);
        double[] after = bodies.Momentum();
        Assert.True(touched);
        for (int k = 0; k < 6; k++)
        {
            Assert.Equal(before[k], after[k], 1e-10);
        }

        Assert.True(bodies.KineticEnergy() < start);
        Assert.Equal(start - bodies.KineticEnergy(), bodies.Lost, 1e-5 * start);
    }

    /// <summary>Restitution [1] of two equal bodies that meet at 1 m/s, by the contact's damping [s/m].</summary>
    internal static double Returned(double damping)
    {
        var settings = new ContactSettings { Restitution = Restitution.Share(damping, Restitution.StatedSpeed), Friction = 0.0 };
        FreeBodies bodies = Free(new ContactPair<R1>(Even, Even, settings), 1.0, 1.0);
        bodies.Place(0, 0.0, 0.0, Touching.Centre, vx: 1.0);
        bodies.Place(1, Length, 0.0, Touching.Centre);
        bodies.RunUntilApart(5e-6);
        return bodies.State(1, 7) - bodies.State(0, 7);
    }

    private static FreeBodies Free(ContactPair<R1> pair, double m1, double m2)
    {
        double[] Inertia(double m) => [m * 0.003, m * 0.0035, m * ((Length * Length) + (Width * Width)) / 12.0];
        return new FreeBodies(pair, (m1, m2), (Inertia(m1), Inertia(m2)));
    }
}
