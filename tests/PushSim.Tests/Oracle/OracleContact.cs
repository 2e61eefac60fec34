using PushSim.Contact;

namespace PushSim.Tests.Oracle;

/// <summary>
/// Contact of two convex outlines, by plain sums along their faces.
///
/// Overlap of a face: how far the other outline reaches behind its line. Every face whose overlap is within 25 % of the
/// least one acts, with a weight that falls linearly to zero there; the weights are scaled to sum 1 (the model as written does not
/// say so; without it two equal faces nose to nose would be twice as stiff).
///
/// Along the stretch of an acting face that the other outline covers, depth(s) is how far the other reaches behind it, and
///
///     F = (1 + d depth') integral of k depth ds, at least 0, at its centre and the middle of the common height of the two
///     faces, with depth' at that centre.
///
/// Friction: one bristle along the face (and, on a ramp, one up its slope), |F_t| at most mu N.
/// </summary>
/// <param name="settings">What the contact is made of.</param>
/// <param name="one">First body.</param>
/// <param name="two">Second body.</param>
/// <param name="bristleTime">Damping tau of the friction's bristle [s]; the model as written states none.</param>
internal sealed class OracleContact(ContactSettings settings, OracleBody one, OracleBody two, double bristleTime = 0.0)
{
    // Three-point Gauss rule on (0, 1): exact for the products of straight lines that depth and its rate are.
    private static readonly double[] s_place = [0.5 - Math.Sqrt(0.15), 0.5, 0.5 + Math.Sqrt(0.15)];
    private static readonly double[] s_weight = [5.0 / 18.0, 8.0 / 18.0, 5.0 / 18.0];
    private const double Share = 0.25;
    private readonly double[] _overlap = new double[16];
    private readonly double[] _breaks = new double[10];
    private double _bristleAlong;
    private double _bristleUp;

    // Sums over the acting faces of one step, and over the stretches of one face: normal force, its moments for the centre, its direction.
    private double _normal, _centreX, _centreY, _centreZ, _dirX, _dirY, _dirZ;
    private double _faceNormal, _faceX, _faceY, _faceZ, _faceDirX, _faceDirY, _faceDirZ;

    /// <summary>Horizontal and vertical force on the second body, floor axes, as vector sum.</summary>
    public double ForceX, ForceY, ForceZ;

    public void Push(double h)
    {
        ForceX = ForceY = ForceZ = 0.0;
        _normal = _centreX = _centreY = _centreZ = _dirX = _dirY = _dirZ = 0.0;
        int faces = one.Faces.Length;
        double least = double.PositiveInfinity;
        for (int f = 0; f < faces + two.Faces.Length; f++)
        {
            _overlap[f] = f < faces ? Overlap(one, f, two) : Overlap(two, f - faces, one);
            least = Math.Min(least, _overlap[f]);
        }
        if (least > 0.0)
        {
            double sum = 0.0;
            for (int f = 0; f < faces + two.Faces.Length; f++)
            {
                sum += Weight(_overlap[f], least);
            }
            for (int f = 0; f < faces + two.Faces.Length; f++)
            {
                double weight = Weight(_overlap[f], least) / sum;
                if (weight > 0.0)
                {
                    Press(f < faces ? one : two, f < faces ? f : f - faces, f < faces ? two : one, f < faces ? 1.0 : -1.0, weight);
                    Close();
                }
            }
        }
        if (_normal > 0.0)
        {
            Rub(h);
        }
        else
        {
            // Apart, the bristle relaxes as that of a lifted tyre does.
            _bristleAlong /= 1.0 + (h / 0.001);
            _bristleUp /= 1.0 + (h / 0.001);
        }
    }

    private static double Weight(double overlap, double least) => Math.Max(0.0, 1.0 - ((overlap - least) / (Share * least)));

    private static double Overlap(OracleBody body, int face, OracleBody other)
    {
        Line(body, face, out double ax, out double ay, out double nx, out double ny, out _);
        double deepest = double.NegativeInfinity;
        int at = 0;
        for (int i = 0; i < other.CornerX.Length; i++)
        {
            double depth = -(((other.CornerX[i] - ax) * nx) + ((other.CornerY[i] - ay) * ny));
            if (depth > deepest)
            {
                deepest = depth;
                at = i;
            }
        }
        double x = other.CornerX[at];
        double y = other.CornerY[at];
        return deepest - Apart(body, other, x, y, Height(body, body.Faces[face], other, other.Faces[at], x, y), nx, ny);
    }

    /// <summary>First corner, outward normal and length of a face; corners run counter-clockwise.</summary>
    private static void Line(OracleBody body, int face, out double ax, out double ay, out double nx, out double ny, out double length)
    {
        int next = (face + 1) % body.CornerX.Length;
        ax = body.CornerX[face];
        ay = body.CornerY[face];
        double dx = body.CornerX[next] - ax;
        double dy = body.CornerY[next] - ay;
        length = Math.Sqrt((dx * dx) + (dy * dy));
        nx = dy / length;
        ny = -dx / length;
    }

    /// <summary>Pressure along one acting face; <paramref name="sign"/> is 1 if the face is the first body's.</summary>
    private void Press(OracleBody body, int face, OracleBody other, double sign, double weight)
    {
        Line(body, face, out double ax, out double ay, out double nx, out double ny, out double length);
        double tx = -ny;
        double ty = nx;
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        for (int i = 0; i < other.CornerX.Length; i++)
        {
            double s = ((other.CornerX[i] - ax) * tx) + ((other.CornerY[i] - ay) * ty);
            low = Math.Min(low, s);
            high = Math.Max(high, s);
        }
        low = Math.Max(low, 0.0);
        high = Math.Min(high, length);
        if (high <= low)
        {
            return;
        }
        int count = 0;
        _breaks[count++] = low;
        for (int i = 0; i < other.CornerX.Length; i++)
        {
            double s = ((other.CornerX[i] - ax) * tx) + ((other.CornerY[i] - ay) * ty);
            if (s > low && s < high)
            {
                _breaks[count++] = s;
            }
        }
        _breaks[count++] = high;
        Array.Sort(_breaks, 0, count);
        for (int i = 1; i < count; i++)
        {
            Stretch(body, face, other, sign, weight, _breaks[i - 1], _breaks[i], ax, ay, nx, ny);
        }
    }

    /// <summary>Between two corners the depth runs in a straight line; only its positive part presses.</summary>
    private void Stretch(
        OracleBody body, int face, OracleBody other, double sign, double weight, double from, double to,
        double ax, double ay, double nx, double ny)
    {
        double width = to - from;
        if (width < 1e-12)
        {
            return;
        }
        double a = Tilted(body, face, other, ax - ((from + (0.25 * width)) * ny), ay + ((from + (0.25 * width)) * nx), nx, ny, out _);
        double b = Tilted(body, face, other, ax - ((from + (0.75 * width)) * ny), ay + ((from + (0.75 * width)) * nx), nx, ny, out _);
        double start = a - (0.5 * (b - a));
        double end = b + (0.5 * (b - a));
        if (start <= 0.0 && end <= 0.0)
        {
            return;
        }
        if (start < 0.0)
        {
            from += width * -start / (end - start);
        }
        if (end < 0.0)
        {
            to -= width * -end / (start - end);
        }
        for (int k = 0; k < s_place.Length; k++)
        {
            double s = from + (s_place[k] * (to - from));
            double px = ax - (s * ny);
            double py = ay + (s * nx);
            double depth = Tilted(body, face, other, px, py, nx, ny, out int edge);
            if (depth > 0.0)
            {
                Element(body, body.Faces[face], other, other.Faces[edge], sign, weight * s_weight[k] * (to - from), depth, px, py, nx, ny);
            }
        }
    }

    /// <summary>Depth with the plan shift of both tilted bodies at the height of the contact.</summary>
    private static double Tilted(OracleBody body, int face, OracleBody other, double px, double py, double nx, double ny, out int edge)
    {
        double depth = Depth(other, px, py, nx, ny, out edge);
        Meet(body, body.Faces[face], other, other.Faces[edge], depth, nx, ny, ref px, ref py);
        double height = Height(body, body.Faces[face], other, other.Faces[edge], px, py);
        return depth - Apart(body, other, px, py, height, nx, ny);
    }

    /// <summary>Where two faces meet: on the acting face's line; on its ramp, at the other's edge behind the line.</summary>
    private static void Meet(
        OracleBody body, FaceSettings face, OracleBody other, FaceSettings edge, double depth, double nx, double ny, ref double px, ref double py)
    {
        if (face.RampAngle is not null && face.LowerEdge + body.Rise(px, py) < edge.LowerEdge + other.Rise(px, py))
        {
            px -= depth * nx;
            py -= depth * ny;
        }
    }

    private static double Apart(OracleBody body, OracleBody other, double px, double py, double height, double nx, double ny)
    {
        (double ox, double oy) = other.Shift(px, py, height);
        (double bx, double by) = body.Shift(px, py, height);
        return ((ox - bx) * nx) + ((oy - by) * ny);
    }

    /// <summary>Where two faces touch: on a ramp at the upper body's lower edge, else at the middle of the common height.</summary>
    private static double Height(OracleBody body, FaceSettings face, OracleBody other, FaceSettings edge, double px, double py)
    {
        double bodyRise = body.Rise(px, py);
        double otherRise = other.Rise(px, py);
        double bodyLow = face.LowerEdge + bodyRise;
        double otherLow = edge.LowerEdge + otherRise;
        if ((face.RampAngle is not null && bodyLow < otherLow) || (edge.RampAngle is not null && otherLow < bodyLow))
        {
            return Math.Max(bodyLow, otherLow);
        }
        return 0.5 * (Math.Max(bodyLow, otherLow) + Math.Min(face.UpperEdge + bodyRise, edge.UpperEdge + otherRise));
    }

    /// <summary>How far an outline reaches along the ray from (x, y) against the normal, and the edge that reaches so far.</summary>
    private static double Depth(OracleBody other, double x, double y, double nx, double ny, out int edge)
    {
        // Inside is (p - a).m <= 0 for every edge with outward normal m; p = (x, y) - lambda n.
        double from = double.NegativeInfinity;
        double to = double.PositiveInfinity;
        edge = 0;
        for (int i = 0; i < other.CornerX.Length; i++)
        {
            Line(other, i, out double ax, out double ay, out double mx, out double my, out _);
            double outside = ((x - ax) * mx) + ((y - ay) * my);
            double slope = -((nx * mx) + (ny * my));
            if (slope > 1e-12)
            {
                double lambda = -outside / slope;
                if (lambda < to)
                {
                    to = lambda;
                    edge = i;
                }
            }
            else if (slope < -1e-12)
            {
                from = Math.Max(from, -outside / slope);
            }
            else if (outside > 0.0)
            {
                return 0.0;
            }
        }
        return from <= to ? to : 0.0;
    }

    private void Element(
        OracleBody body, FaceSettings face, OracleBody other, FaceSettings edge, double sign, double width, double depth,
        double px, double py, double nx, double ny)
    {
        Meet(body, face, other, edge, depth, nx, ny, ref px, ref py);
        double bodyRise = body.Rise(px, py);
        double otherRise = other.Rise(px, py);
        double bodyLow = face.LowerEdge + bodyRise;
        double otherLow = edge.LowerEdge + otherRise;
        bool bodyUnder = face.RampAngle is not null && bodyLow < otherLow;
        bool otherUnder = edge.RampAngle is not null && otherLow < bodyLow;

        // Direction of the force on the second body: away from the first. The face's normal points out of its own body.
        double outX = sign * nx;
        double outY = sign * ny;
        if (bodyUnder)
        {
            Slide(sign > 0.0, face, bodyLow, face.UpperEdge + bodyRise, otherLow, width, depth, px, py, outX, outY);
        }
        else if (otherUnder)
        {
            Slide(sign < 0.0, edge, otherLow, edge.UpperEdge + otherRise, bodyLow, width, depth, px, py, outX, outY);
        }
        else
        {
            double bottom = Math.Max(bodyLow, otherLow);
            double top = Math.Min(face.UpperEdge + bodyRise, edge.UpperEdge + otherRise);
            if (top > bottom)
            {
                // Half way between the two faces: the same for both bodies.
                Apply(width, depth, px - (0.5 * depth * nx), py - (0.5 * depth * ny), 0.5 * (bottom + top), outX, outY, 0.0);
            }
        }
    }

    /// <summary>
    /// The upper body's lower edge on the ramp of the lower one. At depth behind the tip the ramp is at tip + depth tan beta,
    /// at most its top; the edge is below it by the excess. The force stands on the slope; with the friction along it
    /// vertical / horizontal = cot(beta + atan mu) while it slides up.
    /// </summary>
    private void Slide(
        bool firstIsUnder, FaceSettings ramp, double tip, double top, double edge, double width, double depth,
        double px, double py, double outX, double outY)
    {
        double angle = ramp.RampAngle!.Value;
        double surface = tip + (depth * Math.Tan(angle));
        if (surface > top)
        {
            surface = top;
            angle = 0.0;
        }
        double excess = surface - edge;
        if (excess > 0.0)
        {
            double up = firstIsUnder ? Math.Cos(angle) : -Math.Cos(angle);
            Apply(width, excess * Math.Cos(angle), px, py, edge, outX * Math.Sin(angle), outY * Math.Sin(angle), up);
        }
    }

    /// <summary>Adds k depth ds along a unit vector on the second body to the sums of the acting face.</summary>
    private void Apply(double width, double depth, double x, double y, double height, double ux, double uy, double uz)
    {
        double force = settings.Stiffness * depth * width;
        _faceNormal += force;
        _faceX += force * x;
        _faceY += force * y;
        _faceZ += force * height;
        _faceDirX += force * ux;
        _faceDirY += force * uy;
        _faceDirZ += force * uz;
    }

    /// <summary>The face's force at its centre, times one factor (1 + d depth') at least 0 with the depth's rate there.</summary>
    private void Close()
    {
        if (_faceNormal > 0.0)
        {
            double x = _faceX / _faceNormal;
            double y = _faceY / _faceNormal;
            double height = _faceZ / _faceNormal;
            double size = Math.Sqrt((_faceDirX * _faceDirX) + (_faceDirY * _faceDirY) + (_faceDirZ * _faceDirZ));
            (double vx, double vy, double vz) = Relative(x, y, height);
            double closing = -((vx * _faceDirX) + (vy * _faceDirY) + (vz * _faceDirZ)) / size;
            double factor = Math.Max(0.0, 1.0 + (Restitution.Damping(settings.Restitution) * closing));
            Give(x, y, height, factor * _faceDirX, factor * _faceDirY, factor * _faceDirZ);
            double force = factor * _faceNormal;
            _normal += force;
            _centreX += force * x;
            _centreY += force * y;
            _centreZ += force * height;
            _dirX += factor * _faceDirX;
            _dirY += factor * _faceDirY;
            _dirZ += factor * _faceDirZ;
        }
        _faceNormal = _faceX = _faceY = _faceZ = _faceDirX = _faceDirY = _faceDirZ = 0.0;
    }

    /// <summary>
    /// One bristle along the face and one up the slope (none on an upright face), returned together to the friction circle:
    /// z' = v - alpha (|v| / z_max) z,  F = mu N (z + tau z') / z_max, at most mu N, tau limited as the tyre's sigma1 is.
    /// </summary>
    private void Rub(double h)
    {
        double x = _centreX / _normal;
        double y = _centreY / _normal;
        double height = _centreZ / _normal;
        double across = Math.Sqrt((_dirX * _dirX) + (_dirY * _dirY));
        double nx = across > 0.0 ? _dirX / across : 1.0;
        double ny = across > 0.0 ? _dirY / across : 0.0;
        double length = Math.Sqrt((across * across) + (_dirZ * _dirZ));
        double upZ = across / length;
        double upXY = -_dirZ / length;
        (double vx, double vy, double vz) = Relative(x, y, height);
        double along = (vy * nx) - (vx * ny);
        bool slope = Math.Abs(_dirZ) > 1e-9 * length;
        double up = slope ? (upXY * ((vx * nx) + (vy * ny))) + (upZ * vz) : 0.0;
        double qa = _bristleAlong + (h * along);
        double qu = slope ? _bristleUp + (h * up) : 0.0;
        double trial = Math.Sqrt((qa * qa) + (qu * qu));
        double speed = trial > 0.0 ? Math.Max(0.0, ((along * qa) + (up * qu)) / trial) : 0.0;
        double most = settings.FrictionDeflection;
        double m = OracleSwitch.Length(trial, h, speed / most, 0.0, most, 0.8, false);
        double shrink = trial > 0.0 ? m / trial : 0.0;
        double decay = OracleSwitch.Alpha(m, most, 0.8, false) * speed / most;
        double time = bristleTime / (1.0 + (0.25 * bristleTime * decay));
        _bristleAlong = shrink * qa;
        _bristleUp = shrink * qu;
        double scale = -settings.Friction * _normal / most;
        double fa = scale * (_bristleAlong + (time * (along - (decay * _bristleAlong))));
        double fu = scale * (_bristleUp + (time * (up - (decay * _bristleUp))));
        double size = Math.Sqrt((fa * fa) + (fu * fu));
        double limit = settings.Friction * _normal;
        if (size > limit)
        {
            fa *= limit / size;
            fu *= limit / size;
        }
        Give(x, y, height, (-ny * fa) + (nx * upXY * fu), (nx * fa) + (ny * upXY * fu), upZ * fu);
    }

    /// <summary>Velocity of the second body's point against the first's.</summary>
    private (double X, double Y, double Z) Relative(double x, double y, double height)
    {
        (double ax, double ay, double az) = one.Velocity(x, y, height);
        (double bx, double by, double bz) = two.Velocity(x, y, height);
        return (bx - ax, by - ay, bz - az);
    }

    private void Give(double x, double y, double height, double fx, double fy, double fz)
    {
        two.Add(x, y, height, fx, fy, fz);
        one.Add(x, y, height, -fx, -fy, -fz);
        ForceX += fx;
        ForceY += fy;
        ForceZ += fz;
    }
}
