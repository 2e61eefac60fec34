using PushSim.Contact;
using PushSim.Tyres;

namespace PushSim.Tests.Oracle;

/// <summary>
/// Wheels of one body against the solids of another: cylinders whose line nearest to a face presses into it like an edge, and whose tread and sides
/// feel the solid's edges. Written from the model's page, in floor axes, wheel by wheel and solid by solid.
/// </summary>
/// <param name="settings">What the contact is made of.</param>
/// <param name="own">The body with the solids.</param>
/// <param name="rider">The body with the wheels.</param>
internal sealed class OracleRims(ContactSettings settings, OracleBody own, OracleBody rider)
{
    private const double Band = 1.25;
    private const double Rim = 0.5e-3;
    private const double CreepSpeed = 0.02;
    private readonly double _damping = OracleRestitution.Damping(settings.Restitution);
    private readonly List<(Vector At, Vector Force)> _pushes = [];

    /// <summary>Force on the wheels' body, floor axes.</summary>
    public Vector Force;

    public void Push(double h)
    {
        Force = default;
        for (int i = 0; i < rider.Wheels.Count; i++)
        {
            WheelSettings w = rider.Wheels[i];
            (Vector hub, Vector axle) = rider.Wheel(i);
            foreach (OracleSolid solid in own.Solids)
            {
                _pushes.Clear();
                Press(solid, hub, axle, w, 0.5 * rider.WidthOf(w));
                Give(h, i, hub, axle, w);
            }
        }
    }

    private void Press(OracleSolid solid, Vector hub, Vector axle, WheelSettings w, double half)
    {
        double radius = w.Radius;
        double reach = double.Hypot(radius, half);
        for (int f = 0; f < solid.Faces; f++)
        {
            if (solid.Presses(f) && Depth(solid, f, hub) <= -reach)
            {
                return;
            }
        }
        double stiffness = 1.0 / ((1.0 / (ContactSettings.EdgeShare * settings.Stiffness)) + (2.0 * (half + 0.025) / w.Tyre.VerticalStiffness));

        // ends of the line that follows each face
        var ends = new (Vector P, Vector Q)[solid.Faces];
        double[] overlaps = new double[solid.Faces];
        for (int f = 0; f < solid.Faces; f++)
        {
            Vector n = solid.Normals[f];
            Vector across = n - (n.Dot(axle) * axle);
            Vector middle = hub - ((radius / Math.Sqrt(across.Dot(across) + 1e-6)) * across);
            ends[f] = (middle - (half * axle), middle + (half * axle));
            overlaps[f] = Math.Max(Depth(solid, f, ends[f].P), Depth(solid, f, ends[f].Q));
        }
        double plus = half - solid.Corners.Min(c => (c - hub).Dot(axle));
        double minus = half + solid.Corners.Max(c => (c - hub).Dot(axle));
        double least = Math.Min(Math.Min(plus, minus), Enumerable.Range(0, solid.Faces).Where(solid.Presses).Min(f => overlaps[f]));
        if (!(least > 0.0))
        {
            return;
        }
        double Weight(double overlap) => Math.Max(0.0, (Band * least) - overlap);
        double all = Weight(plus) + Weight(minus) + Enumerable.Range(0, solid.Faces).Where(solid.Presses).Sum(f => Weight(overlaps[f]));
        double open = 0.0;
        for (int f = 0; f < solid.Faces; f++)
        {
            double weight = solid.Presses(f) ? Weight(overlaps[f]) / all : 0.0;
            if (weight > 0.0)
            {
                open += weight * (1.0 - OnFace(solid, f, ends[f], stiffness * weight));
            }
        }
        foreach ((int from, int to) in solid.Edges)
        {
            (Vector p, Vector q) = (solid.Corners[from], solid.Corners[to]);
            OnTread(p, q, hub, axle, radius, half, stiffness * open);
            OnSide(p, q, hub, axle, radius, half, stiffness * Weight(plus) / all);
            OnSide(p, q, hub, -1.0 * axle, radius, half, stiffness * Weight(minus) / all);
        }
    }

    private static double Depth(OracleSolid solid, int face, Vector p) => (solid.Points[face] - p).Dot(solid.Normals[face]);

    /// <summary>Pushes by a face; returns the share of the line that the face has.</summary>
    private double OnFace(OracleSolid solid, int face, (Vector P, Vector Q) line, double stiffness)
    {
        double from = -0.5, to = 0.5, shares = 1.0, spans = 1.0;
        foreach (int plane in solid.Beside(face))
        {
            (from, to, double share, double span) = Cut(from, to, Depth(solid, plane, line.P), Depth(solid, plane, line.Q));
            shares *= share;
            spans *= span;
        }
        if (to > from && spans > 0.0)
        {
            Add(line.P, line.Q, from, to, Depth(solid, face, line.P), Depth(solid, face, line.Q), solid.Normals[face], stiffness * shares / spans);
        }
        return shares;
    }

    private void OnTread(Vector p, Vector q, Vector hub, Vector axle, double radius, double half, double stiffness)
    {
        if (!(stiffness > 0.0) || Chord(p, q, hub, axle, radius) is not { } chord)
        {
            return;
        }
        (double hp, double hq) = ((p - hub).Dot(axle), (q - hub).Dot(axle));
        (double from, double to, double share, double span) = Cut(chord.From, chord.To, half - hp, half - hq);
        (from, to, double share2, double span2) = Cut(from, to, half + hp, half + hq);
        if (to <= from || !(span * span2 > 0.0))
        {
            return;
        }
        double at = Math.Clamp(chord.Nearest, from, to);
        Vector r = Across((0.5 * (p + q)) + (at * (q - p)) - hub, axle);
        Vector n = (1.0 / Math.Sqrt(r.Dot(r) + 1e-12)) * r;
        (double dp, double dq) = (radius - n.Dot(p - hub), radius - n.Dot(q - hub));
        Add(p, q, from, to, dp, dq, -1.0 * n, stiffness * OraclePressure.Lying((q - p).Length, dq - dp) * share * share2 / (span * span2));
    }

    private void OnSide(Vector p, Vector q, Vector hub, Vector outward, double radius, double half, double stiffness)
    {
        if (!(stiffness > 0.0) || Chord(p, q, hub, outward, radius) is not { } chord || chord.To <= chord.From)
        {
            return;
        }
        (double dp, double dq) = (half - (p - hub).Dot(outward), half - (q - hub).Dot(outward));
        Add(p, q, chord.From, chord.To, dp, dq, -1.0 * outward, stiffness * chord.Deep * OraclePressure.Lying((q - p).Length, dq - dp));
    }

    private static Vector Across(Vector v, Vector axle) => v - (v.Dot(axle) * axle);

    /// <summary>The stretch of an edge within the wheel's circle the place nearest to the axle, unlimited, and the share of the sides; null where it passes outside.</summary>
    private static (double From, double To, double Nearest, double Deep)? Chord(Vector p, Vector q, Vector hub, Vector axle, double radius)
    {
        Vector r = Across((0.5 * (p + q)) - hub, axle);
        Vector e = Across(q - p, axle);
        double square = e.Dot(e) + 1e-12;
        double nearest = -r.Dot(e) / square;
        Vector d = r + (nearest * e);
        double within = (radius * radius) - d.Dot(d);
        if (within < 0.0)
        {
            return null;
        }
        double half = Math.Sqrt(within / square);
        return (Math.Max(-0.5, nearest - half), Math.Min(0.5, nearest + half), nearest, Math.Min(1.0, within / (4.0 * Rim * radius)));
    }

    private static (double From, double To, double Share, double Span) Cut(double from, double to, double gp, double gq)
    {
        double most = Math.Max(Math.Abs(gq - gp), 2.0 * Rim);
        double m = (gq - gp) / most;
        double share = Math.Clamp(0.5 + ((gp + gq) / (2.0 * most)), 0.0, 1.0);
        double span = 1.0 - ((1.0 - share) * Math.Abs(m));
        double middle = 0.5 * m * (1.0 - share);
        return (Math.Max(from, middle - (0.5 * span)), Math.Min(to, middle + (0.5 * span)), share, span);
    }

    // n is the way in which the wheel is pushed
    private void Add(Vector p, Vector q, double from, double to, double dp, double dq, Vector n, double stiffness)
    {
        (double area, double moment) = OraclePressure.Of(from, to, (0.5 * (dp + dq)) + (from * (dq - dp)), (0.5 * (dp + dq)) + (to * (dq - dp)), (q - p).Length);
        if (area > 0.0)
        {
            Vector at = (0.5 * (p + q)) + ((moment / area) * (q - p));
            double closing = (own.Velocity(at) - rider.Velocity(at)).Dot(n);
            _pushes.Add((at, (stiffness * area * Math.Max(0.0, 1.0 + (_damping * closing))) * n));
        }
    }

    /// <summary>Hands the forces on, with friction at their middle, and turns the wheel by what they do about its axle.</summary>
    private void Give(double h, int wheel, Vector hub, Vector axle, WheelSettings w)
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
        Vector v = rider.Velocity(at) + (rider.Spin(wheel) * axle.Cross(at - hub)) - own.Velocity(at);
        v -= v.Dot(n) * n;
        _pushes.Add((at, (-w.Tyre.KineticFriction * sum.Length / Math.Sqrt(v.Dot(v) + (CreepSpeed * CreepSpeed))) * v));
        double torque = 0.0;
        foreach ((Vector place, Vector force) in _pushes)
        {
            rider.Push(place, force);
            own.Push(place, -1.0 * force);
            Force += force;
            torque += axle.Dot((place - hub).Cross(force));
        }
        rider.Turn(wheel, h, torque);
    }
}
