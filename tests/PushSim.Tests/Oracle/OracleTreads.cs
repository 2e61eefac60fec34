using PushSim.Contact;
using PushSim.Tyres;

namespace PushSim.Tests.Oracle;

/// <summary>
/// Wheels of one body against wheels of another, pair by pair: both treads, each tread, and each side press, by how little they overlap. Written from the
/// model's page, in floor axes.
/// </summary>
/// <param name="settings">What the contact is made of.</param>
/// <param name="one">First body.</param>
/// <param name="two">Second body.</param>
internal sealed class OracleTreads(ContactSettings settings, OracleBody one, OracleBody two)
{
    private const double Band = 1.25;
    private const double Lying = 1e-3;
    private const double CreepSpeed = 0.02;
    private readonly double _damping = OracleRestitution.Damping(settings.Restitution);
    private readonly List<(Vector At, Vector Force)> _pushes = [];

    /// <summary>Force on the second body, floor axes.</summary>
    public Vector Force;

    public void Push(double h)
    {
        Force = default;
        for (int i = 0; i < one.Wheels.Count; i++)
        {
            for (int j = 0; j < two.Wheels.Count; j++)
            {
                Cylinder a = Of(one, i);
                Cylinder b = Of(two, j);
                if ((b.Hub - a.Hub).Length < 1.05 * (double.Hypot(a.Radius, a.Half) + double.Hypot(b.Radius, b.Half)))
                {
                    _pushes.Clear();
                    Press(a, b);
                    Give(h, i, j, a, b);
                }
            }
        }
    }

    private static Cylinder Of(OracleBody body, int wheel)
    {
        (Vector hub, Vector axle) = body.Wheel(wheel);
        WheelSettings w = body.Wheels[wheel];
        return new Cylinder(hub, axle, w.Radius, 0.5 * body.WidthOf(w), w.Tyre);
    }

    private void Press(Cylinder a, Cylinder b)
    {
        Vector n = Shortest(a, b);
        n = (1.0 / n.Length) * n;

        // planes of a wheel, outward, and how many times each counts
        List<(Cylinder Own, Cylinder Other, Vector Normal)> planes =
        [
            (a, b, n), (b, a, -1.0 * n), (a, b, Across(a, b.Deepest(-1.0 * n) - a.Hub)), (b, a, Across(b, a.Deepest(n) - b.Hub)),
            (a, b, a.Axle), (a, b, -1.0 * a.Axle), (b, a, b.Axle), (b, a, -1.0 * b.Axle),
        ];
        double[] overlaps = [.. planes.Select(p => p.Own.Reach(p.Normal) + p.Other.Reach(p.Normal) - (p.Other.Hub - p.Own.Hub).Dot(p.Normal))];
        double least = overlaps.Min();
        if (!(least > 0.0))
        {
            return;
        }
        double[] weights = [.. overlaps.Select(d => Math.Max(0.0, (Band * least) - d))];
        double edge = ContactSettings.EdgeShare * settings.Stiffness;
        double stiffness = 1.0 / ((1.0 / edge) + (2.0 * (a.Half + 0.025) / a.Tyre.VerticalStiffness) + (2.0 * (b.Half + 0.025) / b.Tyre.VerticalStiffness));
        for (int k = 0; k < planes.Count; k++)
        {
            if (weights[k] > 0.0)
            {
                OnPlane(planes[k].Own, planes[k].Other, planes[k].Normal, stiffness * weights[k] / weights.Sum(), k is 0 or 2 or 4 or 5 ? 1.0 : -1.0);
            }
        }
    }

    // sign 1: the plane is the first body's
    private void OnPlane(Cylinder own, Cylinder other, Vector n, double stiffness, double sign)
    {
        Vector across = n - (n.Dot(other.Axle) * other.Axle);
        Vector middle = other.Hub - ((other.Radius / Math.Sqrt(across.Dot(across) + Lying)) * across);
        (Vector p, Vector q) = (middle - (other.Half * other.Axle), middle + (other.Half * other.Axle));
        double Depth(Vector at) => own.Reach(n) - (at - own.Hub).Dot(n);
        (double area, double moment) = OraclePressure.Of(-0.5, 0.5, Depth(p), Depth(q), 2.0 * other.Half);
        if (!(area > 0.0))
        {
            return;
        }
        Vector at = own.Within(middle + ((moment / area) * (q - p)));
        double closing = sign * (one.Velocity(at) - two.Velocity(at)).Dot(n);
        _pushes.Add((at, (sign * stiffness * area * Math.Max(0.0, 1.0 + (_damping * closing))) * n));
    }

    /// <summary>From the one axle to the other: least of |c + b a2 - a a1|^2 + 1e-4 (a^2 + b^2), inside the lengths or on their borders.</summary>
    private static Vector Shortest(Cylinder one, Cylinder two)
    {
        const double More = 1.0001;
        Vector c = two.Hub - one.Hub;
        (double p, double q, double g) = (c.Dot(one.Axle), c.Dot(two.Axle), one.Axle.Dot(two.Axle));
        double OfOne(double b) => Math.Clamp(((g * b) + p) / More, -one.Half, one.Half);
        double OfTwo(double a) => Math.Clamp(((g * a) - q) / More, -two.Half, two.Half);
        double det = (More * More) - (g * g);
        (double A, double B) free = (((More * p) - (g * q)) / det, ((g * p) - (More * q)) / det);
        List<(double A, double B)> ends =
        [
            (one.Half, OfTwo(one.Half)), (-one.Half, OfTwo(-one.Half)), (OfOne(two.Half), two.Half), (OfOne(-two.Half), -two.Half),
        ];
        if (Math.Abs(free.A) <= one.Half && Math.Abs(free.B) <= two.Half)
        {
            ends.Add(free);
        }
        Vector Way((double A, double B) e) => c + (e.B * two.Axle) - (e.A * one.Axle);
        return Way(ends.MinBy(e => Way(e).Dot(Way(e)) + ((More - 1.0) * ((e.A * e.A) + (e.B * e.B)))));
    }

    private static Vector Across(Cylinder own, Vector v)
    {
        Vector across = v - (v.Dot(own.Axle) * own.Axle);
        return (1.0 / across.Length) * across;
    }

    /// <summary>Hands the forces on the second body on, with friction at their middle, and turns both wheels by what they do about their axles.</summary>
    private void Give(double h, int i, int j, Cylinder a, Cylinder b)
    {
        double normal = _pushes.Sum(p => p.Force.Length);
        if (!(normal > 0.0))
        {
            return;
        }
        Vector at = default, sum = default;
        foreach ((Vector place, Vector force) in _pushes)
        {
            at += (force.Length / normal) * place;
            sum += force;
        }
        Vector n = (1.0 / sum.Length) * sum;
        Vector v = two.Velocity(at) + (two.Spin(j) * b.Axle.Cross(at - b.Hub)) - one.Velocity(at) - (one.Spin(i) * a.Axle.Cross(at - a.Hub));
        v -= v.Dot(n) * n;
        double friction = Math.Min(a.Tyre.KineticFriction, b.Tyre.KineticFriction);
        _pushes.Add((at, (-friction * sum.Length / Math.Sqrt(v.Dot(v) + (CreepSpeed * CreepSpeed))) * v));
        double ofA = 0.0, ofB = 0.0;
        foreach ((Vector place, Vector force) in _pushes)
        {
            two.Push(place, force);
            one.Push(place, -1.0 * force);
            Force += force;
            ofA -= a.Axle.Dot((place - a.Hub).Cross(force));
            ofB += b.Axle.Dot((place - b.Hub).Cross(force));
        }
        one.Turn(i, h, ofA);
        two.Turn(j, h, ofB);
    }

    private sealed record Cylinder(Vector Hub, Vector Axle, double Radius, double Half, TyreSettings Tyre)
    {
        public double Reach(Vector n)
        {
            double along = n.Dot(Axle);
            double across = 1.0 - (along * along);
            return (Radius * across / Math.Sqrt(across + Lying)) + (Half * Math.Abs(along));
        }

        /// <summary>Deepest place along a direction, its end of the axle chosen softly.</summary>
        public Vector Deepest(Vector n)
        {
            double along = n.Dot(Axle);
            Vector across = n - (along * Axle);
            return Hub + ((Radius / Math.Sqrt(across.Dot(across) + Lying)) * across) + ((Half * along / Math.Sqrt((along * along) + Lying)) * Axle);
        }

        public Vector Within(Vector at)
        {
            double along = (at - Hub).Dot(Axle);
            Vector across = at - Hub - (along * Axle);
            return Hub + (Math.Min(1.0, Radius / across.Length) * across) + (Math.Clamp(along, -Half, Half) * Axle);
        }
    }
}
