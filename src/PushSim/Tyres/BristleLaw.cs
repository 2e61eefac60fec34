using System.Runtime.CompilerServices;

namespace PushSim.Tyres;

/// <summary>The elasto-plastic bristle z' = v - (alpha A + K) z, A = sigma0 |v|/mu, K = kappa |omega R|, in one or two dimensions
/// and its closed-form implicit stage z = z* + g z'. alpha = 0 while |z| &lt; b z_max, linear to 1 at z_max = mu/sigma0
/// (Dupont, Hayward, Armstrong, Altpeter, IEEE TAC 47, 2002, the linear form of their switch); with the switch |v| in A
/// is max(0, v.z/|z|), so that z turns along the friction circle without leaving it. alpha = 1 always is the lumped
/// LuGre tyre (Velenis, Tsiotras, Canudas de Wit, Sorine, Vehicle System Dynamics 43, 2005).</summary>
internal static class BristleLaw
{
    /// <summary>Decay time of a bristle that has left the floor [s]; anything far below a hop's length does.</summary>
    public const double RelaxationTime = 1e-3;

    /// <summary>Factor f of the stage z = f q with the switch on, A held: f (elastic + g alpha A) = 1. g is 0 for a plain evaluation, then only the decay rate is of use.</summary>
    /// <param name="length">|q| [m].</param>
    /// <param name="g">Step times diagonal coefficient [s].</param>
    /// <param name="slide">A [1/s].</param>
    /// <param name="elastic">What divides q while alpha is 0: 1 + g K for q = z* + g v [1].</param>
    /// <param name="zMax">mu/sigma0 [m].</param>
    /// <param name="low">b z_max, up to which it is elastic [m].</param>
    /// <param name="inverseSpan">1/(z_max - b z_max) [1/m].</param>
    /// <param name="alpha">The switch at the solution [1].</param>
    /// <returns>f [1].</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Switched<T>(T length, T g, T slide, T elastic, T zMax, T low, T inverseSpan, out T alpha)
        where T : struct, IReal<T>
    {
        T plastic = elastic + (g * slide);

        T isPlastic = (zMax * plastic) - length;
        T isElastic = length - (low * elastic);
        alpha = T.IfLess(isPlastic, 0.0, 1.0, 0.0);
        if (!T.AllLess(T.Min(isPlastic, isElastic), 0.0))
        {
            // between: m elastic + m g A (m - low)/span = |q|; the two forms of the root avoid cancellation on either side
            T a = (g * slide) * inverseSpan;
            T half = 0.5 * (elastic - (a * low));
            T root = T.Sqrt((half * half) + (a * length));
            T numerator = T.IfLess(half, 0.0, root - half, length);
            T denominator = T.IfLess(half, 0.0, T.Max(a, 1e-30), half + root);
            T between = T.Max(0.0, T.Min(1.0, ((numerator / denominator) - low) * inverseSpan));
            alpha = T.IfLess(isPlastic, 0.0, 1.0, T.IfLess(isElastic, 0.0, 0.0, between));
        }

        return 1.0 / (elastic + (alpha * g * slide));
    }

    /// <summary>Limited bristle damping sigma1 / (1 + sigma1 a/(4 sigma0)), which keeps the law passive [unit of sigma1].</summary>
    /// <param name="sigma1">Damping.</param>
    /// <param name="sigma1Over4Sigma0">sigma1/(4 sigma0) [s].</param>
    /// <param name="decay">a = alpha A + K [1/s].</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T LimitedDamping<T>(T sigma1, T sigma1Over4Sigma0, T decay)
        where T : struct, IReal<T> => sigma1 / (1.0 + (sigma1Over4Sigma0 * decay));
}
