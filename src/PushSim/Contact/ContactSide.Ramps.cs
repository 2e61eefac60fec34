using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <content>
/// Ramps: who is under whom, and the forces on a slope.
/// <code>
///   own ramp, rider's lower edge at depth D from the tip:   penetration = ((tip + D tan beta) - lower edge) cos beta = (D - g) sin beta
///   normal to the slope on the rider: (-> away from the ramp: sin beta, up: cos beta);   friction along (inward: cos beta, up: sin beta)
/// </code>
/// The slope ends at its top; behind it stands an upright face, so that a rider lifted over the top is stopped by a level force.
/// </content>
internal sealed partial class ContactSide<T>
{
    // Shares of the contact in which the own ramp is under the other body, and the other's under the own one.
    private void Under(int i, int j, T gap, out T ownUnder, out T otherUnder)
    {
        T under = T.Max(0.0, T.Min(1.0, 0.5 + (gap * InverseBlend)));
        ownUnder = _own.IsRamp[i] ? under : 0.0;
        otherUnder = _other.IsRamp[j] ? T.Max(0.0, T.Min(1.0, 0.5 - (gap * InverseBlend))) : 0.0;
    }

    // A bound of the depth counted from the slope anywhere on the edge, the depth itself where nothing is clamped; the force
    // must vanish with it, so it may not be less.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private T RampOverlap(int i, int j, T lean)
    {
        int k = Next(j);
        T gap0 = Gap(i, j, j);
        T gap1 = Gap(i, j, k);
        T d0 = _depth[j] + lean;
        T d1 = _depth[k] + lean;
        T deep = T.Max(d0, d1);
        T bound = deep;
        if (_own.IsRamp[i])
        {
            T slope = T.Max(d0 - (gap0 * _own.RampCotangent[i]), d1 - (gap1 * _own.RampCotangent[i]));
            bound = T.Max(deep - _own.RampLength[i], T.Min(deep, slope));
        }

        if (_other.IsRamp[j])
        {
            T slope = T.Max(d0 + (gap0 * _other.RampCotangent[j]), d1 + (gap1 * _other.RampCotangent[j]));
            bound = T.Min(bound, T.Max(deep - _other.RampLength[j], T.Min(deep, slope)));
        }

        return bound;
    }

    // height of the other's lower edge above the own one at a corner
    private T Gap(int i, int j, int corner) => (_other.Lower[j] + _otherTilt[corner]) - (_own.Lower[i] + _ownTilt[corner]);

    // A face or an edge that is a ramp. Four parts, blended by who is under whom: blunt; on the own slope; on the other's; and
    // behind a slope's top an upright face, so that depth beyond the slope pushes level.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void ActRamp(int i, int j, T force, T common, T s0, T s1, T d0, T d1, T gap0, T gap1, ref ContactSums<T> sum)
    {
        T zp = _height[(i * Most) + j] - _ownLevel[i];
        T zq = _height[(i * Most) + j] - _level[j];
        Under(i, j, 0.5 * (gap0 + gap1), out T ownUnder, out T otherUnder);
        T recess0 = 0.0;
        T recess1 = 0.0;
        if (_own.IsRamp[i])
        {
            recess0 = Recess(gap0, _own.RampCotangent[i], _own.RampLength[i]);
            recess1 = Recess(gap1, _own.RampCotangent[i], _own.RampLength[i]);
        }

        if (_other.IsRamp[j])
        {
            recess0 = recess0 + Recess(-gap0, _other.RampCotangent[j], _other.RampLength[j]);
            recess1 = recess1 + Recess(-gap1, _other.RampCotangent[j], _other.RampLength[j]);
        }

        DepthProfile<T>.Integrate(s0, s1, d0 - recess0, d1 - recess1, out DepthProfile<T> profile);
        T blunt = T.Max(0.0, 1.0 - ownUnder - otherUnder);
        Push(profile, force * blunt * common, zp, zq, 1.0, 0.0, 0.0, 1.0, ref sum, out _, out _, out _);
        if (_own.IsRamp[i])
        {
            T end0 = d0 - T.Max(recess0, _own.RampLength[i]);
            T end1 = d1 - T.Max(recess1, _own.RampLength[i]);
            ActSlope(i, profile, force * ownUnder, s0, s1, recess0, recess1, end0, end1, zp, zq, ref sum);
        }

        if (_other.IsRamp[j])
        {
            T end0 = d0 - T.Max(recess0, _other.RampLength[j]);
            T end1 = d1 - T.Max(recess1, _other.RampLength[j]);
            ActOtherSlope(profile, force * otherUnder, s0, s1, end0, end1, zp, zq, _other.RampSine[j], _other.RampCosine[j], _other.Upper[j] - _other.CentreHeight, ref sum);
        }
    }

    private static T Recess(T gap, T cotangent, T length) => T.Max(0.0, T.Min(length, gap * cotangent));

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void ActSlope(
        int i, DepthProfile<T> profile, T force, T s0, T s1, T recess0, T recess1, T end0, T end1, T zp, T zq, ref ContactSums<T> sum)
    {
        T rampSine = _own.RampSine[i];
        T rampCosine = _own.RampCosine[i];
        T top = _own.Upper[i] - _own.CentreHeight;

        // the rider's edge bears on the slope, far inward of the tip, also where some of its depth lies behind the top
        T inverse = 1.0 / T.Max(s1 - s0, DepthProfile<T>.Nothing);
        T area = T.Max(profile.Area, DepthProfile<T>.Nothing);
        T s = profile.Along / area;
        T part0 = (s - s0) * inverse;
        T part1 = (s1 - s) * inverse;
        T recess = 0.5 * ((recess0 + (part0 * (recess1 - recess0))) + (recess1 + (part1 * (recess0 - recess1))));
        T edge = recess + (2.0 * (profile.Across * (1.0 / area)));
        DepthProfile<T>.Integrate(s0, s1, end0, end1, out DepthProfile<T> behind);
        profile.Subtract(behind);
        Push(profile, force * rampSine, zp, zq, rampSine, rampCosine, edge, 0.0, ref sum, out Touch<T> touch, out T normal, out T up);
        Rub(touch, normal, up, rampSine, rampCosine, 1.0, ref sum.OwnRamp);

        // the upright face behind the top is met above the top
        T raise = T.Max(0.0, top - zp);
        Push(behind, force, zp + raise, zq + raise, 1.0, 0.0, _own.RampLength[i], 1.0, ref sum, out _, out _, out _);
    }

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void ActOtherSlope(
        DepthProfile<T> profile, T force, T s0, T s1, T end0, T end1, T zp, T zq, T rampSine, T rampCosine, T top, ref ContactSums<T> sum)
    {
        DepthProfile<T>.Integrate(s0, s1, end0, end1, out DepthProfile<T> behind);
        profile.Subtract(behind);
        Push(profile, force * rampSine, zp, zq, rampSine, -rampCosine, 0.0, 0.0, ref sum, out Touch<T> touch, out T normal, out T up);
        Rub(touch, normal, up, rampSine, -rampCosine, -1.0, ref sum.OtherRamp);
        T raise = T.Max(0.0, top - zq);
        Push(behind, force, zp + raise, zq + raise, 1.0, 0.0, 0.0, 1.0, ref sum, out _, out _, out _);
    }

    // What friction on a slope needs. Up the slope, for a rider that is the other body, is (-n cos, sin); the rider is the
    // own body where sign is -1.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Rub(in Touch<T> touch, T normal, T up, T levelShare, T upShare, T sign, ref SlopeSums<T> slope)
    {
        slope.Normal = slope.Normal + normal;
        slope.Slip = slope.Slip + (sign * normal * up);
        T along = sign * normal;
        T flat = -(along * upShare);
        Apply(touch, NormalX * flat, NormalY * flat, along * levelShare, ref slope.Own, ref slope.Other);
    }
}
