using System.Runtime.CompilerServices;
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

    private readonly ContactShape<T> own, other;
    private readonly T stiffness, damping;
    private readonly bool ramps;

    // the other's corners in own axes; floor height of either body's level plane there, above its corner heights
    private readonly T[] cornerX = new T[Most], cornerY = new T[Most], ownTilt = new T[Most], otherTilt = new T[Most];

    // of each face of the other: floor heights of its edges and of the body's centre plane at its middle
    private readonly T[] lower = new T[Most], upper = new T[Most], level = new T[Most];

    // of the face at hand, per corner of the other: depth below it and place along it
    private readonly T[] depth = new T[Most + 1], along = new T[Most];

    // per face and edge: depth added by tilt, floor height of the acting point; per own face: that of the centre plane there
    private readonly T[] shift = new T[Most * Most], height = new T[Most * Most], ownLevel = new T[Most];
    private readonly T[] overlap = new T[Most], weight = new T[Most];

    private BodyPose<T> pose, otherPose;

    // the other's centre of mass and heading in own axes, its tilt (theta, -phi) turned into them
    private T otherX, otherY, cosine, sine, leanX, leanY;

    // the face at hand
    private T normalX, normalY, middleX, middleY, ownLean;

    /// <summary>What the last <see cref="Act"/> found.</summary>
    public ContactSums<T> Sums;

    // terms of one edge pair, of one face and of its partner
    private ContactSums<T> edgeFirst, edgeSecond, faceFirst, faceSecond;

    public ContactSide(ContactShape<T> own, ContactShape<T> other, ContactSettings settings)
    {
        this.own = own;
        this.other = other;
        ramps = own.HasRamp || other.HasRamp;
        stiffness = settings.Stiffness;
        damping = settings.Damping;
    }

    /// <summary>Sets the poses and finds the least overlap of the own faces [m]; stops where there is none, in any lane.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public T LeastOverlap(in BodyPose<T> ownPose, in BodyPose<T> poseOfOther)
    {
        pose = ownPose;
        otherPose = poseOfOther;
        Place();
        PlaceCorners();
        PlaceFaces();
        T least = 1e30;
        for (int i = 0; i < own.Count && !T.AllLess(least, DepthProfile<T>.Nothing); i++)
        {
            T deepest = FaceOverlap(i);
            overlap[i] = deepest;
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
        foreach ((int first, int second) in own.Partners)
        {
            T pair = T.Max(0.0, limit - overlap[first]);
            weight[first] = pair;
            if (second >= 0)
            {
                weight[second] = T.Max(0.0, limit - overlap[second]);
                pair = pair + weight[second];
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
        Sums = default;
        foreach ((int first, int second) in own.Partners)
        {
            bool acts = ActFace(first, scale, ref faceFirst);
            if (second >= 0 && ActFace(second, scale, ref faceSecond))
            {
                if (acts)
                {
                    faceSecond.Add(faceFirst, ramps);
                }

                Sums.Add(faceSecond, ramps);
            }
            else if (acts)
            {
                Sums.Add(faceFirst, ramps);
            }
        }
    }

    private void Place()
    {
        T x = otherPose.X - pose.X;
        T y = otherPose.Y - pose.Y;
        otherX = (pose.Cosine * x) + (pose.Sine * y);
        otherY = (pose.Cosine * y) - (pose.Sine * x);
        cosine = (pose.Cosine * otherPose.Cosine) + (pose.Sine * otherPose.Sine);
        sine = (pose.Cosine * otherPose.Sine) - (pose.Sine * otherPose.Cosine);
        leanX = (cosine * otherPose.Pitch) + (sine * otherPose.Roll);
        leanY = (sine * otherPose.Pitch) - (cosine * otherPose.Roll);
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void PlaceCorners()
    {
        for (int c = 0; c < other.Count; c++)
        {
            T x = otherX + ((cosine * other.X[c]) - (sine * other.Y[c]));
            T y = otherY + ((sine * other.X[c]) + (cosine * other.Y[c]));
            cornerX[c] = x;
            cornerY[c] = y;
            ownTilt[c] = pose.Heave - (x * pose.Pitch) + (y * pose.Roll);
            otherTilt[c] = otherPose.Heave - (other.X[c] * otherPose.Pitch) + (other.Y[c] * otherPose.Roll);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void PlaceFaces()
    {
        for (int j = 0; j < other.Count; j++)
        {
            T tilt = 0.5 * (otherTilt[j] + otherTilt[Next(j)]);
            lower[j] = other.Lower[j] + tilt;
            upper[j] = other.Upper[j] + tilt;
            level[j] = other.CentreHeight + tilt;
        }
    }

    private int Next(int corner) => corner + 1 < other.Count ? corner + 1 : 0;

    private void Take(int i)
    {
        normalX = own.NormalX[i];
        normalY = own.NormalY[i];
        middleX = own.MiddleX[i];
        middleY = own.MiddleY[i];
        ownLean = (normalX * pose.Pitch) - (normalY * pose.Roll);
    }

    // greatest depth of the other's corners below face i
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private T FaceOverlap(int i)
    {
        Take(i);
        T otherLean = (normalX * leanX) + (normalY * leanY);
        T tilt = pose.Heave - (middleX * pose.Pitch) + (middleY * pose.Roll);
        T low = own.Lower[i] + tilt;
        T high = own.Upper[i] + tilt;
        T centre = own.CentreHeight + tilt;
        int n = other.Count;
        Span<T> deep = depth.AsSpan(0, n + 1);
        ReadOnlySpan<T> xs = cornerX.AsSpan(0, n);
        ReadOnlySpan<T> ys = cornerY.AsSpan(0, n);
        for (int c = 0; c < xs.Length; c++)
        {
            deep[c] = (normalX * (middleX - xs[c])) + (normalY * (middleY - ys[c]));
        }

        deep[n] = deep[0];
        ReadOnlySpan<T> lowers = lower.AsSpan(0, n);
        ReadOnlySpan<T> uppers = upper.AsSpan(0, n);
        ReadOnlySpan<T> levels = level.AsSpan(0, n);
        Span<T> heights = height.AsSpan(i * Most, n);
        Span<T> shifts = shift.AsSpan(i * Most, n);
        T deepest = -1e30;
        for (int j = 0; j < lowers.Length; j++)
        {
            T bottom = T.Max(low, lowers[j]);
            T middle = 0.5 * (bottom + T.Min(high, uppers[j]));
            bool isRamp = ramps && (own.IsRamp[i] || other.IsRamp[j]);
            if (isRamp)
            {
                // on a slope the point that acts is the rider's lower edge
                Under(i, j, lowers[j] - low, out T ownUnder, out T otherUnder);
                middle = middle + ((ownUnder + otherUnder) * (bottom - middle));
            }

            T lean = ((middle - centre) * ownLean) - ((middle - levels[j]) * otherLean);
            heights[j] = middle;
            shifts[j] = lean;
            deepest = T.Max(deepest, isRamp ? RampOverlap(i, j, lean) : T.Max(deep[j], deep[j + 1]) + lean);
        }

        ownLevel[i] = centre;
        return deepest;
    }

    // Sum over the other's edges of the force on face i; false where it is nothing.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private bool ActFace(int i, T scale, ref ContactSums<T> sum)
    {
        T share = weight[i] * scale;
        if (T.AllLess(share, DepthProfile<T>.Nothing))
        {
            return false;
        }

        share = T.IfLess(share, DepthProfile<T>.Nothing, 0.0, share);
        Take(i);
        for (int c = 0; c < other.Count; c++)
        {
            T x = cornerX[c] - middleX;
            T y = cornerY[c] - middleY;
            depth[c] = -((normalX * x) + (normalY * y));
            along[c] = (normalX * y) - (normalY * x);
        }

        bool any = false;
        sum = default;
        foreach ((int first, int second) in other.Partners)
        {
            bool acts = ActEdge(i, first, share, ref edgeFirst);
            if (second >= 0 && ActEdge(i, second, share, ref edgeSecond))
            {
                if (acts)
                {
                    edgeSecond.Add(edgeFirst, ramps);
                }

                sum.Add(edgeSecond, ramps);
                any = true;
            }
            else if (acts)
            {
                sum.Add(edgeFirst, ramps);
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
        T s0 = T.Max(along[k], -own.Half[i]);
        T s1 = T.Min(along[j], own.Half[i]);
        if (T.AllLess(s1 - s0, DepthProfile<T>.Nothing))
        {
            return false;
        }

        s1 = T.IfLess(s1 - s0, DepthProfile<T>.Nothing, s0, s1);
        T inverse = 1.0 / T.Max(along[j] - along[k], DepthProfile<T>.Nothing);
        T part0 = (s0 - along[k]) * inverse;
        T part1 = (along[j] - s1) * inverse;
        T lean = shift[(i * Most) + j];
        T d0 = depth[k] + (part0 * (depth[j] - depth[k])) + lean;
        T d1 = depth[j] + (part1 * (depth[k] - depth[j])) + lean;
        if (T.AllLess(T.Max(d0, d1), 0.0))
        {
            return false;
        }

        sum = default;
        T ownAt = 0.5 * ((ownTilt[k] + (part0 * (ownTilt[j] - ownTilt[k]))) + (ownTilt[j] + (part1 * (ownTilt[k] - ownTilt[j]))));
        T otherAt = 0.5 * ((otherTilt[k] + (part0 * (otherTilt[j] - otherTilt[k]))) + (otherTilt[j] + (part1 * (otherTilt[k] - otherTilt[j]))));
        T low = T.Max(own.Lower[i] + ownAt, other.Lower[j] + otherAt);
        T high = T.Min(own.Upper[i] + ownAt, other.Upper[j] + otherAt);
        T common = Clamp01((high - low) * InverseBlend);
        T force = share * stiffness;
        if (own.IsRamp[i] || other.IsRamp[j])
        {
            T gap0 = Gap(i, j, k);
            T gap1 = Gap(i, j, j);
            T g0 = gap0 + (part0 * (gap1 - gap0));
            T g1 = gap1 + (part1 * (gap0 - gap1));
            ActRamp(i, j, force, common, s0, s1, d0, d1, g0, g1, ref sum);
            return true;
        }

        DepthProfile<T>.Integrate(s0, s1, d0, d1, out DepthProfile<T> profile);
        Push(profile, force * common, height[(i * Most) + j] - ownLevel[i], height[(i * Most) + j] - level[j], 1.0, 0.0, 0.0, 1.0, ref sum, out _, out _, out _);
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
        normal = force * profile.Area * T.Max(0.0, 1.0 + (damping * speed));
        sum.Normal = sum.Normal + normal;
        sum.Closing = sum.Closing + (normal * speed);
        sum.Slip = sum.Slip + (normal * slip);
        sum.NormalX = sum.NormalX + (normal * touch.X);
        sum.NormalY = sum.NormalY + (normal * touch.Y);
        T flat = levelShare * normal;
        Apply(touch, normalX * flat, normalY * flat, upShare * normal, ref sum.Own, ref sum.Other);
        Apply(touch, normalY * normal, -(normalX * normal), 0.0, ref sum.OwnAlong, ref sum.OtherAlong);
    }

    // Where the profile's middle lies in either body, and the own point's velocity over the other's there: along the
    // normal, along the face, up.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Find(in DepthProfile<T> profile, T offset, T share, T zp, T zq, out Touch<T> touch, out T closing, out T slip, out T up)
    {
        T inverse = 1.0 / T.Max(profile.Area, DepthProfile<T>.Nothing);
        T s = profile.Along * inverse;
        T inward = (zp * ownLean) - (offset + (share * (profile.Across * inverse)));
        T x = (middleX - (normalY * s)) + (normalX * inward);
        T y = (middleY + (normalX * s)) + (normalY * inward);
        T dx = x - otherX;
        T dy = y - otherY;
        touch = default;
        touch.X = x;
        touch.Y = y;
        touch.Z = zp;
        touch.OtherX = (cosine * dx) + (sine * dy);
        touch.OtherY = (cosine * dy) - (sine * dx);
        touch.OtherZ = zq;
        pose.Motion.PointVelocity(
            x - (zp * pose.Pitch), y + (zp * pose.Roll), zp, x, y, out T vx, out T vy, out T vz);
        otherPose.Motion.PointVelocity(
            touch.OtherX - (zq * otherPose.Pitch), touch.OtherY + (zq * otherPose.Roll), zq, touch.OtherX, touch.OtherY, out T wx, out T wy, out T wz);
        vx = vx - ((cosine * wx) - (sine * wy));
        vy = vy - ((sine * wx) + (cosine * wy));
        closing = (normalX * vx) + (normalY * vy);
        slip = (normalX * vy) - (normalY * vx);
        up = vz - wz;
    }

    // A force f on the other body, -f on the own one, given in own axes.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Apply(in Touch<T> touch, T fx, T fy, T fz, ref Wrench<T> onOwn, ref Wrench<T> onOther)
    {
        onOwn.Add(
            touch.X - (touch.Z * pose.Pitch), touch.Y + (touch.Z * pose.Roll), touch.Z, touch.X, touch.Y, -fx, -fy, -fz);
        onOther.Add(
            touch.OtherX - (touch.OtherZ * otherPose.Pitch),
            touch.OtherY + (touch.OtherZ * otherPose.Roll),
            touch.OtherZ,
            touch.OtherX,
            touch.OtherY,
            (cosine * fx) + (sine * fy),
            (cosine * fy) - (sine * fx),
            fz);
    }
}
