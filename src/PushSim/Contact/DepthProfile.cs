using System.Runtime.CompilerServices;

namespace PushSim.Contact;

/// <summary>Integrals along a face of the positive part d of a depth that runs linearly from a at s0 to b at s1, in closed form.
/// The same to the bit, with s negated, for the mirrored profile.</summary>
internal struct DepthProfile<T>
    where T : struct, IReal<T>
{
    /// <summary>Integral of d ds: the overlap's area [m^2].</summary>
    public T Area;

    /// <summary>Integrals of s d ds and of d^2/2 ds: the area's moments along and across the face [m^3].</summary>
    public T Along, Across;

    /// <summary>Far below any area or length that matters, so that nothing divides by zero [m^2 or m].</summary>
    public static double Nothing => Lane.IsSingle<T>() ? 1e-12 : 1e-30;

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Integrate(T s0, T s1, T a, T b, out DepthProfile<T> profile)
    {
        T length = s1 - s0;
        T high = T.Max(0.0, a);
        T far = T.Max(0.0, b);
        T sum = high + far;
        T deep = length * (sum / T.Max(T.Abs(a) + T.Abs(b), Nothing));
        T dry = length - deep;
        T from = s0 + T.IfLess(a, 0.0, dry, 0.0);
        T to = s1 - T.IfLess(b, 0.0, dry, 0.0);
        T sixth = deep * (1.0 / 6.0);
        profile.Area = 0.5 * deep * sum;
        profile.Along = sixth * ((from * (sum + high)) + (to * (sum + far)));
        profile.Across = sixth * (((high * high) + (far * far)) + (high * far));
    }

    /// <summary>Takes away a profile that lies within this one.</summary>
    public void Subtract(in DepthProfile<T> part)
    {
        Area = T.Max(0.0, Area - part.Area);
        Along = Along - part.Along;
        Across = Across - part.Across;
    }
}
