using System.Runtime.CompilerServices;
using PushSim.Tyres;

namespace PushSim.Contact;

/// <summary>Friction of a contact: one elasto-plastic bristle in floor axes, of which what lies across the contact's normal n acts:
/// <code>
///   v = slip - n (n.slip)      z' = v - (alpha |v|/z_max + r) z      T = -mu N (z + t z') / max(|z + t z'|, z_max)
/// </code>
/// What of z lies along n, after n has turned, dies out. r lets a bristle forget: 1/tau where upright faces meet, 0 on slopes and floor, where friction holds for ever.
/// Bristle as in <see cref="BristleLaw"/>.</summary>
internal static class ContactFriction
{
    /// <summary>Number of bristles: along floor x, y and up [1].</summary>
    public const int Bristles = 3;

    // Share of z_max up to which friction is elastic [1].
    private const double ElasticShare = 0.8;

    // t, damping of the bristle over its stiffness [s]: stills a stuck contact; much more would be stiff in a hard impact.
    private const double BristleDamping = 2e-3;

    // Keeps lengths off zero; far below any deflection or speed, squared.
    private const double TinySquare = 1e-36;

    /// <summary>Friction of a unit of mu N [1]: the direction and share in which it acts on the first body; for g > 0 solves the bristle.</summary>
    /// <param name="limit">z_max [m].</param>
    /// <param name="forget">r [1/s].</param>
    /// <param name="normal">N; without it the bristle only relaxes [N].</param>
    /// <param name="n">Normal from the first body to the second [1].</param>
    /// <param name="slip">Velocity of the first body against the second there [m/s].</param>
    /// <param name="g">Stage step, 0 for a plain evaluation [s].</param>
    /// <param name="z">Bristle [m]; replaced by the stage's solution when g > 0.</param>
    /// <param name="dz">Its derivative [m/s].</param>
    /// <param name="pull">T/(mu N) [1].</param>
    [MethodImpl(Kernel.Part)]
    public static void Solve<T>(T limit, T forget, T normal, in Axes<T> n, in Axes<T> slip, T g, Span<T> z, Span<T> dz, out Axes<T> pull)
        where T : struct, IReal<T>
    {
        T inAir = 1.0 / BristleLaw.RelaxationTime;
        T free = 1.0 / (1.0 + (g * inAir));
        Across(n, slip.X, slip.Y, slip.Z, out Axes<T> v, out _);
        Across(n, z[0], z[1], z[2], out Axes<T> own, out T along);
        T qx = T.Fma(g, v.X, own.X);
        T qy = T.Fma(g, v.Y, own.Y);
        T qz = T.Fma(g, v.Z, own.Z);
        T length = T.Sqrt((((qx * qx) + (qy * qy)) + (qz * qz)) + TinySquare);
        T ahead = ((v.X * qx) + (v.Y * qy)) + (v.Z * qz);
        T slide = T.Max(0.0, ahead) / (length * limit);
        T f = BristleLaw.Switched(
            length, g, slide, 1.0 + (g * forget), limit, ElasticShare * limit, 1.0 / ((1.0 - ElasticShare) * limit), out T alpha);
        T decay = (alpha * slide) + forget;
        T rest = free * along;
        T fade = inAir * rest;
        Settle(normal, f * qx, v.X, decay, n.X, rest, fade, free, inAir, g, ref z[0], out dz[0], out T px);
        Settle(normal, f * qy, v.Y, decay, n.Y, rest, fade, free, inAir, g, ref z[1], out dz[1], out T py);
        Settle(normal, f * qz, v.Z, decay, n.Z, rest, fade, free, inAir, g, ref z[2], out dz[2], out T pz);

        // the bound keeps the law passive by itself: z' never turns against z while it slides
        T pulled = T.Sqrt((((px * px) + (py * py)) + (pz * pz)) + TinySquare);
        T scale = T.IfLess(0.0, normal, -1.0 / T.Max(pulled, limit), 0.0);
        pull.X = scale * px;
        pull.Y = scale * py;
        pull.Z = scale * pz;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Across<T>(in Axes<T> n, T x, T y, T z, out Axes<T> across, out T along)
        where T : struct, IReal<T>
    {
        along = ((n.X * x) + (n.Y * y)) + (n.Z * z);
        across.X = x - (along * n.X);
        across.Y = y - (along * n.Y);
        across.Z = z - (along * n.Z);
    }

    // One component: across the normal by the law, along it and in the air it dies out.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Settle<T>(T normal, T end, T v, T decay, T n, T rest, T fade, T free, T inAir, T g, ref T z, out T dz, out T pulled)
        where T : struct, IReal<T>
    {
        T rate = v - (decay * end);
        pulled = T.Fma(BristleDamping, rate, end);
        T alone = free * z;
        dz = T.IfLess(0.0, normal, rate - (fade * n), -(inAir * alone));
        z = T.IfLess(0.0, g, T.IfLess(0.0, normal, end + (rest * n), alone), z);
    }
}
