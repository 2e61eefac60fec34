using System.Runtime.CompilerServices;
using PushSim.Chassis;

namespace PushSim.Contact;

/// <content>The forces of the faces that act.</content>
internal sealed partial class ContactSide<T>
{
    /// <summary>Sums the forces of the own faces.</summary>
    /// <param name="scale">1 / sum of the weights of both sides, 0 where the bodies do not overlap [1/m].</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Act(T scale)
    {
        bool any = false;
        foreach ((int first, int second) in _own.Partners)
        {
            ref ContactSums<T> pair = ref _sums[any ? 3 : 0];
            bool acts = ActFace(first, scale, ref pair);
            if (second >= 0 && ActFace(second, scale, ref _sums[acts ? 4 : any ? 3 : 0]))
            {
                if (acts)
                {
                    pair.Add(_sums[4], _ramps);
                }

                acts = true;
            }

            if (acts && any)
            {
                Sums.Add(pair, _ramps);
            }

            any |= acts;
        }

        if (!any)
        {
            Sums.Clear(_ramps);
        }
    }

    // Sets the sum over the other's edges of the force on face i; false, and nothing set, where there is none.
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

        // a mirrored face adds its edges in the other order: the two of a pair are added first, and the first pair to nothing
        bool any = false;
        foreach ((int first, int second) in _other.Partners)
        {
            ref ContactSums<T> pair = ref any ? ref _sums[1] : ref sum;
            bool acts = ActEdge(i, first, share, ref pair);
            if (second >= 0 && ActEdge(i, second, share, ref acts ? ref _sums[2] : ref pair))
            {
                if (acts)
                {
                    pair.Add(_sums[2], _ramps);
                }

                acts = true;
            }

            if (acts && any)
            {
                sum.Add(pair, _ramps);
            }

            any |= acts;
        }

        return any;
    }

    // Sets the force of one edge on the face: the edge clipped to the face's length, its depth integrated. An edge that faces away
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
