using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>The wheels of one body on a convex part of another: cylinders with axle a, hub C, radius R, half width b.
/// <code>
///   face, normal n:   the line C -+ b a - R n_t/sqrt(n_t^2 + 1e-6), n_t = n - (n.a) a, presses into it like an edge (<see cref="PartSide{T}"/>)
///   edge on tread:    into the tangent plane at its point nearest to the axle, as far as it lies between the wheel's sides and within its circle
///   edge on a side:   into that plane, as far as it lies within the circle
/// </code>
/// Faces and sides share by how little they overlap, as there; what a face leaves since the line lies beside it goes to the edges. Friction of each wheel at the middle of its
/// forces, whose sum is N, is mu N v/sqrt(v^2 + v_s^2) against the slip v of the turning rim: it slides, or creeps at a speed far below v_s.
/// All in the axes of the body that has the part, from the middle between both centres. Wheel on wheel: <see cref="WheelPairs{T}"/>.</summary>
internal sealed partial class WheelSide<T>
    where T : struct, IReal<T>
{
    /// <summary>v_s: a wheel that carries its share holds against half its friction at 0.6 of it [m/s].</summary>
    public const double CreepSpeed = 0.02;

    // Keeps a direction defined for a wheel that lies on its side; 8 um of a usual radius [1].
    private const double LyingSquare = 1e-6;

    // Far below any length, squared [m^2].
    private const double TinySquare = 1e-12;

    private readonly PartShape<T> _own;
    private readonly WheelRims<T> _wheels;
    private readonly T[] _offset, _along, _overlap, _weight, _torque;
    private readonly int[] _likely;
    private T _cx, _cy, _cz, _ax, _ay, _az, _radius, _half, _damping, _scale, _open, _plus, _minus;

    /// <param name="own">The part.</param>
    /// <param name="wheels">The other body's wheels.</param>
    public WheelSide(PartShape<T> own, WheelRims<T> wheels)
    {
        _own = own;
        _wheels = wheels;
        int planes = own.Offset.Length;
        _offset = Aligned.Array<T>(planes);
        _along = Aligned.Array<T>(planes);
        _overlap = Aligned.Array<T>(planes);
        _weight = Aligned.Array<T>(planes);
        _torque = Aligned.Array<T>(wheels.Count);
        _likely = new int[wheels.Count];
        Array.Fill(_likely, own.Acting[0].First);
    }

    /// <summary>Moment of the part on each wheel about its axle, of the last <see cref="Act"/> [N m].</summary>
    public ReadOnlySpan<T> Torque => _torque;

    /// <summary>Adds the forces of the part on all wheels.</summary>
    /// <param name="view">How the part's body sees the wheels'.</param>
    /// <param name="damping">lambda [s/m].</param>
    /// <param name="sums">Added to.</param>
    /// <returns>Whether there are any, in any lane.</returns>
    [MethodImpl(Kernel.Part)]
    public bool Act(in PartView<T> view, T damping, ref FaceSums<T> sums)
    {
        bool any = false;
        (_ax, _ay, _az, _damping) = (view.XY, view.YY, view.ZY, damping);
        for (int i = 0; i < _wheels.Count; i++)
        {
            Place(view, i);
            _torque[i] = 0.0;
            if (Overlaps(view, i))
            {
                Press(view, i, ref sums);
                any = true;
            }
        }

        return any;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Place(in PartView<T> v, int i)
    {
        (T x, T y, T z) = (_wheels.X[i], _wheels.Y[i], _wheels.Z[i]);
        _cx = v.HalfX + (((v.XX * x) + (v.XY * y)) + (v.XZ * z));
        _cy = v.HalfY + (((v.YX * x) + (v.YY * y)) + (v.YZ * z));
        _cz = v.HalfZ + (((v.ZX * x) + (v.ZY * y)) + (v.ZZ * z));
        (_radius, _half) = (_wheels.Radius[i], _wheels.HalfWidth[i]);
    }

    // How deep the wheel is below a plane.
    [MethodImpl(Kernel.Part)]
    private T Overlap(in PartView<T> v, int f)
    {
        (T nx, T ny, T nz) = (_own.NormalX[f], _own.NormalY[f], _own.NormalZ[f]);
        T offset = _own.Offset[f] - (((nx * v.HalfX) + (ny * v.HalfY)) + (nz * v.HalfZ));
        T along = ((nx * _ax) + (ny * _ay)) + (nz * _az);
        T across = T.Max(0.0, 1.0 - (along * along));
        T reach = (_radius * across) / T.Sqrt(across + LyingSquare);
        T overlap = ((offset - (((nx * _cx) + (ny * _cy)) + (nz * _cz))) + reach) + (_half * T.Abs(along));
        _offset[f] = offset;
        _along[f] = along;
        _overlap[f] = overlap;
        return overlap;
    }

    // Finds the least overlap and weighs by it; false where there is none in any lane.
    [MethodImpl(Kernel.Part)]
    private bool Overlaps(in PartView<T> v, int wheel)
    {
        int first = _likely[wheel];
        T least = Overlap(v, first);
        for (int f = 0; f < _overlap.Length && !T.AllLess(least, EdgeProfile.Nothing<T>()); f++)
        {
            if (f != first)
            {
                T overlap = Overlap(v, f);
                if (_own.Acts[f])
                {
                    _likely[wheel] = T.AllLess(overlap, least) ? f : _likely[wheel];
                    least = T.Min(least, overlap);
                }
            }
        }

        if (T.AllLess(least, EdgeProfile.Nothing<T>()))
        {
            return false;
        }

        T low = 1e30;
        T high = -1e30;
        for (int c = 0; c < _own.Count; c++)
        {
            T along = (((_own.X[c] - v.HalfX) - _cx) * _ax) + (((_own.Y[c] - v.HalfY) - _cy) * _ay) + (((_own.Z[c] - v.HalfZ) - _cz) * _az);
            low = T.Min(low, along);
            high = T.Max(high, along);
        }

        _plus = _half - low;
        _minus = _half + high;
        least = T.Min(least, T.Min(_plus, _minus));
        if (T.AllLess(least, EdgeProfile.Nothing<T>()))
        {
            return false;
        }

        Weigh(least, _wheels.Stiffness[wheel]);
        return true;
    }

    private void Weigh(T least, T stiffness)
    {
        T limit = PartShape<T>.Limit(least);
        _plus = T.Max(0.0, limit - _plus);
        _minus = T.Max(0.0, limit - _minus);
        T sum = (_plus + _minus) + _own.Weigh(least, _overlap, _weight);
        _scale = T.IfLess(least, EdgeProfile.Nothing<T>(), 0.0, stiffness / T.Max(sum, EdgeProfile.Nothing<T>()));
    }

    [MethodImpl(Kernel.Part)]
    private void Press(in PartView<T> v, int wheel, ref FaceSums<T> sums)
    {
        FaceSums<T> all = default;
        _open = 0.0;
        foreach ((int first, int second) in _own.Acting)
        {
            FaceSums<T> pair = default;
            T open = AddFace(v, first, ref pair);
            if (second >= 0)
            {
                FaceSums<T> other = default;
                open = open + AddFace(v, second, ref other);
                pair.Add(other);
            }

            _open = _open + open;
            all.Add(pair);
        }

        if (!T.AllLess(T.Max(_open, T.Max(_plus, _minus)), EdgeProfile.Nothing<T>()))
        {
            foreach ((int first, int second) in _own.EdgePairs)
            {
                FaceSums<T> pair = default;
                AddEdge(v, first, ref pair);
                if (second >= 0)
                {
                    FaceSums<T> other = default;
                    AddEdge(v, second, ref other);
                    pair.Add(other);
                }

                all.Add(pair);
            }
        }

        Rub(v, wheel, ref all);
        sums.Add(all);
    }

    // The line that follows a face; returns what the face leaves to edges.
    [MethodImpl(Kernel.Part)]
    private T AddFace(in PartView<T> v, int f, ref FaceSums<T> sums)
    {
        T weight = _weight[f];
        if (T.AllLess(weight, EdgeProfile.Nothing<T>()))
        {
            return 0.0;
        }

        (T nx, T ny, T nz) = (_own.NormalX[f], _own.NormalY[f], _own.NormalZ[f]);
        T along = _along[f];
        T r = _radius / T.Sqrt(T.Max(0.0, 1.0 - (along * along)) + LyingSquare);
        T mx = _cx - (r * (nx - (along * _ax)));
        T my = _cy - (r * (ny - (along * _ay)));
        T mz = _cz - (r * (nz - (along * _az)));
        T s0 = -0.5;
        T s1 = 0.5;
        T share = 1.0;
        T spans = 1.0;
        foreach ((int first, int second) in _own.Beside[f])
        {
            Clip(Gap(first, mx, my, mz), _half * _along[first], ref s0, ref s1, out T k, out T s);
            if (second >= 0)
            {
                Clip(Gap(second, mx, my, mz), _half * _along[second], ref s0, ref s1, out T k2, out T s2);
                k = k * k2;
                s = s * s2;
            }

            share = share * k;
            spans = spans * s;
        }

        s1 = T.Max(s0, s1);
        T length = 2.0 * _half;
        T middle = Gap(f, mx, my, mz);
        T slope = -(length * along);
        EdgeProfile.Integrate(s0, s1, middle + (s0 * slope), middle + (s1 * slope), length, out T area, out T moment);
        T place = length * (moment / T.Max(area, EdgeProfile.Nothing<T>()));
        Add(v, (_scale * weight) * ((share / T.Max(spans, EdgeProfile.Nothing<T>())) * area), nx, ny, nz, mx + (place * _ax), my + (place * _ay), mz + (place * _az), ref sums);
        return weight * (1.0 - share);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private T Gap(int plane, T x, T y, T z) => _offset[plane] - (((_own.NormalX[plane] * x) + (_own.NormalY[plane] * y)) + (_own.NormalZ[plane] * z));

    // Of a line whose gap is middle -+ half the change at its ends: from + to -.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Clip(T middle, T change, ref T s0, ref T s1, out T share, out T span)
    {
        T d = -2.0 * change;
        T inverse = 1.0 / T.Max(T.Abs(d), 2.0 * EdgeProfile.Rim);
        T m = d * inverse;
        share = T.Max(0.0, T.Min(1.0, 0.5 + (middle * inverse)));
        T outside = 1.0 - share;
        span = 1.0 - (outside * T.Abs(m));
        T centre = (0.5 * m) * outside;
        T half = 0.5 * span;
        s0 = T.Max(s0, centre - half);
        s1 = T.Min(s1, centre + half);
    }

    // A push on the wheel along n at x, damped by how fast the part comes on there.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Add(in PartView<T> v, T push, T nx, T ny, T nz, T x, T y, T z, ref FaceSums<T> sums)
    {
        T vx = v.VX + ((v.WY * z) - (v.WZ * y));
        T vy = v.VY + ((v.WZ * x) - (v.WX * z));
        T vz = v.VZ + ((v.WX * y) - (v.WY * x));
        T force = push * T.Max(0.0, 1.0 + (_damping * (((nx * vx) + (ny * vy)) + (nz * vz))));
        T fx = force * nx;
        T fy = force * ny;
        T fz = force * nz;
        sums.Normal = sums.Normal + force;
        sums.X = sums.X + fx;
        sums.Y = sums.Y + fy;
        sums.Z = sums.Z + fz;
        sums.PlaceX = sums.PlaceX + (force * x);
        sums.PlaceY = sums.PlaceY + (force * y);
        sums.PlaceZ = sums.PlaceZ + (force * z);
        sums.MomentX = sums.MomentX + ((y * fz) - (z * fy));
        sums.MomentY = sums.MomentY + ((z * fx) - (x * fz));
        sums.MomentZ = sums.MomentZ + ((x * fy) - (y * fx));
    }

    // Friction on the turning rim, and what all of it does about the axle.
    [MethodImpl(Kernel.Part)]
    private void Rub(in PartView<T> v, int wheel, ref FaceSums<T> s)
    {
        T inverse = 1.0 / T.Max(s.Normal, EdgeProfile.Nothing<T>());
        T x = s.PlaceX * inverse;
        T y = s.PlaceY * inverse;
        T z = s.PlaceZ * inverse;
        T pressed = T.Sqrt(((s.X * s.X) + (s.Y * s.Y)) + (s.Z * s.Z));
        T perLength = 1.0 / T.Max(pressed, EdgeProfile.Nothing<T>());
        T nx = s.X * perLength;
        T ny = s.Y * perLength;
        T nz = s.Z * perLength;
        T spin = _wheels.Spin[wheel];
        T rx = x - _cx;
        T ry = y - _cy;
        T rz = z - _cz;
        T vx = (spin * ((_ay * rz) - (_az * ry))) - (v.VX + ((v.WY * z) - (v.WZ * y)));
        T vy = (spin * ((_az * rx) - (_ax * rz))) - (v.VY + ((v.WZ * x) - (v.WX * z)));
        T vz = (spin * ((_ax * ry) - (_ay * rx))) - (v.VZ + ((v.WX * y) - (v.WY * x)));
        T along = ((nx * vx) + (ny * vy)) + (nz * vz);
        vx = vx - (along * nx);
        vy = vy - (along * ny);
        vz = vz - (along * nz);
        T grip = -((_wheels.Friction[wheel] * pressed) / T.Sqrt((((vx * vx) + (vy * vy)) + (vz * vz)) + (CreepSpeed * CreepSpeed)));
        T fx = grip * vx;
        T fy = grip * vy;
        T fz = grip * vz;
        s.X = s.X + fx;
        s.Y = s.Y + fy;
        s.Z = s.Z + fz;
        s.MomentX = s.MomentX + ((y * fz) - (z * fy));
        s.MomentY = s.MomentY + ((z * fx) - (x * fz));
        s.MomentZ = s.MomentZ + ((x * fy) - (y * fx));
        T tx = s.MomentX - ((_cy * s.Z) - (_cz * s.Y));
        T ty = s.MomentY - ((_cz * s.X) - (_cx * s.Z));
        T tz = s.MomentZ - ((_cx * s.Y) - (_cy * s.X));
        _torque[wheel] = ((_ax * tx) + (_ay * ty)) + (_az * tz);
    }
}
