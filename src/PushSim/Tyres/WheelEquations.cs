using System.Runtime.CompilerServices;
using PushSim.Chassis;

namespace PushSim.Tyres;

/// <summary>One wheel: load, tread ring on its carcass, bristle, in the wheel's own frame (x along the circumference, y lateral).
/// w is the rim's velocity over the floor, v the tread's own, q = carcass deflection, z = bristle deflection:
/// <code>
///   w_x = u - r y - h theta' - omega R        w_y = v_body + r x + h phi'
///   q' = v - w      F = k_c q + c_c q'        m_t v' = T - F      T = -N (sigma0 z + sigma1 z' + sigma2 v)
///   z' = v - (alpha sigma0 |v|/mu + kappa |omega R|) z
///   mu = mu_k + (mu_s - mu_k) exp(-(|v|/v_s)^2), or a table; optional rise mu_r ln(1 + |v|/v_r), load, dust
/// </code>
/// Average-lumped LuGre tyre: Canudas de Wit, Tsiotras, Velenis, Basset, Gissinger, Vehicle System Dynamics 39, 2003.
/// Limits: no patch spin moment, no squash of the radius, r x v terms of the tread left out.</summary>
internal static class WheelEquations
{
    // Keeps |v| and |z| off zero, where a square root has no derivative; far below anything physical.
    private const double TinySquare = 1e-36;

    // Friction that a falling rise ends at [1]: without it friction became negative at speed and the floor drove the tyre.
    private const double LeastFriction = 0.005;

    /// <summary>Load, friction, bristle and tread of one wheel.</summary>
    /// <param name="p">Parameters.</param>
    /// <param name="motion">Body velocities.</param>
    /// <param name="height">Heave, pitch and roll at the wheel: z - x theta + y phi [m].</param>
    /// <param name="h">Height of the centre of mass [m].</param>
    /// <param name="surface">omega R [m/s].</param>
    /// <param name="friction">Floor's friction scale at the wheel, times dust [1].</param>
    /// <param name="g">Stage step, 0 for a plain evaluation [s].</param>
    /// <param name="state">q_x, q_y, v_x, v_y.</param>
    /// <param name="bristle">z_x, z_y; replaced by the stage's solution when g > 0.</param>
    /// <param name="dState">Derivatives of state.</param>
    /// <param name="dBristle">Derivatives of the bristle.</param>
    /// <param name="work">Forces and powers.</param>
    /// <param name="wearSpeed">|v_p|, the bristle end's slide over the floor, where fouling or wear asks for it [m/s].</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Evaluate<T>(
        in WheelParameters<T> p,
        in BodyMotion<T> motion,
        T height,
        T h,
        T surface,
        T friction,
        T g,
        Span<T> state,
        Span<T> bristle,
        Span<T> dState,
        Span<T> dBristle,
        ref WheelWork<T> work,
        out T wearSpeed)
        where T : struct, IReal<T>
    {
        motion.PointVelocity(p.X, p.Y, -h, out T wx, out T wy, out T zDot);
        wx = wx - surface;
        T load = Load(p, height, zDot, out T verticalPower);
        T vx = state[2];
        T vy = state[3];
        T speed = T.Sqrt((vx * vx) + (vy * vy) + TinySquare);
        T mu = friction * Friction(p, speed, load);
        T roll = p.Kappa * T.Abs(surface);
        T decay = Bristle(p, load, speed, mu, roll, g, vx, vy, bristle, dBristle, out T alpha, out T slide);

        T sigma1 = p.LimitDamping ? BristleLaw.LimitedDamping(p.Sigma1, p.Sigma1Over4Sigma0, decay) : p.Sigma1;
        T tx = -(load * ((p.Sigma0 * bristle[0]) + (sigma1 * dBristle[0]) + (p.Sigma2 * vx)));
        T ty = -(load * ((p.Sigma0 * bristle[1]) + (sigma1 * dBristle[1]) + (p.Sigma2 * vy)));
        T qxDot = vx - wx;
        T qyDot = vy - wy;
        T fx = (p.BodyStiffness * state[0]) + (p.BodyDamping * qxDot);
        T fy = (p.BodyStiffness * state[1]) + (p.BodyDamping * qyDot);
        dState[0] = qxDot;
        dState[1] = qyDot;
        dState[2] = (tx - fx) * p.InverseTreadMass;
        dState[3] = (ty - fy) * p.InverseTreadMass;

        wearSpeed = 0.0;
        if (p.FoulingIndex >= 0 || p.WearIndex >= 0)
        {
            T zx = bristle[0];
            T zy = bristle[1];
            wearSpeed = alpha * slide * T.Sqrt((zx * zx) + (zy * zy) + TinySquare);
        }

        work.Load = load;
        work.Fx = fx;
        work.Fy = fy;
        work.Friction = mu;
        work.SlipSpeed = speed;
        work.SurfaceSpeed = surface;
        work.Alpha = alpha;
        work.VerticalPower = verticalPower;
        work.TreadPower = -((tx * vx) + (ty * vy));
        work.CarcassPower = p.BodyDamping * ((qxDot * qxDot) + (qyDot * qyDot));
    }

    // N = max(0, -k z (1 - d z')) for z < 0, else 0; the damping's power is what the spring does not store.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Load<T>(in WheelParameters<T> p, T z, T zDot, out T power)
        where T : struct, IReal<T>
    {
        T spring = -(p.VerticalStiffness * z);
        T pressed = T.Max(0.0, spring * (1.0 - (p.VerticalDamping * zDot)));
        T load = T.IfLess(z, 0.0, pressed, 0.0);
        power = T.IfLess(z, 0.0, (spring - load) * zDot, 0.0);
        return load;
    }

    // mu(|v|) with its optional rise and load dependence
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static T Friction<T>(in WheelParameters<T> p, T speed, T load)
        where T : struct, IReal<T>
    {
        T mu;
        if (p.Table is null)
        {
            T ratio = speed * p.InverseSlipSpeed;
            mu = T.Fma(p.FrictionDrop, T.Exp(-(ratio * ratio)), p.KineticFriction);
        }
        else
        {
            mu = p.Table.Evaluate(speed);
        }

        if (p.HasRise)
        {
            // a falling rise must not turn friction into a push
            mu = T.Max(LeastFriction, mu + (p.FrictionRise * T.Log(1.0 + (speed * p.InverseRiseSpeed))));
        }

        if (p.HasLoadExponent)
        {
            T ratio = T.Max(0.05, T.Min(20.0, load * p.InverseReferenceLoad));
            mu = mu * T.Exp(-(p.LoadExponent * T.Log(ratio)));
        }

        return mu;
    }

    // Solves (g > 0) or evaluates (g = 0) the bristle; returns its decay rate a = alpha A + K
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Bristle<T>(
        in WheelParameters<T> p,
        T load,
        T speed,
        T mu,
        T roll,
        T g,
        T vx,
        T vy,
        Span<T> z,
        Span<T> dz,
        out T alpha,
        out T slide)
        where T : struct, IReal<T>
    {
        T qx = T.Fma(g, vx, z[0]);
        T qy = T.Fma(g, vy, z[1]);
        T rate = p.Sigma0 / mu;
        T f;
        if (p.Plain)
        {
            alpha = 1.0;
            slide = rate * speed;
            f = 1.0 / (1.0 + (g * (slide + roll)));
        }
        else
        {
            T length = T.Sqrt((qx * qx) + (qy * qy) + TinySquare);
            slide = rate * T.Max(0.0, ((vx * qx) + (vy * qy)) / length);
            T zMax = mu * p.InverseSigma0;
            f = BristleLaw.Switched(length, g, slide, roll, zMax, p.ElasticShare * zMax, rate * p.InversePlasticShare, out alpha);
        }

        T decay = (alpha * slide) + roll;

        T x = f * qx;
        T y = f * qy;
        T xRate = vx - (decay * x);
        T yRate = vy - (decay * y);
        if (!T.AllLess(0.0, load))
        {
            // in the air the bristle only relaxes
            T inAir = 1.0 / BristleLaw.RelaxationTime;
            T free = 1.0 / (1.0 + (g * inAir));
            x = T.IfLess(0.0, load, x, free * z[0]);
            y = T.IfLess(0.0, load, y, free * z[1]);
            xRate = T.IfLess(0.0, load, xRate, -(inAir * x));
            yRate = T.IfLess(0.0, load, yRate, -(inAir * y));
        }

        dz[0] = xRate;
        dz[1] = yRate;
        z[0] = x;
        z[1] = y;
        return decay;
    }
}
