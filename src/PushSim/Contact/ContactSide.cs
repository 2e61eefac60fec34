using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using PushSim.Chassis;
using PushSim.Numerics;

namespace PushSim.Contact;

/// <summary>
/// Half of a contact: one body's faces ("own") against the outline of the other, all in the own body's axes. The other
/// half is the same code with the bodies exchanged, and the two are added: that makes the contact symmetric to the bit.
/// <code>
///   depth of the other's point P under face i:   D = n.(m_i - P) + z_p n.(theta, -phi) - z_q n.(theta', -phi')'
///   overlap_i = greatest D of a corner,   weight_i = max(0, 1 - (overlap_i / least overlap - 1) / 0.25) / sum
///   N = weight k  integral of D over the clipped edge  max(0, 1 + d depth')
/// </code>
/// z_p and z_q are the heights of the acting point in either body: depth follows the tilted faces, and depth' is the
/// closing speed of the two bodies' points at the contact. On a ramp depth is counted from where the slope reaches the
/// rider's lower edge: that line lies g = (lower edge - tip) cot beta inward of the tip.
/// </summary>
/// <typeparam name="T">Number type.</typeparam>
internal sealed partial class ContactSide<T>
    where T : struct, IReal<T>
{
    /// <summary>Most corners of an outline [1].</summary>
    public const int Most = 8;

    /// <summary>Share of the least overlap above it within which other faces act too [1].</summary>
    private const double Band = 0.25;

    /// <summary>1 / height over which getting under, or passing over, blends [1/m].</summary>
    private const double InverseBlend = 1.0 / 0.001;

    private readonly ContactShape<T> _own, _other;

    /// <summary>Stiffness per length of overlap [N/m^2], damping [s/m].</summary>
    internal T Stiffness, Damping;
    private readonly bool _ramps;

    // the other's corners in own axes; floor height of either body's level plane there, above its corner heights
    private readonly T[] _cornerX = Aligned.Array<T>(Most), _cornerY = Aligned.Array<T>(Most), _ownTilt = Aligned.Array<T>(Most), _otherTilt = Aligned.Array<T>(Most);

    // of each face of the other: floor heights of its edges and of the body's centre plane at its middle
    private readonly T[] _lower = Aligned.Array<T>(Most), _upper = Aligned.Array<T>(Most), _level = Aligned.Array<T>(Most);

    // of the face at hand, per corner of the other: depth below it and place along it
    private readonly T[] _depth = Aligned.Array<T>(Most + 1), _along = Aligned.Array<T>(Most);

    // per face and edge: depth added by tilt, floor height of the acting point; per own face: that of the centre plane there
    private readonly T[] _shift = Aligned.Array<T>(Most * Most), _height = Aligned.Array<T>(Most * Most), _ownLevel = Aligned.Array<T>(Most);
    private readonly T[] _overlap = Aligned.Array<T>(Most), _weight = Aligned.Array<T>(Most);

    private readonly BodyPose<T>[] _poses = Aligned.Array<BodyPose<T>>(2);
    private readonly T[] _numbers = Aligned.Array<T>(11);

    private ref BodyPose<T> Pose => ref _poses[0];

    private ref BodyPose<T> OtherPose => ref _poses[1];

    // the other's centre of mass and heading in own axes, its tilt (theta, -phi) turned into them
    private ref T OtherX => ref Number(0);

    private ref T OtherY => ref Number(1);

    private ref T Cosine => ref Number(2);

    private ref T Sine => ref Number(3);

    private ref T LeanX => ref Number(4);

    private ref T LeanY => ref Number(5);

    // the face at hand
    private ref T NormalX => ref Number(6);

    private ref T NormalY => ref Number(7);

    private ref T MiddleX => ref Number(8);

    private ref T MiddleY => ref Number(9);

    private ref T OwnLean => ref Number(10);

    private ref T Number(int i) => ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_numbers), i);

    /// <summary>What the last <see cref="Act"/> found.</summary>
    public ref ContactSums<T> Sums => ref _sums[0];

    // the sum, and terms of one edge pair, of one face and of its partner
    private readonly ContactSums<T>[] _sums = Aligned.Array<ContactSums<T>>(5);

    public ContactSide(ContactShape<T> own, ContactShape<T> other, ContactSettings settings)
    {
        _own = own;
        _other = other;
        _ramps = own.HasRamp || other.HasRamp;
        Stiffness = settings.Stiffness;
        Damping = settings.Damping;
    }

    /// <summary>The body whose faces these are.</summary>
    internal ContactShape<T> Own => _own;

    /// <summary>Sets the poses and finds the least overlap of the own faces [m]; stops where there is none, in any lane.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public T LeastOverlap(in BodyPose<T> ownPose, in BodyPose<T> poseOfOther)
    {
        Pose = ownPose;
        OtherPose = poseOfOther;
        Place();
        PlaceCorners();
        PlaceFaces();
        T least = 1e30;
        for (int i = 0; i < _own.Count && !T.AllLess(least, DepthProfile<T>.Nothing); i++)
        {
            T deepest = FaceOverlap(i);
            _overlap[i] = deepest;
            least = T.Min(least, deepest);
        }

        return least;
    }

    /// <summary>Weighs the faces, not yet divided by the sum over both sides, which is returned [m].</summary>
    /// <param name="least">Least overlap of both sides [m].</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public T Weigh(T least)
    {
        T limit = (1.0 + Band) * least;
        T sum = 0.0;
        foreach ((int first, int second) in _own.Partners)
        {
            T pair = T.Max(0.0, limit - _overlap[first]);
            _weight[first] = pair;
            if (second >= 0)
            {
                _weight[second] = T.Max(0.0, limit - _overlap[second]);
                pair = pair + _weight[second];
            }

            sum = sum + pair;
        }

        return sum;
    }

    /// <summary>Sums the forces of the own faces.</summary>
    /// <param name="scale">1 / sum of the weights of both sides, 0 where the bodies do not overlap [1/m].</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Act(T scale)
    {
        Sums.Clear(_ramps);
        foreach ((int first, int second) in _own.Partners)
        {
            bool acts = ActFace(first, scale, ref _sums[3]);
            if (second >= 0 && ActFace(second, scale, ref _sums[4]))
            {
                if (acts)
                {
                    _sums[4].Add(_sums[3], _ramps);
                }

                Sums.Add(_sums[4], _ramps);
            }
            else if (acts)
            {
                Sums.Add(_sums[3], _ramps);
            }
        }
    }

    private void Place()
    {
        T x = OtherPose.X - Pose.X;
        T y = OtherPose.Y - Pose.Y;
        OtherX = (Pose.Cosine * x) + (Pose.Sine * y);
        OtherY = (Pose.Cosine * y) - (Pose.Sine * x);
        Cosine = (Pose.Cosine * OtherPose.Cosine) + (Pose.Sine * OtherPose.Sine);
        Sine = (Pose.Cosine * OtherPose.Sine) - (Pose.Sine * OtherPose.Cosine);
        LeanX = (Cosine * OtherPose.Pitch) + (Sine * OtherPose.Roll);
        LeanY = (Sine * OtherPose.Pitch) - (Cosine * OtherPose.Roll);
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void PlaceCorners()
    {
        for (int c = 0; c < _other.Count; c++)
        {
            T x = OtherX + ((Cosine * _other.X[c]) - (Sine * _other.Y[c]));
            T y = OtherY + ((Sine * _other.X[c]) + (Cosine * _other.Y[c]));
            _cornerX[c] = x;
            _cornerY[c] = y;
            _ownTilt[c] = Pose.Heave - (x * Pose.Pitch) + (y * Pose.Roll);
            _otherTilt[c] = OtherPose.Heave - (_other.X[c] * OtherPose.Pitch) + (_other.Y[c] * OtherPose.Roll);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void PlaceFaces()
    {
        for (int j = 0; j < _other.Count; j++)
        {
            T tilt = 0.5 * (_otherTilt[j] + _otherTilt[Next(j)]);
            _lower[j] = _other.Lower[j] + tilt;
            _upper[j] = _other.Upper[j] + tilt;
            _level[j] = _other.CentreHeight + tilt;
        }
    }

    private int Next(int corner) => corner + 1 < _other.Count ? corner + 1 : 0;

    private void Take(int i)
    {
        NormalX = _own.NormalX[i];
        NormalY = _own.NormalY[i];
        MiddleX = _own.MiddleX[i];
        MiddleY = _own.MiddleY[i];
        OwnLean = (NormalX * Pose.Pitch) - (NormalY * Pose.Roll);
    }

    // greatest depth of the other's corners below face i
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private T FaceOverlap(int i)
    {
        Take(i);
        T otherLean = (NormalX * LeanX) + (NormalY * LeanY);
        T tilt = Pose.Heave - (MiddleX * Pose.Pitch) + (MiddleY * Pose.Roll);
        T low = _own.Lower[i] + tilt;
        T high = _own.Upper[i] + tilt;
        T centre = _own.CentreHeight + tilt;
        int n = _other.Count;
        Span<T> deep = _depth.AsSpan(0, n + 1);
        ReadOnlySpan<T> xs = _cornerX.AsSpan(0, n);
        ReadOnlySpan<T> ys = _cornerY.AsSpan(0, n);
        for (int c = 0; c < xs.Length; c++)
        {
            deep[c] = (NormalX * (MiddleX - xs[c])) + (NormalY * (MiddleY - ys[c]));
        }

        deep[n] = deep[0];
        ReadOnlySpan<T> lowers = _lower.AsSpan(0, n);
        ReadOnlySpan<T> uppers = _upper.AsSpan(0, n);
        ReadOnlySpan<T> levels = _level.AsSpan(0, n);
        Span<T> heights = _height.AsSpan(i * Most, n);
        Span<T> shifts = _shift.AsSpan(i * Most, n);
        T deepest = -1e30;
        for (int j = 0; j < lowers.Length; j++)
        {
            T bottom = T.Max(low, lowers[j]);
            T middle = 0.5 * (bottom + T.Min(high, uppers[j]));
            bool isRamp = _ramps && (_own.IsRamp[i] || _other.IsRamp[j]);
            if (isRamp)
            {
                // on a slope the point that acts is the rider's lower edge
                Under(i, j, lowers[j] - low, out T ownUnder, out T otherUnder);
                middle = middle + ((ownUnder + otherUnder) * (bottom - middle));
            }

            T lean = ((middle - centre) * OwnLean) - ((middle - levels[j]) * otherLean);
            heights[j] = middle;
            shifts[j] = lean;
            deepest = T.Max(deepest, isRamp ? RampOverlap(i, j, lean) : T.Max(deep[j], deep[j + 1]) + lean);
        }

        _ownLevel[i] = centre;
        return deepest;
    }

    // Sum over the other's edges of the force on face i; false where it is nothing.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private bool ActFace(int i, T scale, ref ContactSums<T> sum)
    {
        T share = _weight[i] * scale;
        if (T.AllLess(share, DepthProfile<T>.Nothing))
        {
            return false;
        }

        share = T.IfLess(share, DepthProfile<T>.Nothing, 0.0, share);
        Take(i);
        for (int c = 0; c < _other.Count; c++)
        {
            T x = _cornerX[c] - MiddleX;
            T y = _cornerY[c] - MiddleY;
            _depth[c] = -((NormalX * x) + (NormalY * y));
            _along[c] = (NormalX * y) - (NormalY * x);
        }

        bool any = false;
        sum.Clear(_ramps);
        foreach ((int first, int second) in _other.Partners)
        {
            bool acts = ActEdge(i, first, share, ref _sums[1]);
            if (second >= 0 && ActEdge(i, second, share, ref _sums[2]))
            {
                if (acts)
                {
                    _sums[2].Add(_sums[1], _ramps);
                }

                sum.Add(_sums[2], _ramps);
                any = true;
            }
            else if (acts)
            {
                sum.Add(_sums[1], _ramps);
                any = true;
            }
        }

        return any;
    }

    // Force of one edge on the face: the edge clipped to the face's length, its depth integrated. An edge that faces away
    // runs backward and has no length.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private bool ActEdge(int i, int j, T share, ref ContactSums<T> sum)
    {
        int k = Next(j);
        T s0 = T.Max(_along[k], -_own.Half[i]);
        T s1 = T.Min(_along[j], _own.Half[i]);
        if (T.AllLess(s1 - s0, DepthProfile<T>.Nothing))
        {
            return false;
        }

        s1 = T.IfLess(s1 - s0, DepthProfile<T>.Nothing, s0, s1);
        T inverse = 1.0 / T.Max(_along[j] - _along[k], DepthProfile<T>.Nothing);
        T part0 = (s0 - _along[k]) * inverse;
        T part1 = (_along[j] - s1) * inverse;
        T lean = _shift[(i * Most) + j];
        T d0 = _depth[k] + (part0 * (_depth[j] - _depth[k])) + lean;
        T d1 = _depth[j] + (part1 * (_depth[k] - _depth[j])) + lean;
        if (T.AllLess(T.Max(d0, d1), 0.0))
        {
            return false;
        }

        sum.Clear(_ramps);
        T ownAt = 0.5 * ((_ownTilt[k] + (part0 * (_ownTilt[j] - _ownTilt[k]))) + (_ownTilt[j] + (part1 * (_ownTilt[k] - _ownTilt[j]))));
        T otherAt = 0.5 * ((_otherTilt[k] + (part0 * (_otherTilt[j] - _otherTilt[k]))) + (_otherTilt[j] + (part1 * (_otherTilt[k] - _otherTilt[j]))));
        T low = T.Max(_own.Lower[i] + ownAt, _other.Lower[j] + otherAt);
        T high = T.Min(_own.Upper[i] + ownAt, _other.Upper[j] + otherAt);
        T common = Clamp01((high - low) * InverseBlend);
        T force = share * Stiffness;
        if (_own.IsRamp[i] || _other.IsRamp[j])
        {
            T gap0 = Gap(i, j, k);
            T gap1 = Gap(i, j, j);
            T g0 = gap0 + (part0 * (gap1 - gap0));
            T g1 = gap1 + (part1 * (gap0 - gap1));
            ActRamp(i, j, force, common, s0, s1, d0, d1, g0, g1, ref sum);
            return true;
        }

        DepthProfile<T>.Integrate(s0, s1, d0, d1, out DepthProfile<T> profile);
        Push(profile, force * common, _height[(i * Most) + j] - _ownLevel[i], _height[(i * Most) + j] - _level[j], 1.0, 0.0, 0.0, 1.0, ref sum, out _, out _, out _);
        return true;
    }

    private static T Clamp01(T x) => T.Max(0.0, T.Min(1.0, x));

    // Adds the force of one profile: normal (level share, up share) on the other body, and what friction needs of it. It acts
    // so far inward of the face: an offset, and the share 0 to 2 of half the mean depth.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Push(
        in DepthProfile<T> profile, T force, T zp, T zq, T levelShare, T upShare, T offset, T share, ref ContactSums<T> sum, out Touch<T> touch, out T normal, out T up)
    {
        Find(profile, offset, share, zp, zq, out touch, out T closing, out T slip, out up);
        T speed = (levelShare * closing) + (upShare * up);

        // up is the own point's rise over the other's; on a slope the rider's speed along it
        up = (upShare * closing) - (levelShare * up);
        normal = force * profile.Area * T.Max(0.0, 1.0 + (Damping * speed));
        sum.Normal = sum.Normal + normal;
        sum.Closing = sum.Closing + (normal * speed);
        sum.Slip = sum.Slip + (normal * slip);
        sum.NormalX = sum.NormalX + (normal * touch.X);
        sum.NormalY = sum.NormalY + (normal * touch.Y);
        T flat = levelShare * normal;
        Apply(touch, NormalX * flat, NormalY * flat, upShare * normal, ref sum.Own, ref sum.Other);
        Apply(touch, NormalY * normal, -(NormalX * normal), 0.0, ref sum.OwnAlong, ref sum.OtherAlong);
    }

    // Where the profile's middle lies in either body, and the own point's velocity over the other's there: along the
    // normal, along the face, up.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Find(in DepthProfile<T> profile, T offset, T share, T zp, T zq, out Touch<T> touch, out T closing, out T slip, out T up)
    {
        T inverse = 1.0 / T.Max(profile.Area, DepthProfile<T>.Nothing);
        T s = profile.Along * inverse;
        T inward = (zp * OwnLean) - (offset + (share * (profile.Across * inverse)));
        T x = (MiddleX - (NormalY * s)) + (NormalX * inward);
        T y = (MiddleY + (NormalX * s)) + (NormalY * inward);
        T dx = x - OtherX;
        T dy = y - OtherY;
        touch = default;
        touch.X = x;
        touch.Y = y;
        touch.Z = zp;
        touch.OtherX = (Cosine * dx) + (Sine * dy);
        touch.OtherY = (Cosine * dy) - (Sine * dx);
        touch.OtherZ = zq;
        Pose.Motion.PointVelocity(
            x - (zp * Pose.Pitch), y + (zp * Pose.Roll), zp, x, y, out T vx, out T vy, out T vz);
        OtherPose.Motion.PointVelocity(
            touch.OtherX - (zq * OtherPose.Pitch), touch.OtherY + (zq * OtherPose.Roll), zq, touch.OtherX, touch.OtherY, out T wx, out T wy, out T wz);
        vx = vx - ((Cosine * wx) - (Sine * wy));
        vy = vy - ((Sine * wx) + (Cosine * wy));
        closing = (NormalX * vx) + (NormalY * vy);
        slip = (NormalX * vy) - (NormalY * vx);
        up = vz - wz;
    }

    // A force f on the other body, -f on the own one, given in own axes.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Apply(in Touch<T> touch, T fx, T fy, T fz, ref Wrench<T> onOwn, ref Wrench<T> onOther)
    {
        onOwn.Add(
            touch.X - (touch.Z * Pose.Pitch), touch.Y + (touch.Z * Pose.Roll), touch.Z, touch.X, touch.Y, -fx, -fy, -fz);
        onOther.Add(
            touch.OtherX - (touch.OtherZ * OtherPose.Pitch),
            touch.OtherY + (touch.OtherZ * OtherPose.Roll),
            touch.OtherZ,
            touch.OtherX,
            touch.OtherY,
            (Cosine * fx) + (Sine * fy),
            (Cosine * fy) - (Sine * fx),
            fz);
    }
}
