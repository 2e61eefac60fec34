using System.Runtime.CompilerServices;
using PushSim.Tyres;

namespace PushSim.Analysis.Limits;

/// <summary>Force of a tyre that slips steadily, out of the same law as the run's: z' = 0 gives, with s = |z|/z_max,
/// <code>
///   rho = kappa mu |omega R| / (sigma0 |v|)
///   s^2 - (b - (1 - b) rho) s - (1 - b) = 0  for rho &lt;= 1/b, else s = 1/rho;  plain law: s = 1/(1 + rho)
///   F = N (mu s + sigma2 |v|)
/// </code></summary>
internal static class SteadyTyre
{
    /// <summary>Share s of the friction that a rolling and slipping tyre gives [1].</summary>
    /// <param name="p">Tyre.</param>
    /// <param name="shape">What is on.</param>
    /// <param name="mu">Friction at this slip, with the floor's scale [1].</param>
    /// <param name="surfaceOverSlip">|omega R|/|v| [1]; 1 for a wheel that spins on a standing robot.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Share<T>(in WheelParameters<T> p, in WheelShape shape, T mu, T surfaceOverSlip)
        where T : struct, IReal<T>
    {
        T rho = p.Kappa * mu * surfaceOverSlip * p.InverseSigma0;
        if (shape.Plain)
        {
            return 1.0 / (1.0 + rho);
        }

        T rest = 1.0 - p.ElasticShare;
        T half = 0.5 * (p.ElasticShare - (rest * rho));
        T root = half + T.Sqrt((half * half) + rest);
        return T.IfLess(1.0, rho * p.ElasticShare, 1.0 / T.Max(rho, 1e-30), root);
    }

    /// <summary>Force against the slip [N].</summary>
    /// <param name="p">Tyre.</param>
    /// <param name="kind">What is on, and its table.</param>
    /// <param name="floor">Floor's friction scale [1].</param>
    /// <param name="load">N [N].</param>
    /// <param name="slip">|v| &gt; 0 [m/s].</param>
    /// <param name="surface">|omega R| [m/s].</param>
    [MethodImpl(Kernel.Part)]
    public static T Force<T>(in WheelParameters<T> p, WheelKind<T> kind, T floor, T load, T slip, T surface)
        where T : struct, IReal<T>
    {
        T mu = floor * WheelEquations.Friction(p, kind, slip, load);
        return load * ((mu * Share(p, kind.Shape, mu, surface / slip)) + (p.Sigma2 * slip));
    }

    /// <summary>The most that a wheel holds as it breaks away on a standing robot [N].</summary>
    public static T Peak<T>(in WheelParameters<T> p, WheelKind<T> kind, T floor, T load)
        where T : struct, IReal<T>
    {
        T mu = floor * WheelEquations.Friction(p, kind, 0.0, load);
        return load * mu * Share(p, kind.Shape, mu, 1.0);
    }
}
