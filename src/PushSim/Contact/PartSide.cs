using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>Half of the contact of two convex parts: the edges of the other part against the faces of the own one, in the own body's axes.
/// <code>
///   D_f = max over the other's corners of c - n.p      D = the least of them, of both parts      w_f = max(0, 5/4 D - D_f) / sum over both parts
///   N_e = k w_f lying density n0 max(0, 1 + lambda closing)
/// </code>
/// An edge is clipped to the face by the planes beside it: with the gaps g of its ends, d = g_q - g_p and M = max(|d|, 2 rho)
/// <code>
///   m = d/M   K = clamp(1/2 + (g_p + g_q)/(2 M))   S = 1 - (1 - K)|m|   middle = m (1 - K)/2   density = product K / product S
/// </code>
/// so an edge that crosses a plane is cut there, and one that lies along it counts by the share K, with K(g) + K(-g) = 1: two equal edges share, and nothing
/// jumps as they pass each other.</summary>
internal sealed class PartSide<T>
    where T : struct, IReal<T>
{
    // K is 1 to the bit where the gaps are by this much more than M [1].
    private const double Surely = 1.0001;

    private readonly PartShape<T> _own, _other;
    private readonly T[] _x, _y, _z, _depth, _overlap, _weight;
    private readonly int _corners;
    private int _likely;

    /// <summary>Forces on the own faces; 0 where nothing touches.</summary>
    public FaceSums<T> Sums;

    /// <param name="own">The part whose faces act.</param>
    /// <param name="other">The part whose edges do.</param>
    public PartSide(PartShape<T> own, PartShape<T> other)
    {
        _own = own;
        _other = other;
        _corners = other.Count;
        _likely = own.Acting[0].First;
        _x = Aligned.Array<T>(_corners);
        _y = Aligned.Array<T>(_corners);
        _z = Aligned.Array<T>(_corners);
        _depth = Aligned.Array<T>(_corners * own.Offset.Length);
        _overlap = Aligned.Array<T>(own.Offset.Length);
        _weight = Aligned.Array<T>(own.Offset.Length);
    }

    /// <summary>Places the other's corners and finds the least overlap of the own faces [m]; stops where there is none, in any lane.</summary>
    /// <param name="view">How the own body sees the other.</param>
    /// <param name="least">Least overlap found before [m].</param>
    /// <returns>The lesser of both [m].</returns>
    [MethodImpl(Kernel.Part)]
    public T LeastOverlap(in PartView<T> view, T least)
    {
        PlaceCorners(view);
        int first = _likely;
        least = T.Min(least, Overlap(view, first));
        for (int f = 0; f < _overlap.Length && !T.AllLess(least, EdgeProfile.Nothing<T>()); f++)
        {
            if (f != first)
            {
                T overlap = Overlap(view, f);
                if (_own.Acts[f])
                {
                    _likely = T.AllLess(overlap, least) ? f : _likely;
                    least = T.Min(least, overlap);
                }
            }
        }

        return least;
    }

    /// <summary>Weighs the faces, not yet divided by the sum over both parts, which is returned [m].</summary>
    /// <param name="least">Least overlap of both parts [m].</param>
    public T Weigh(T least) => _own.Weigh(least, _overlap, _weight);

    /// <summary>Sums the forces.</summary>
    /// <param name="view">How the own body sees the other.</param>
    /// <param name="stiffness">k over the sum of all weights [N/m^3].</param>
    /// <param name="damping">lambda [s/m].</param>
    [MethodImpl(Kernel.Part)]
    public void Act(in PartView<T> view, T stiffness, T damping)
    {
        Sums = default;
        foreach ((int first, int second) in _own.Acting)
        {
            FaceSums<T> pair = default;
            AddFace(view, first, stiffness, damping, ref pair);
            if (second >= 0)
            {
                FaceSums<T> other = default;
                AddFace(view, second, stiffness, damping, ref other);
                pair.Add(other);
            }

            Sums.Add(pair);
        }
    }

    [MethodImpl(Kernel.Part)]
    private void PlaceCorners(in PartView<T> v)
    {
        for (int c = 0; c < _x.Length; c++)
        {
            T x = _other.X[c];
            T y = _other.Y[c];
            T z = _other.Z[c];
            _x[c] = v.HalfX + (((v.XX * x) + (v.XY * y)) + (v.XZ * z));
            _y[c] = v.HalfY + (((v.YX * x) + (v.YY * y)) + (v.YZ * z));
            _z[c] = v.HalfZ + (((v.ZX * x) + (v.ZY * y)) + (v.ZZ * z));
        }
    }

    // depths of all corners below a plane; the greatest
    [MethodImpl(Kernel.Part)]
    private T Overlap(in PartView<T> v, int plane)
    {
        T nx = _own.NormalX[plane];
        T ny = _own.NormalY[plane];
        T nz = _own.NormalZ[plane];

        // from the own centre of mass to the middle
        T offset = _own.Offset[plane] - (((nx * v.HalfX) + (ny * v.HalfY)) + (nz * v.HalfZ));
        Span<T> depth = _depth.AsSpan(plane * _corners, _corners);
        ReadOnlySpan<T> x = _x.AsSpan(0, depth.Length);
        ReadOnlySpan<T> y = _y.AsSpan(0, depth.Length);
        ReadOnlySpan<T> z = _z.AsSpan(0, depth.Length);
        T deepest = -1e30;
        for (int c = 0; c < depth.Length; c++)
        {
            T d = offset - (((nx * x[c]) + (ny * y[c])) + (nz * z[c]));
            depth[c] = d;
            deepest = T.Max(deepest, d);
        }

        _overlap[plane] = deepest;
        return deepest;
    }

    [MethodImpl(Kernel.Part)]
    private void AddFace(in PartView<T> v, int f, T stiffness, T damping, ref FaceSums<T> sums)
    {
        T scale = stiffness * _weight[f];
        if (T.AllLess(scale, EdgeProfile.Nothing<T>()))
        {
            return;
        }

        // closing speed at a place is c + place.(n x w): how fast the face moves outward there
        T nx = _own.NormalX[f];
        T ny = _own.NormalY[f];
        T nz = _own.NormalZ[f];
        Push<T> push;
        push.Closing = (((nx * v.VX) + (ny * v.VY)) + (nz * v.VZ)) * damping;
        push.ClosingX = ((ny * v.WZ) - (nz * v.WY)) * damping;
        push.ClosingY = ((nz * v.WX) - (nx * v.WZ)) * damping;
        push.ClosingZ = ((nx * v.WY) - (ny * v.WX)) * damping;
        push.Scale = scale;
        T normal = 0.0, x = 0.0, y = 0.0, z = 0.0;
        ReadOnlySpan<T> depth = _depth.AsSpan(f * _corners, _corners);
        foreach ((int first, int second) in _other.EdgePairs)
        {
            T n = 0.0, px = 0.0, py = 0.0, pz = 0.0;
            (int from, int to) = _other.Edges[first];
            if (!T.AllLess(T.Max(depth[from], depth[to]), EdgeProfile.Nothing<T>()))
            {
                AddEdge(f, first, push, ref n, ref px, ref py, ref pz);
            }

            if (second >= 0)
            {
                (from, to) = _other.Edges[second];
                if (!T.AllLess(T.Max(depth[from], depth[to]), EdgeProfile.Nothing<T>()))
                {
                    AddEdge(f, second, push, ref n, ref px, ref py, ref pz);
                }
            }

            normal = normal + n;
            x = x + px;
            y = y + py;
            z = z + pz;
        }

        sums.Normal = normal;
        sums.Upright = _own.IsUpright[f] ? normal : 0.0;
        sums.X = normal * nx;
        sums.Y = normal * ny;
        sums.Z = normal * nz;
        sums.PlaceX = x;
        sums.PlaceY = y;
        sums.PlaceZ = z;
        sums.MomentX = (y * nz) - (z * ny);
        sums.MomentY = (z * nx) - (x * nz);
        sums.MomentZ = (x * ny) - (y * nx);
    }

    [MethodImpl(Kernel.Part)]
    private void AddEdge(int f, int e, in Push<T> push, ref T normal, ref T px, ref T py, ref T pz)
    {
        (int p, int q) = _other.Edges[e];
        T s0 = -0.5;
        T s1 = 0.5;
        T share = 1.0;
        T spans = 1.0;
        foreach ((int first, int second) in _own.Beside[f])
        {
            T k = 1.0;
            T s = 1.0;
            if (!IsInside(first, p, q))
            {
                Clip(first, p, q, ref s0, ref s1, out k, out s);
            }

            if (second >= 0 && !IsInside(second, p, q))
            {
                Clip(second, p, q, ref s0, ref s1, out T k2, out T s2);
                k = k * k2;
                s = s * s2;
            }

            share = share * k;
            spans = spans * s;
        }

        s1 = T.Max(s0, s1);
        T dp = _depth[(f * _corners) + p];
        T dq = _depth[(f * _corners) + q];
        T middle = 0.5 * (dp + dq);
        T slope = dq - dp;
        T length = _other.Length[e];
        EdgeProfile.Integrate(s0, s1, middle + (s0 * slope), middle + (s1 * slope), length, out T area, out T moment);
        T place = moment / T.Max(area, EdgeProfile.Nothing<T>());
        T x = (0.5 * (_x[p] + _x[q])) + (place * (_x[q] - _x[p]));
        T y = (0.5 * (_y[p] + _y[q])) + (place * (_y[q] - _y[p]));
        T z = (0.5 * (_z[p] + _z[q])) + (place * (_z[q] - _z[p]));
        T damped = T.Max(0.0, 1.0 + (push.Closing + (((x * push.ClosingX) + (y * push.ClosingY)) + (z * push.ClosingZ))));
        T density = share / T.Max(spans, EdgeProfile.Nothing<T>());
        T force = (push.Scale * EdgeProfile.Lying(length, slope)) * ((density * area) * damped);
        normal = normal + force;
        px = px + (force * x);
        py = py + (force * y);
        pz = pz + (force * z);
    }

    // Whether an edge lies so far inside that a plane takes nothing of it in any lane: then share and span are 1 to the bit, and both ends stay.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool IsInside(int plane, int p, int q)
    {
        T gp = _depth[(plane * _corners) + p];
        T gq = _depth[(plane * _corners) + q];
        return T.AllLess(Surely * T.Max(T.Abs(gq - gp), 2.0 * EdgeProfile.Rim), gp + gq);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Clip(int plane, int p, int q, ref T s0, ref T s1, out T share, out T span)
    {
        T gp = _depth[(plane * _corners) + p];
        T gq = _depth[(plane * _corners) + q];
        T d = gq - gp;
        T inverse = 1.0 / T.Max(T.Abs(d), 2.0 * EdgeProfile.Rim);
        T m = d * inverse;
        share = T.Max(0.0, T.Min(1.0, 0.5 + ((0.5 * (gp + gq)) * inverse)));
        T outside = 1.0 - share;
        span = 1.0 - (outside * T.Abs(m));
        T middle = (0.5 * m) * outside;
        T half = 0.5 * span;
        s0 = T.Max(s0, middle - half);
        s1 = T.Min(s1, middle + half);
    }

    private struct Push<TReal>
        where TReal : struct
    {
        /// <summary>Stiffness times weight [N/m^2]; closing speed at the middle times lambda [1], its slope over places [1/m].</summary>
        public TReal Scale, Closing, ClosingX, ClosingY, ClosingZ;
    }
}
