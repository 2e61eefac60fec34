using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>A body on the floor, by the engine's law and a Runge-Kutta integration of its own.</summary>
public class FloorContactTests
{
    private const double Gravity = 9.81;

    // Housner, Bull. Seism. Soc. Am. 53:403-417, 1963: I_O theta'' = -m g R sin(alpha - theta) about the corner it rocks on. Time from 0.4 alpha at rest to upright, by
    // quadrature of the exact equation here (his linear form gives 0.11633 s)
    [Theory]
    [InlineData(4e5)]
    [InlineData(3e6)]
    [InlineData(4e7)]
    public void A_rocking_block_has_Housners_period(double stiffness)
    {
        (double width, double height, double mass) = (0.04, 0.16, 0.5);
        double alpha = Math.Atan(width / height);
        double radius = 0.5 * double.Hypot(width, height);
        double inertia = mass * ((width * width) + (height * height)) / 12.0;
        double start = 0.4 * alpha;

        // half theta'^2 (m R^2 + I)/(m g R) = cos(alpha - start) - cos(alpha - theta); dt = dtheta/theta', with theta = start (1 - u^2)
        double rate = mass * Gravity * radius / ((mass * radius * radius) + inertia);
        double expected = 0.0;
        const int Pieces = 2000;
        for (int i = 0; i < Pieces; i++)
        {
            double u = (i + 0.5) / Pieces;
            double theta = start * (1.0 - (u * u));
            double speed = Math.Sqrt(2.0 * rate * (Math.Cos(alpha - start) - Math.Cos(alpha - theta)));
            expected += 2.0 * start * u / speed / Pieces;
        }

        Assert.Equal(0.11659, expected, 2e-5);
        var body = new FloorBody(Block(width, 0.1, height), mass, [inertia, inertia, inertia], new UndersideSettings { Stiffness = stiffness, Friction = 2.0, FrictionDeflection = 1e-5 });
        // set down in its own squash: a lower edge of 0.1 m and two of its side edges bear, with their caps, as 0.2 m do
        double squash = mass * Gravity / (stiffness * (0.1 + (4.0 * 0.25 * EdgeProfile.CapLength)));
        body.Place(start, (radius * Math.Cos(alpha - start)) - squash);
        double time = 0.0;
        double step = 2e-6 * Math.Sqrt(4e7 / stiffness);
        double before = start;
        while (body.Pitch > 0.0)
        {
            before = body.Pitch;
            body.Step(step);
            time += step;
        }

        time -= step * (body.Pitch / (body.Pitch - before));
        Assert.Equal(expected, time, 1e-3 * expected);
    }

    // dropped flat: the exact relation, whatever the height of the fall
    [Theory]
    [InlineData(0.3, 0.3)]
    [InlineData(0.3, 1.0)]
    [InlineData(0.6, 2.0)]
    public void A_drop_has_the_exact_restitution(double share, double speed)
    {
        var body = new FloorBody(Block(0.1, 0.1, 0.04), 1.0, [1e-3, 1e-3, 1e-3], new UndersideSettings { Restitution = share }) { Gravity = 0.0 };
        body.Place(0.0, 0.02, -speed);
        body.Step(1e-6);
        while (body.Force > 0.0)
        {
            body.Step(1e-6);
        }

        Assert.Equal(Restitution.Share(Restitution.Damping(share), speed), body.Rising / speed, 2e-5);
    }

    // both power and moments: a random body in a random pose
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Power_is_what_the_floor_takes_and_the_mirror_image_has_the_same_bits(int seed)
    {
        var random = new Random(seed);
        double Wide(double width) => width * ((2.0 * random.NextDouble()) - 1.0);
        int touched = 0;
        for (int i = 0; i < 300; i++)
        {
            (ContactBody body, _) = Touching.Two(random.Next(6));
            var floor = new FloorContact<R1>(body, new UndersideSettings());
            var mirrored = new FloorContact<R1>(Touching.Mirror(body), new UndersideSettings());
            Attitude<R1> a = default, b = default;
            (double roll, double pitch) = (Wide(0.8), Wide(0.8));
            a.Set(roll, pitch);
            b.Set(-roll, pitch);
            var m = new BodyMotion<R1> { U = Wide(1.0), V = Wide(1.0), ZDot = Wide(0.3), PhiDot = Wide(1.0), ThetaDot = Wide(1.0), R = Wide(2.0) };
            BodyMotion<R1> n = m with { V = -m.V, PhiDot = -m.PhiDot, R = -m.R };
            (double sine, double cosine) = Math.SinCos(Wide(3.0));
            double centre = 0.02 + (0.05 * random.NextDouble());
            R1[] z = [Wide(1e-4), Wide(1e-4), Wide(1e-4)];
            R1[] zMirrored = [z[0], -z[1], z[2]];
            Wrench<R1> w = default, v = default;
            floor.Apply(a, m, sine, cosine, centre, 1e-4, z, new R1[3], ref w);
            mirrored.Apply(b, n, -sine, cosine, centre, 1e-4, zMirrored, new R1[3], ref v);
            double scale = Math.Abs(w.Fx.Value) + Math.Abs(w.Fy.Value) + Math.Abs(w.Fz.Value);
            Assert.Equal(-w.Power(m).Value, floor.LostPower.Value, 1e-11 * (1e-6 + scale));
            Assert.Equal((w.Fx.Value, w.Fy.Value, w.Fz.Value), (v.Fx.Value, -v.Fy.Value, v.Fz.Value));
            Assert.Equal((w.Roll.Value, w.Pitch.Value, w.Yaw.Value), (-v.Roll.Value, v.Pitch.Value, -v.Yaw.Value));
            touched += floor.NormalForce.Value > 0.0 ? 1 : 0;
        }

        Assert.True(touched > 100, $"{touched} touched");
    }

    private static ContactBody Block(double length, double width, double height)
    {
        FaceSettings face = new(0.0, height);
        (double x, double y) = (0.5 * length, 0.5 * width);
        return new([(x, -y), (x, y), (-x, y), (-x, -y)], [face, face, face, face], 0.5 * height);
    }

    /// <summary>A body in the plane of its x and z axes on the floor.</summary>
    private sealed class FloorBody(ContactBody shape, double mass, double[] inertia, UndersideSettings settings)
    {
        private readonly FloorContact<R1> _floor = new(shape, settings);

        // place along and up, pitch, their rates, bristle
        private double[] _y = new double[9];

        public double Gravity { get; init; } = FloorContactTests.Gravity;

        public double Pitch => _y[2];

        public double Rising => _y[4];

        public double Force => _floor.NormalForce.Value;

        public void Place(double pitch, double height, double rising = 0.0) => _y = [0.0, height, pitch, 0.0, rising, 0.0, 0.0, 0.0, 0.0];

        public void Step(double h)
        {
            double[] k1 = Rates(_y);
            double[] k2 = Rates(Along(k1, 0.5 * h));
            double[] k3 = Rates(Along(k2, 0.5 * h));
            double[] k4 = Rates(Along(k3, h));
            for (int i = 0; i < _y.Length; i++)
            {
                _y[i] += h / 6.0 * (k1[i] + (2.0 * (k2[i] + k3[i])) + k4[i]);
            }
        }

        private double[] Along(double[] k, double h) => [.. _y.Select((y, i) => y + (h * k[i]))];

        private double[] Rates(double[] y)
        {
            Attitude<R1> attitude = default;
            attitude.Set(0.0, 2.0 * Math.Sin(0.5 * y[2]));
            var motion = new BodyMotion<R1> { U = y[3], ZDot = y[4], ThetaDot = y[5] };
            R1[] z = [y[6], y[7], y[8]];
            R1[] dz = new R1[3];
            Wrench<R1> w = default;
            _floor.Apply(attitude, motion, 0.0, 1.0, y[1], 0.0, z, dz, ref w);
            return [y[3], y[4], y[5], w.Fx.Value / mass, (w.Fz.Value / mass) - Gravity, w.Pitch.Value / inertia[1], dz[0].Value, dz[1].Value, dz[2].Value];
        }
    }
}
