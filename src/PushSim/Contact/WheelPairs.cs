using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>The wheels of one body on those of another: two cylinders with hubs C, axles a, radii R and half widths b, in floor axes from the middle between both centres
/// of mass. c from the first hub to the second.
/// <code>
///   both treads: n along v = c + beta a2 - alpha a1, the shortest for |alpha| &lt;= b1, |beta| &lt;= b2      sides: n = +-a1 and +-a2, outward
///   each tread:  n across the own axle towards the other's deepest place C - R n_t/sqrt(n_t^2 + 1e-3) - b n.a/sqrt((n.a)^2 + 1e-3) a
///   h(n) = R n_t^2/sqrt(n_t^2 + 1e-3) + b |n.a|, n_t = n - (n.a) a       D_n = h1(n) + h2(n) - c.n       w_n = max(0, 5/4 D - D_n), D the least of them
/// </code>
/// Each plane is pressed by the other wheel's line C -+ b a - R n_t/sqrt(n_t^2 + 1e-3), as a part's face is (<see cref="WheelSide{T}"/>), at a place drawn into the own cylinder; along v
/// both wheels' planes press, else the own one. Both tyres are springs in series; friction by the lesser of both, against the slip of both turning rims.
/// Limits: stiffness by the other's whole width, however little of it meets; wheels askew whose rims cross corner to corner can press before they touch, by up to
/// 2.5 mm in one of a hundred poses of level axles.</summary>
internal sealed partial class WheelPairs<T>
    where T : struct, IReal<T>
{
    // Chooses the middle of axles that lie side by side [1]; half a micrometre.
    private const double Middle = 1e-4;

    // How much farther than they reach wheels are looked at, since rims that cross press early [1].
    private const double Sphere = 1.05, Cube = 1.1;

    // Far below any length, squared [m^2].
    private const double TinySquare = 1e-12;

    private readonly WheelRims<T> _ofA, _ofB;
    private readonly bool[] _isNear;
    private RimPose<T> _one, _two;
    private Axes<T> _both, _first, _second;
    private T _damping, _scale, _plus1, _minus1, _plus2, _minus2, _treads, _tread1, _tread2;

    /// <param name="a">Wheels of the first body.</param>
    /// <param name="b">Wheels of the second.</param>
    public WheelPairs(WheelRims<T> a, WheelRims<T> b) => (_ofA, _ofB, _isNear) = (a, b, new bool[a.Count]);

    /// <summary>Adds the forces of all pairs to those on the bodies, and moments on the wheels to theirs.</summary>
    /// <param name="meeting">The bodies' places and motion.</param>
    /// <param name="a">Pose of the first.</param>
    /// <param name="b">Pose of the second.</param>
    /// <param name="edgeStiffness">k of edges against faces [N/m^2].</param>
    /// <param name="damping">lambda [s/m].</param>
    /// <param name="sum">Added to.</param>
    /// <returns>Whether there are any, in any lane.</returns>
    [MethodImpl(Kernel.Part)]
    public bool Act(in Meeting<T> meeting, in BodyPose<T> a, in BodyPose<T> b, T edgeStiffness, T damping, ref PairForce<T> sum)
    {
        if (_ofA.IsApart(_ofB, meeting.OfB) || AreApart(meeting.OfB))
        {
            return false;
        }

        // a pair and the one with the places exchanged are summed first, so that neither body comes before the other
        _damping = damping;
        bool any = false;
        int most = Math.Max(_ofA.Count, _ofB.Count);
        for (int i = 0; i < most; i++)
        {
            for (int j = i; j < most; j++)
            {
                bool acts = Meet(i, j, meeting, a, b, edgeStiffness, out PairForce<T> both);
                if (i != j && Meet(j, i, meeting, a, b, edgeStiffness, out PairForce<T> other))
                {
                    both.Add(other);
                    acts = true;
                }

                if (acts)
                {
                    sum.Add(both);
                    any = true;
                }
            }
        }

        return any;
    }

    // Whether every wheel of the first body is out of the box about those of the second, in all lanes.
    [MethodImpl(Kernel.Part)]
    private bool AreApart(in PartView<T> v)
    {
        bool apart = true;
        for (int i = 0; i < _ofA.Count; i++)
        {
            (T x, T y, T z) = (_ofA.X[i], _ofA.Y[i], _ofA.Z[i]);
            T dx = (T.Abs((((2.0 * v.HalfX) - _ofB.Box[0]) + ((v.XX * x) + (v.XY * y))) + (v.XZ * z))) - _ofB.Box[3];
            T dy = (T.Abs((((2.0 * v.HalfY) - _ofB.Box[1]) + ((v.YX * x) + (v.YY * y))) + (v.YZ * z))) - _ofB.Box[4];
            T dz = (T.Abs((((2.0 * v.HalfZ) - _ofB.Box[2]) + ((v.ZX * x) + (v.ZY * y))) + (v.ZZ * z))) - _ofB.Box[5];
            _isNear[i] = !T.AllLess(Cube * _ofA.Reach[i], T.Max(dx, T.Max(dy, dz)));
            apart &= !_isNear[i];
        }

        return apart;
    }

    private bool Meet(int i, int j, in Meeting<T> meeting, in BodyPose<T> a, in BodyPose<T> b, T edgeStiffness, out PairForce<T> force)
    {
        force = default;
        if (i >= _ofA.Count || j >= _ofB.Count || !_isNear[i])
        {
            return false;
        }

        _one.Set(a, _ofA, i, -meeting.HalfX, -meeting.HalfY, -meeting.HalfZ);
        _two.Set(b, _ofB, j, meeting.HalfX, meeting.HalfY, meeting.HalfZ);
        if (!Overlaps(Sphere * (_ofA.Reach[i] + _ofB.Reach[j]), edgeStiffness))
        {
            return false;
        }

        Press(meeting, ref force);
        Rub(meeting, ref force);
        _ofA.Torque[i] = _ofA.Torque[i] + _one.Torque(force);
        _ofB.Torque[j] = _ofB.Torque[j] - _two.Torque(force);
        return true;
    }

    // The shortest way between the axles; each end is found first once, and the mean taken, so that neither wheel comes before the other.
    [MethodImpl(Kernel.Part)]
    private void Direct(T cx, T cy, T cz)
    {
        const double More = 1.0 + Middle;
        T p = ((cx * _one.AX) + (cy * _one.AY)) + (cz * _one.AZ);
        T q = ((cx * _two.AX) + (cy * _two.AY)) + (cz * _two.AZ);
        T g = ((_one.AX * _two.AX) + (_one.AY * _two.AY)) + (_one.AZ * _two.AZ);
        T inverse = 1.0 / T.Max((More * More) - (g * g), Middle);
        T first = Within(((More * p) - (g * q)) * inverse, _one.HalfWidth);
        T second = Within(((g * p) - (More * q)) * inverse, _two.HalfWidth);
        T beta = Within(((g * first) - q) * (1.0 / More), _two.HalfWidth);
        T alpha = Within(((g * second) + p) * (1.0 / More), _one.HalfWidth);
        T alpha2 = Within(((g * beta) + p) * (1.0 / More), _one.HalfWidth);
        T beta2 = Within(((g * alpha) - q) * (1.0 / More), _two.HalfWidth);
        alpha = 0.5 * (alpha + alpha2);
        beta = 0.5 * (beta + beta2);
        T vx = cx + ((beta * _two.AX) - (alpha * _one.AX));
        T vy = cy + ((beta * _two.AY) - (alpha * _one.AY));
        T vz = cz + ((beta * _two.AZ) - (alpha * _one.AZ));
        _both = Unit(vx, vy, vz);
    }

    // Across the axle of the own wheel towards the deepest place of the other; n towards the other.
    [MethodImpl(Kernel.Part)]
    private static Axes<T> Across(in RimPose<T> own, in RimPose<T> other, T nx, T ny, T nz)
    {
        T along = ((nx * other.AX) + (ny * other.AY)) + (nz * other.AZ);
        T r = other.Radius / T.Sqrt(T.Max(0.0, 1.0 - (along * along)) + RimPose<T>.LyingSquare);
        T b = (other.HalfWidth * along) / T.Sqrt((along * along) + RimPose<T>.LyingSquare);
        T shift = b - (r * along);
        T x = (other.X - own.X) - ((r * nx) + (shift * other.AX));
        T y = (other.Y - own.Y) - ((r * ny) + (shift * other.AY));
        T z = (other.Z - own.Z) - ((r * nz) + (shift * other.AZ));
        T axial = ((x * own.AX) + (y * own.AY)) + (z * own.AZ);
        return Unit(x - (axial * own.AX), y - (axial * own.AY), z - (axial * own.AZ));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Axes<T> Unit(T x, T y, T z)
    {
        T perLength = 1.0 / T.Sqrt((((x * x) + (y * y)) + (z * z)) + TinySquare);
        Axes<T> unit;
        unit.X = x * perLength;
        unit.Y = y * perLength;
        unit.Z = z * perLength;
        return unit;
    }

    // D of a direction from the first to the second.
    [MethodImpl(Kernel.Part)]
    private T Depth(T cx, T cy, T cz, T nx, T ny, T nz) => (_one.Height(nx, ny, nz) + _two.Height(nx, ny, nz)) - (((cx * nx) + (cy * ny)) + (cz * nz));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Within(T value, T limit) => T.Max(-limit, T.Min(limit, value));

    // Finds the least overlap and weighs by it; false where there is none in any lane.
    [MethodImpl(Kernel.Part)]
    private bool Overlaps(T reach, T edgeStiffness)
    {
        T cx = _two.X - _one.X;
        T cy = _two.Y - _one.Y;
        T cz = _two.Z - _one.Z;
        if (T.AllLess(reach * reach, ((cx * cx) + (cy * cy)) + (cz * cz)))
        {
            return false;
        }

        Direct(cx, cy, cz);
        T along1 = ((cx * _one.AX) + (cy * _one.AY)) + (cz * _one.AZ);
        T along2 = ((cx * _two.AX) + (cy * _two.AY)) + (cz * _two.AZ);
        T depth1 = _one.HalfWidth + _two.Height(_one.AX, _one.AY, _one.AZ);
        T depth2 = _two.HalfWidth + _one.Height(_two.AX, _two.AY, _two.AZ);
        _plus1 = depth1 - along1;
        _minus1 = depth1 + along1;
        _plus2 = depth2 + along2;
        _minus2 = depth2 - along2;
        _treads = Depth(cx, cy, cz, _both.X, _both.Y, _both.Z);
        T least = T.Min(_treads, T.Min(T.Min(_plus1, _minus1), T.Min(_plus2, _minus2)));
        if (T.AllLess(least, EdgeProfile.Nothing<T>()))
        {
            return false;
        }

        _first = Across(_one, _two, _both.X, _both.Y, _both.Z);
        _second = Across(_two, _one, -_both.X, -_both.Y, -_both.Z);
        _tread1 = Depth(cx, cy, cz, _first.X, _first.Y, _first.Z);
        _tread2 = Depth(cx, cy, cz, -_second.X, -_second.Y, -_second.Z);
        least = T.Min(least, T.Min(_tread1, _tread2));
        if (T.AllLess(least, EdgeProfile.Nothing<T>()))
        {
            return false;
        }

        Weigh(least, edgeStiffness);
        return true;
    }

    private void Weigh(T least, T edgeStiffness)
    {
        T limit = PartShape<T>.Limit(least);
        _treads = T.Max(0.0, limit - _treads);
        _tread1 = T.Max(0.0, limit - _tread1);
        _tread2 = T.Max(0.0, limit - _tread2);
        _plus1 = T.Max(0.0, limit - _plus1);
        _minus1 = T.Max(0.0, limit - _minus1);
        _plus2 = T.Max(0.0, limit - _plus2);
        _minus2 = T.Max(0.0, limit - _minus2);
        T sum = ((2.0 * _treads) + (_tread1 + _tread2)) + ((_plus1 + _minus1) + (_plus2 + _minus2));
        T softness = ((1.0 / _one.Stiffness) + (1.0 / _two.Stiffness)) - (1.0 / edgeStiffness);
        _scale = T.IfLess(least, EdgeProfile.Nothing<T>(), 0.0, 1.0 / (softness * T.Max(sum, EdgeProfile.Nothing<T>())));
    }
}
