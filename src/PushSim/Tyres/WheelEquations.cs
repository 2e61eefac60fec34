using System.Runtime.CompilerServices;

namespace PushSim.Tyres;

/// <summary>One wheel: load, tread ring on its carcass, bristle, in the wheel's own frame (x along the circumference, y lateral).
/// The floor is touched under the axle (<see cref="WheelPlace{T}"/>) at the point P, t the direction in which the wheel rolls and s to its left.
/// w is the rim's velocity over the floor, v the tread's own, q = carcass deflection, z = bristle deflection:
/// <code>
///   w_x = v_P.t - omega R        w_y = v_P.s
///   q' = v - w      F = k_c q + c_c q'        m_t v' = T - F      T = -N (sigma0 z + sigma1 z' + sigma2 v)
///   z' = v - (alpha sigma0 |v|/mu + kappa |omega R|) z
///   mu = mu_k + (mu_s - mu_k) exp(-(|v|/v_s)^2), or a table; optional rise mu_r ln(1 + |v|/v_r), load, dust
/// </code>
/// Average-lumped LuGre tyre: Canudas de Wit, Tsiotras, Velenis, Basset, Gissinger, Vehicle System Dynamics 39, 2003.
/// With another friction across the wheel, rho = mu_y/mu_x, w_y, v_y, q_y and z_y stand for rho times what they are, and F_y for the force over rho: the ring is then alike in both
/// directions, the sliding force is that of greatest dissipation on the ellipse (Velenis, Tsiotras, Canudas de Wit, Sorine 2005), and body and ring are rho^2 stiffer and heavier across.
/// A patch that turns is a third direction in the same way, w_s = s r with the mean distance s of its points from its middle and M = s F_s: sliding and turning share an
/// ellipsoid of limits (Howe, Cutkosky, Int. J. Robotics Research 15, 1996, from memory), and the bristle holds its moment at rest.
/// Limits: no squash of the radius, r x v terms of the tread left out.</summary>
internal static class WheelEquations
{
    // Friction that a falling rise ends at [1]: without it friction became negative at speed and the floor drove the tyre.
    private const double LeastFriction = 0.005;

    /// <summary>Load, friction, tyre body, tread and bristle of one wheel; <see cref="TreadRing"/> solves the last three.</summary>
    /// <param name="p">Parameters.</param>
    /// <param name="kind">Where its states stand, what is on, its table.</param>
    /// <param name="place">Where and how fast it touches the floor.</param>
    /// <param name="turning">Turning of the chassis about the vertical [rad/s].</param>
    /// <param name="surface">omega R [m/s].</param>
    /// <param name="friction">Floor's friction scale at the wheel, times dust [1].</param>
    /// <param name="g">Stage step, 0 for a plain evaluation [s].</param>
    /// <param name="wheel">Number of the wheel [1].</param>
    /// <param name="block">Length of each block of the tyres' implicit states [1].</param>
    /// <param name="z">Implicit states, in the order of <c>StateLayout</c>; the wheel's are replaced by the stage's solution when g > 0.</param>
    /// <param name="predicted">Their prediction, of which the tread's velocity is used.</param>
    /// <param name="dz">Derivatives of z.</param>
    /// <param name="work">Forces and powers.</param>
    /// <param name="wearSpeed">|v_p|, the bristle end's slide over the floor, where fouling or wear asks for it [m/s].</param>
    [MethodImpl(Kernel.Part)]
    public static void Evaluate<T>(
        in WheelParameters<T> p,
        WheelKind<T> kind,
        in WheelPlace<T> place,
        T turning,
        T surface,
        T friction,
        T g,
        int wheel,
        int block,
        Span<T> z,
        ReadOnlySpan<T> predicted,
        Span<T> dz,
        ref WheelWork<T> work,
        out T wearSpeed)
        where T : struct, IReal<T>
    {
        ref readonly WheelShape shape = ref kind.Shape;
        int deflection = 2 * wheel;
        int tread = block + deflection;
        int bristle = block + tread;
        T wx = place.Rolling - surface;
        T wy = p.LateralRatio * place.Lateral;
        T ws = p.SpinRadius * turning;
        T load = Load(p, place.Height, place.Sinking, out T verticalPower);
        T px = predicted[tread];
        T py = predicted[tread + 1];
        T square = (px * px) + (py * py);
        if (shape.SpinIndex >= 0)
        {
            T ps = predicted[block + shape.SpinIndex];
            square = square + (ps * ps);
        }

        T speed = T.Sqrt(square + TreadRing.TinySquare);
        T mu = friction * Friction(p, kind, speed, load);
        T roll = p.Kappa * T.Abs(surface);
        RingState<T> s = default;
        s.Qx = z[deflection];
        s.Qy = z[deflection + 1];
        s.Vx = z[tread];
        s.Vy = z[tread + 1];
        s.Zx = z[bristle];
        s.Zy = z[bristle + 1];
        if (shape.SpinIndex >= 0)
        {
            s.Qs = z[shape.SpinIndex];
            s.Vs = z[block + shape.SpinIndex];
            s.Zs = z[(2 * block) + shape.SpinIndex];
        }

        T slide = TreadRing.Solve(p, shape, load, speed, mu, roll, g, wx, wy, ws, ref s, out T sigma1, out T alpha);
        T decay = slide + roll;
        T zxDot = s.Vx - (decay * s.Zx);
        T zyDot = s.Vy - (decay * s.Zy);
        T free = 1.0;
        if (!T.AllLess(0.0, load))
        {
            // in the air the bristle only relaxes
            T inAir = 1.0 / BristleLaw.RelaxationTime;
            free = 1.0 / (1.0 + (g * inAir));
            s.Zx = T.IfLess(0.0, load, s.Zx, free * z[bristle]);
            s.Zy = T.IfLess(0.0, load, s.Zy, free * z[bristle + 1]);
            zxDot = T.IfLess(0.0, load, zxDot, -(inAir * s.Zx));
            zyDot = T.IfLess(0.0, load, zyDot, -(inAir * s.Zy));
        }

        T tx = -(load * ((p.Sigma0 * s.Zx) + (sigma1 * zxDot) + (p.Sigma2 * s.Vx)));
        T ty = -(load * ((p.Sigma0 * s.Zy) + (sigma1 * zyDot) + (p.Sigma2 * s.Vy)));
        T qxDot = s.Vx - wx;
        T qyDot = s.Vy - wy;
        T fx = (p.BodyStiffness * s.Qx) + (p.BodyDamping * qxDot);
        T fy = (p.BodyStiffness * s.Qy) + (p.BodyDamping * qyDot);
        z[deflection] = s.Qx;
        z[deflection + 1] = s.Qy;
        z[tread] = s.Vx;
        z[tread + 1] = s.Vy;
        z[bristle] = s.Zx;
        z[bristle + 1] = s.Zy;
        dz[deflection] = qxDot;
        dz[deflection + 1] = qyDot;
        dz[tread] = (tx - fx) * p.InverseTreadMass;
        dz[tread + 1] = (ty - fy) * p.InverseTreadMass;
        dz[bristle] = zxDot;
        dz[bristle + 1] = zyDot;

        wearSpeed = 0.0;
        if (shape.FoulingIndex >= 0 || shape.WearIndex >= 0)
        {
            wearSpeed = slide * T.Sqrt((s.Zx * s.Zx) + (s.Zy * s.Zy) + (s.Zs * s.Zs) + TreadRing.TinySquare);
        }

        work.Load = load;
        work.Fx = fx;
        work.Fy = p.LateralRatio * fy;
        work.SpinMoment = 0.0;
        work.Friction = mu;
        work.FloorFriction = friction;
        work.SlipSpeed = speed;
        work.SurfaceSpeed = surface;
        work.Alpha = alpha;
        work.VerticalPower = verticalPower;
        work.TreadPower = -((tx * s.Vx) + (ty * s.Vy));
        work.CarcassPower = p.BodyDamping * ((qxDot * qxDot) + (qyDot * qyDot));
        if (shape.SpinIndex >= 0)
        {
            Spin(p, shape.SpinIndex, load, decay, sigma1, ws, free, block, s, z, dz, ref work);
        }
    }

    // The turning patch as the ring's third direction: q, v, z are its twists times the mean radius s, and M = s F
    [MethodImpl(Kernel.Part)]
    private static void Spin<T>(in WheelParameters<T> p, int spin, T load, T decay, T sigma1, T ws, T free, int block, in RingState<T> s, Span<T> z, Span<T> dz, ref WheelWork<T> work)
        where T : struct, IReal<T>
    {
        int tread = block + spin;
        int bristle = block + tread;
        T zs = T.IfLess(0.0, load, s.Zs, free * z[bristle]);
        T zsDot = T.IfLess(0.0, load, s.Vs - (decay * s.Zs), -(zs / BristleLaw.RelaxationTime));
        T ts = -(load * ((p.Sigma0 * zs) + (sigma1 * zsDot) + (p.Sigma2 * s.Vs)));
        T qsDot = s.Vs - ws;
        T fs = (p.BodyStiffness * s.Qs) + (p.BodyDamping * qsDot);
        z[spin] = s.Qs;
        z[tread] = s.Vs;
        z[bristle] = zs;
        dz[spin] = qsDot;
        dz[tread] = (ts - fs) * p.InverseTreadMass;
        dz[bristle] = zsDot;
        work.SpinMoment = p.SpinRadius * fs;
        work.TreadPower = work.TreadPower - (ts * s.Vs);
        work.CarcassPower = work.CarcassPower + (p.BodyDamping * qsDot * qsDot);
    }

    // N = -k z (1 - u/(1 + (u/al)^4)^(1/4)), u = d z', for z < 0, else 0: small swings on a load lose what d says, and a hard bump gives back
    // (1 - al)/(1 + al) = R of its energy at every speed. The damping's power is what the spring does not store.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Load<T>(in WheelParameters<T> p, T z, T zDot, out T power)
        where T : struct, IReal<T>
    {
        T spring = -(p.VerticalStiffness * z);
        T u = p.VerticalDamping * zDot;
        T part = p.InverseLossSquared * u * u;
        T load = T.IfLess(z, 0.0, spring * (1.0 - (u / T.Sqrt(T.Sqrt(1.0 + (part * part))))), 0.0);
        power = T.IfLess(z, 0.0, (spring - load) * zDot, 0.0);
        return load;
    }

    // mu(|v|) with its optional rise and load dependence
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static T Friction<T>(in WheelParameters<T> p, WheelKind<T> kind, T speed, T load)
        where T : struct, IReal<T>
    {
        T mu;
        if (kind.Table is null)
        {
            T ratio = speed * p.InverseSlipSpeed;
            mu = T.Fma(p.FrictionDrop, T.Exp(-(ratio * ratio)), p.KineticFriction);
        }
        else
        {
            mu = kind.Table.Evaluate(speed);
        }

        if (kind.Shape.HasRise)
        {
            // a falling rise must not turn friction into a push
            mu = T.Max(LeastFriction, mu + (p.FrictionRise * T.Log(1.0 + (speed * p.InverseRiseSpeed))));
        }

        if (kind.Shape.HasLoadExponent)
        {
            T ratio = T.Max(0.05, T.Min(20.0, load * p.InverseReferenceLoad));
            mu = mu * T.Exp(-(p.LoadExponent * T.Log(ratio)));
        }

        return mu;
    }
}
