using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>Pressure along an edge whose depth below a plane runs linearly from a at s0 to b at s1 (s from -1/2 to 1/2 over the whole edge of length L), and at both ends
/// a cap, which gives corners their stiffness:
/// <code>
///   h = max(0, a)   g = max(0, b)   wet l = (s1 - s0) (h + g)/(|a| + |b|) L   cap = l0/4 min(1, (s1 - s0) L/(2 rho))
///   area n0 = (h + g) (l/2 + cap)      moment ns = l/6 (from (2 h + g) + to (2 g + h)) + cap (h s0 + g s1)
/// </code>
/// The same to the bit, with s negated, for the mirrored profile.</summary>
internal static class EdgeProfile
{
    /// <summary>l0, length of flush edge that two caps are worth [m]: a corner then gives 5 % of what a flush nose does.</summary>
    public const double CapLength = 0.1;

    /// <summary>rho, half the width over which a face's rim takes over [m]; far below any part, above the depths of a push.</summary>
    public const double Rim = 0.5e-3;

    /// <summary>Far below any area or length that matters, so that nothing divides by zero [m^2 or m].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Nothing<T>()
        where T : struct, IReal<T> => Lane.IsSingle<T>() ? 1e-12 : 1e-30;

    /// <summary>Area [m^2] and moment [m^2] of a profile.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Integrate<T>(T s0, T s1, T a, T b, T length, out T area, out T moment)
        where T : struct, IReal<T>
    {
        T span = s1 - s0;
        T h = T.Max(0.0, a);
        T g = T.Max(0.0, b);
        T sum = h + g;
        T wet = span * (sum / T.Max(T.Abs(a) + T.Abs(b), Nothing<T>()));
        T dry = span - wet;
        T from = s0 + T.IfLess(a, 0.0, dry, 0.0);
        T to = s1 - T.IfLess(b, 0.0, dry, 0.0);
        T cap = (0.25 * CapLength) * T.Min(1.0, span * length * (0.5 / Rim));
        T l = wet * length;
        area = sum * ((0.5 * l) + cap);
        moment = ((l * (1.0 / 6.0)) * ((from * (sum + h)) + (to * (sum + g)))) + (cap * ((h * s0) + (g * s1)));
    }

    /// <summary>1 for an edge that lies along a plane, 0 for one that stands on it: its end then is felt by the others [1].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Lying<T>(T length, T depthDifference)
        where T : struct, IReal<T> =>
        T.Max(0.0, T.Min(1.0, ((0.95 * length) - T.Abs(depthDifference)) / (0.2 * length)));
}
