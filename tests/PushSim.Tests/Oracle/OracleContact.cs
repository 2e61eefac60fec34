using PushSim.Contact;

namespace PushSim.Tests.Oracle;

/// <summary>
/// Contact of two bodies, both ways, solid by solid: edges of the one press into the faces of the other,
///
///     N_e = k w_f lying density n0 max(0, 1 + lambda closing)   along n_f at x,
///
/// and one bristle of three components rubs at the middle of all these forces. Written from the model's page, in floor axes, without
/// the engine's order, frames or sums.
/// </summary>
/// <param name="settings">What the contact is made of.</param>
/// <param name="one">First body.</param>
/// <param name="two">Second body.</param>
internal sealed class OracleContact(ContactSettings settings, OracleBody one, OracleBody two)
{
    private const double Band = 1.25;
    private const double Rim = 0.5e-3;
    private readonly double _damping = OracleRestitution.Damping(settings.Restitution);
    private readonly OracleRub _rub = new(settings.Friction, settings.FrictionDeflection);
    private readonly OracleRims _onTwo = new(settings, two, one);
    private readonly OracleRims _onOne = new(settings, one, two);
    private readonly OracleTreads _treads = new(settings, one, two);
    private double _normal, _upright;
    private Vector _place, _sum;

    /// <summary>Force on the second body, floor axes.</summary>
    public double ForceX, ForceY, ForceZ;

    public void Push(double h)
    {
        ForceX = ForceY = ForceZ = 0.0;
        (_normal, _upright, _place, _sum) = (0.0, 0.0, default, default);
        foreach (OracleSolid a in one.Solids)
        {
            foreach (OracleSolid b in two.Solids)
            {
                Press(a, b);
            }
        }
        _onTwo.Push(h);
        _onOne.Push(h);
        _treads.Push(h);
        Vector wheels = _onOne.Force - _onTwo.Force + _treads.Force;
        ForceX += wheels.X;
        ForceY += wheels.Y;
        ForceZ += wheels.Z;
        if (!(_normal > 0.0))
        {
            _rub.Rest(h);
            return;
        }
        Vector at = (1.0 / _normal) * _place;
        Vector n = (1.0 / _sum.Length) * _sum;
        double forget = settings.FrictionMemory > 0.0 ? _upright / _normal / settings.FrictionMemory : 0.0;
        Give(at, _rub.Pull(h, _normal, n, two.Velocity(at) - one.Velocity(at), forget));
    }

    private void Press(OracleSolid a, OracleSolid b)
    {
        double[] ofA = Overlaps(a, b);
        double[] ofB = Overlaps(b, a);
        double least = Math.Min(Least(a, ofA), Least(b, ofB));
        if (!(least > 0.0))
        {
            return;
        }
        double weights = Weights(a, ofA, least) + Weights(b, ofB, least);
        for (int f = 0; f < a.Faces; f++)
        {
            Press(a, f, b, Weight(a, f, ofA, least) / weights, 1.0);
        }
        for (int f = 0; f < b.Faces; f++)
        {
            Press(b, f, a, Weight(b, f, ofB, least) / weights, -1.0);
        }
    }

    private static double[] Overlaps(OracleSolid own, OracleSolid other)
    {
        double[] overlaps = new double[own.Faces];
        for (int f = 0; f < own.Faces; f++)
        {
            double most = double.NegativeInfinity;
            foreach (Vector c in other.Corners)
            {
                most = Math.Max(most, Depth(own, f, c));
            }
            overlaps[f] = most;
        }
        return overlaps;
    }

    private static double Depth(OracleSolid own, int face, Vector p) => (own.Points[face] - p).Dot(own.Normals[face]);

    private static double Least(OracleSolid own, double[] overlaps)
    {
        double least = double.PositiveInfinity;
        for (int f = 0; f < own.Faces; f++)
        {
            least = own.Presses(f) ? Math.Min(least, overlaps[f]) : least;
        }
        return least;
    }

    private static double Weight(OracleSolid own, int face, double[] overlaps, double least) => own.Presses(face) ? Math.Max(0.0, (Band * least) - overlaps[face]) : 0.0;

    private static double Weights(OracleSolid own, double[] overlaps, double least)
    {
        double sum = 0.0;
        for (int f = 0; f < own.Faces; f++)
        {
            sum += Weight(own, f, overlaps, least);
        }
        return sum;
    }

    // sign 1: the face is the first body's
    private void Press(OracleSolid own, int face, OracleSolid other, double weight, double sign)
    {
        if (weight <= 0.0)
        {
            return;
        }
        Vector n = own.Normals[face];
        foreach ((int from, int to) in other.Edges)
        {
            (Vector p, Vector q) = (other.Corners[from], other.Corners[to]);
            (double dp, double dq) = (Depth(own, face, p), Depth(own, face, q));
            if (dp <= 0.0 && dq <= 0.0)
            {
                continue;
            }
            (double s0, double s1, double density) = Within(own, face, p, q);
            if (s1 <= s0)
            {
                continue;
            }
            double length = (q - p).Length;
            (double area, double moment) = OraclePressure.Of(s0, s1, (0.5 * (dp + dq)) + (s0 * (dq - dp)), (0.5 * (dp + dq)) + (s1 * (dq - dp)), length);
            if (!(area > 0.0))
            {
                continue;
            }
            Vector at = (0.5 * (p + q)) + ((moment / area) * (q - p));
            double closing = sign * (one.Velocity(at) - two.Velocity(at)).Dot(n);
            double force = ContactSettings.EdgeShare * settings.Stiffness * weight * OraclePressure.Lying(length, dq - dp) * density * area * Math.Max(0.0, 1.0 + (_damping * closing));
            _normal += force;
            _upright += own.IsUpright(face) ? force : 0.0;
            _place += force * at;
            _sum += (sign * force) * n;
            Give(at, (sign * force) * n);
        }
    }

    /// <summary>The stretch of an edge that lies within the planes beside a face, and how densely it presses there.</summary>
    private static (double From, double To, double Density) Within(OracleSolid own, int face, Vector p, Vector q)
    {
        double from = -0.5, to = 0.5, shares = 1.0, spans = 1.0;
        foreach (int plane in own.Beside(face))
        {
            (double gp, double gq) = (Depth(own, plane, p), Depth(own, plane, q));
            double most = Math.Max(Math.Abs(gq - gp), 2.0 * Rim);
            double m = (gq - gp) / most;
            double share = Math.Clamp(0.5 + ((gp + gq) / (2.0 * most)), 0.0, 1.0);
            double span = 1.0 - ((1.0 - share) * Math.Abs(m));
            double middle = 0.5 * m * (1.0 - share);
            from = Math.Max(from, middle - (0.5 * span));
            to = Math.Min(to, middle + (0.5 * span));
            shares *= share;
            spans *= span;
        }
        return (from, to, spans > 0.0 ? shares / spans : 0.0);
    }

    private void Give(Vector at, Vector force)
    {
        two.Push(at, force);
        one.Push(at, -1.0 * force);
        ForceX += force.X;
        ForceY += force.Y;
        ForceZ += force.Z;
    }
}
