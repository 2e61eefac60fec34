using PushSim.Contact;
using PushSim.Numerics;

namespace PushSim.Tests.Contact;

/// <summary>Bodies, random poses and one-line evaluations for the contact's tests.</summary>
internal static class Touching
{
    /// <summary>Boxes and their bodies' height of the centre of mass [m].</summary>
    public const double Centre = 0.02;

    public static readonly ContactSettings Usual = new();

    /// <summary>A box about its centre of mass, faces from low to high; with an angle its front is a ramp from its tip to high.</summary>
    public static ContactBody Box(
        double length = 0.2, double width = 0.18, double low = 0.005, double high = 0.05, double? ramp = null, double rampTip = 0.001, double? rampTop = null, double centre = Centre)
    {
        double x = 0.5 * length;
        double y = 0.5 * width;
        FaceSettings side = new(low, high);
        FaceSettings front = ramp is null ? side : new(rampTip, rampTop ?? high, ramp);
        return new([(x, -y), (x, y), (-x, y), (-x, -y)], [front, side, side, side], centre);
    }

    /// <summary>A hexagon with a corner in front.</summary>
    public static ContactBody Hexagon()
    {
        FaceSettings face = new(0.004, 0.04);
        return new([(0.1, 0.0), (0.06, 0.08), (-0.07, 0.09), (-0.09, 0.0), (-0.07, -0.09), (0.06, -0.08)], [face, face, face, face, face, face], 0.018);
    }

    /// <summary>An octagon without any symmetry; with an angle two of its faces are ramps.</summary>
    public static ContactBody Crooked(double? ramp = null)
    {
        FaceSettings face = new(0.003, 0.05);
        return new(
            [(0.1, -0.03), (0.095, 0.05), (0.05, 0.1), (-0.03, 0.105), (-0.085, 0.06), (-0.1, -0.02), (-0.06, -0.09), (0.04, -0.1)],
            [ramp is null ? face : new(0.002, 0.03, ramp), face, face, face, face, ramp is null ? face : new(0.001, 0.03, ramp), face, face],
            0.022);
    }

    /// <summary>A box with ramps at both sides, which are mirror partners.</summary>
    public static ContactBody Sided()
    {
        FaceSettings face = new(0.004, 0.045);
        FaceSettings ramp = new(0.001, 0.03, 0.9);
        return new([(0.1, -0.09), (0.1, 0.09), (-0.1, 0.09), (-0.1, -0.09)], [face, ramp, face, ramp], Centre);
    }

    /// <summary>A box between four wheels that stand out in front; crooked, they are no mirror partners.</summary>
    public static ContactBody Wheeled(double low = 0.005, double high = 0.05, bool crooked = false)
    {
        FaceSettings face = new(low, high);
        RoundWheel Wheel(double x, double y) => new(x, y, 0.008, 0.028, 0.01, 9000.0, 0.8);
        return new(
            [(0.095, -0.06), (0.095, 0.06), (-0.09, 0.06), (-0.09, -0.06)], [face, face, face, face], Centre,
            [Wheel(0.08, 0.075), Wheel(0.08, crooked ? -0.08 : -0.075), Wheel(-0.055, 0.075), Wheel(crooked ? -0.07 : -0.055, -0.075)]);
    }

    /// <summary>How many pairs there are in <see cref="Two"/>.</summary>
    public const int PairCount = 64;

    /// <summary>Two of the bodies above by number.</summary>
    public static (ContactBody A, ContactBody B) Two(int which)
    {
        ContactBody[] all = [Box(), Hexagon(), Crooked(), Box(ramp: 0.5, rampTop: 0.03), Crooked(0.9), Sided(), Wheeled(), Wheeled(0.02, 0.04, true)];
        return (all[which % 8], all[which / 8 % 8]);
    }

    /// <summary>Lets the wheels of both bodies turn, each at its own speed.</summary>
    public static void Spin<T>(ContactPair<T> pair, bool swapped = false)
        where T : struct, IReal<T>
    {
        (WheelRims<T> a, WheelRims<T> b) = swapped ? (pair.WheelsB, pair.WheelsA) : (pair.WheelsA, pair.WheelsB);
        for (int i = 0; i < 4; i++)
        {
            if (i < a.Count)
            {
                a.Spin[i] = 20.0 + (3.0 * i);
            }

            if (i < b.Count)
            {
                b.Spin[i] = -10.0 + (7.0 * i);
            }
        }
    }

    /// <summary>The body with left and right exchanged; the corners start somewhere else.</summary>
    public static ContactBody Mirror(ContactBody body)
    {
        int n = body.Corners.Count;
        (double, double)[] corners = [.. Enumerable.Range(0, n).Select(i => body.Corners[((2 * n) - i + 2) % n]).Select(c => (c.X, -c.Y))];
        FaceSettings[] faces = [.. Enumerable.Range(0, n).Select(i => body.Faces[((2 * n) - i + 1) % n])];
        return new(corners, faces, body.CentreHeight, [.. body.Wheels.Select(w => w with { Y = -w.Y })]);
    }

    /// <summary>A pose at rest: heading, then pitch (nose down), then roll [rad].</summary>
    public static BodyPose<R1> Still(double x, double y, double heading = 0.0, double pitch = 0.0, double roll = 0.0, double z = Centre)
    {
        (double sh, double ch) = Math.SinCos(heading);
        (double sp, double cp) = Math.SinCos(pitch);
        (double sr, double cr) = Math.SinCos(roll);
        return new BodyPose<R1>
        {
            X = x,
            Y = y,
            Z = z,
            XX = ch * cp,
            XY = (ch * sp * sr) - (sh * cr),
            XZ = (ch * sp * cr) + (sh * sr),
            YX = sh * cp,
            YY = (sh * sp * sr) + (ch * cr),
            YZ = (sh * sp * cr) - (ch * sr),
            ZX = -sp,
            ZY = cp * sr,
            ZZ = cp * cr,
        };
    }

    /// <summary>A pose turned by exactly half a turn.</summary>
    public static BodyPose<R1> Facing(double x, double y, double z = Centre) => Turned(Still(-x, -y, z: z));

    /// <summary>A pose seen from a floor turned by half a turn.</summary>
    public static BodyPose<R1> Turned(BodyPose<R1> p)
    {
        (p.X, p.Y, p.VX, p.VY, p.WX, p.WY) = (-p.X, -p.Y, -p.VX, -p.VY, -p.WX, -p.WY);
        (p.XX, p.XY, p.XZ, p.YX, p.YY, p.YZ) = (-p.XX, -p.XY, -p.XZ, -p.YX, -p.YY, -p.YZ);
        return p;
    }

    /// <summary>A pose with left and right exchanged.</summary>
    public static BodyPose<R1> Mirror(BodyPose<R1> p)
    {
        (p.Y, p.VY, p.WX, p.WZ) = (-p.Y, -p.VY, -p.WX, -p.WZ);
        (p.XY, p.YX, p.YZ, p.ZY) = (-p.XY, -p.YX, -p.YZ, -p.ZY);
        return p;
    }

    /// <summary>Two random poses whose outlines mostly overlap, tilted up to an angle [rad].</summary>
    public static (BodyPose<R1> A, BodyPose<R1> B) Poses(Random random, double tilt = 1.2)
    {
        double distance = 0.12 + (0.09 * random.NextDouble());
        double angle = Math.Tau * random.NextDouble();
        return (Pose(random, 0.3, -0.2, tilt), Pose(random, 0.3 + (distance * Math.Cos(angle)), -0.2 + (distance * Math.Sin(angle)), tilt));
    }

    private static BodyPose<R1> Pose(Random random, double x, double y, double tilt)
    {
        double Wide(double width) => width * ((2.0 * random.NextDouble()) - 1.0);
        double share = random.Next(3) switch { 0 => 0.0, 1 => 0.05, _ => 1.0 };
        BodyPose<R1> p = Still(x, y, Wide(Math.PI), Wide(share * tilt), Wide(share * tilt), Centre + Wide(0.02));
        (p.VX, p.VY, p.VZ) = (Wide(1.0), Wide(0.5), Wide(0.2));
        (p.WX, p.WY, p.WZ) = (Wide(1.0), Wide(1.0), Wide(3.0));
        return p;
    }

    /// <summary>One evaluation; the bristles given are replaced.</summary>
    public static Outcome Evaluate(ContactPair<R1> pair, in BodyPose<R1> a, in BodyPose<R1> b, double g, R1[] z)
    {
        var dz = new R1[z.Length];
        pair.Evaluate(a, b, g, z, dz);
        double[] force = [pair.ForceX.Value, pair.ForceY.Value, pair.ForceZ.Value];
        return new(
            force, [pair.OnA.X.Value, pair.OnA.Y.Value, pair.OnA.Z.Value], [pair.OnB.X.Value, pair.OnB.Y.Value, pair.OnB.Z.Value],
            [.. z.Select(q => q.Value)], [.. dz.Select(q => q.Value)]);
    }

    /// <summary>The same with bristles at rest.</summary>
    public static Outcome Evaluate(ContactPair<R1> pair, in BodyPose<R1> a, in BodyPose<R1> b) =>
        Evaluate(pair, a, b, 0.0, new R1[ContactPair<R1>.BristleCount]);

    /// <summary>Force on A [N], moments about either centre of mass [N m], floor axes; bristles and their rates.</summary>
    public sealed record Outcome(double[] Force, double[] OnA, double[] OnB, double[] Z, double[] Rates);
}
