using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Numerics;

namespace PushSim.Tests.Contact;

/// <summary>Bodies, random states and one-line evaluations for the contact's tests.</summary>
internal static class Touching
{
    public static readonly ContactSettings Usual = new();

    /// <summary>A box about its centre of mass, faces from low to high; with an angle its front is a ramp from low to high.</summary>
    public static ContactBody Box(double length = 0.2, double width = 0.18, double low = 0.005, double high = 0.05, double? ramp = null, double rampTip = 0.001, double centre = 0.02)
    {
        double x = 0.5 * length;
        double y = 0.5 * width;
        FaceSettings side = new(low, high);
        FaceSettings front = ramp is null ? side : new(rampTip, high, ramp);
        return new([(x, -y), (x, y), (-x, y), (-x, -y)], [front, side, side, side], centre);
    }

    /// <summary>A hexagon with a corner in front.</summary>
    public static ContactBody Hexagon()
    {
        FaceSettings face = new(0.004, 0.04);
        FaceSettings high = new(0.008, 0.06);
        return new(
            [(0.1, 0.0), (0.06, 0.08), (-0.07, 0.09), (-0.09, 0.0), (-0.07, -0.09), (0.06, -0.08)],
            [face, high, high, high, high, face],
            0.018);
    }

    /// <summary>An octagon without any symmetry; with an angle two of its faces are ramps.</summary>
    public static ContactBody Crooked(double? ramp = null) =>
        new(
            [(0.1, -0.03), (0.095, 0.05), (0.05, 0.1), (-0.03, 0.105), (-0.085, 0.06), (-0.1, -0.02), (-0.06, -0.09), (0.04, -0.1)],
            [
                new(0.002, 0.04, ramp), new(0.004, 0.045), new(0.006, 0.05), new(0.003, 0.05), new(0.004, 0.04), new(0.001, 0.03, ramp),
                new(0.005, 0.06), new(0.006, 0.045),
            ],
            0.022);

    /// <summary>Two of the bodies above by number, 0 to 24.</summary>
    public static (ContactBody A, ContactBody B) Two(int which)
    {
        ContactBody[] all = [Box(), Hexagon(), Crooked(), Box(ramp: 0.5, high: 0.03), Crooked(0.6)];
        return (all[which % 5], all[which / 5 % 5]);
    }

    /// <summary>The body with left and right exchanged; the corners start somewhere else.</summary>
    public static ContactBody Mirror(ContactBody body)
    {
        int n = body.Corners.Count;
        (double, double)[] corners = [.. Enumerable.Range(0, n).Select(i => body.Corners[((2 * n) - i + 2) % n]).Select(c => (c.X, -c.Y))];
        FaceSettings[] faces = [.. Enumerable.Range(0, n).Select(i => body.Faces[((2 * n) - i + 1) % n])];
        return new(corners, faces, body.CentreHeight);
    }

    /// <summary>A random pose about a place, tilted up to 3 degrees.</summary>
    public static BodyPose<R1> Pose(Random random, double x, double y)
    {
        double Wide(double width) => width * ((2.0 * random.NextDouble()) - 1.0);
        double heading = Wide(Math.PI);
        return new BodyPose<R1>
        {
            X = x,
            Y = y,
            Sine = Math.Sin(heading),
            Cosine = Math.Cos(heading),
            Heave = Wide(0.004),
            Pitch = Wide(0.05),
            Roll = Wide(0.05),
            Motion = new BodyMotion<R1>
            {
                U = Wide(1.0), V = Wide(0.5), ZDot = Wide(0.2), R = Wide(3.0), ThetaDot = Wide(1.0), PhiDot = Wide(1.0),
            },
        };
    }

    /// <summary>A pose without tilt or motion.</summary>
    public static BodyPose<R1> Still(double x, double y, double heading) =>
        new() { X = x, Y = y, Sine = Math.Sin(heading), Cosine = Math.Cos(heading) };

    /// <summary>A pose turned by exactly half a turn.</summary>
    public static BodyPose<R1> Facing(double x, double y) => new() { X = x, Y = y, Cosine = -1.0 };

    /// <summary>Two random poses whose outlines mostly overlap by a few millimetres to a few centimetres.</summary>
    public static (BodyPose<R1> A, BodyPose<R1> B) Poses(Random random)
    {
        double distance = 0.15 + (0.06 * random.NextDouble());
        double angle = Math.Tau * random.NextDouble();
        return (Pose(random, 0.3, -0.2), Pose(random, 0.3 + (distance * Math.Cos(angle)), -0.2 + (distance * Math.Sin(angle))));
    }

    /// <summary>One evaluation from zero wrenches; the bristles given are replaced.</summary>
    public static Outcome Evaluate(ContactPair<R1> pair, in BodyPose<R1> a, in BodyPose<R1> b, double g, R1[] z)
    {
        var dz = new R1[z.Length];
        Wrench<R1> onA = default;
        Wrench<R1> onB = default;
        pair.Evaluate(a, b, g, z, dz, ref onA, ref onB);
        return new(Numbers(onA), Numbers(onB), [.. z.Select(q => q.Value)], [.. dz.Select(q => q.Value)], onA, onB);
    }

    /// <summary>The same with bristles at rest.</summary>
    public static Outcome Evaluate(ContactPair<R1> pair, in BodyPose<R1> a, in BodyPose<R1> b) =>
        Evaluate(pair, a, b, 0.0, new R1[pair.BristleCount]);

    private static double[] Numbers(in Wrench<R1> w) => [w.Fx.Value, w.Fy.Value, w.Fz.Value, w.Roll.Value, w.Pitch.Value, w.Yaw.Value];

    /// <summary>Wrenches as F_x, F_y, F_z, roll, pitch, yaw; bristles and their rates.</summary>
    public sealed record Outcome(double[] OnA, double[] OnB, double[] Z, double[] Rates, Wrench<R1> WrenchA, Wrench<R1> WrenchB);
}
