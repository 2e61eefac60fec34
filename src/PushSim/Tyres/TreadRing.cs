using System.Runtime.CompilerServices;

namespace PushSim.Tyres;

/// <summary>Tyre body, tread and bristle of one wheel as one implicit block: the stage q = q* + g q', v = v* + g v', z = z* + g z' of <see cref="WheelEquations"/>, given
/// load N, rim velocity w and friction mu:
/// <code>
///   v D = r - nu z     r = v* + (g/m)[(c + g k) w - k q*] + (N s1/m) z*     D = 1 + (g/m)(N sigma2 + c + g k)     nu = (N/m)(g sigma0 + s1)
///   z (E + g lambda) = Q     Q = z* + g r/D     E = 1 + g K + g nu/D     lambda = alpha A
/// </code>
/// Across everything is scaled by the lateral ratio, and a patch that turns on the spot is a third direction (see <see cref="WheelEquations"/>), so that all
/// directions are alike here. z keeps Q's direction, so its length m is the one unknown of m (E + g alpha(m) A(m)) = |Q|, A = (sigma0/mu) max(0, v.z/|z|): Newton steps inside a bracket, from the closed
/// form with A held. s1, the limited damping, is taken at that closed form's decay. For g = 0 nothing moves and lambda is exact.</summary>
internal static class TreadRing
{
    /// <summary>Keeps |v| and |z| off zero, where a square root has no derivative; far below anything physical.</summary>
    public const double TinySquare = 1e-36;

    // After so many, one of 2,000 random stages at most is off by more than 1e-6 of |z| [1]; most need one.
    private const int NewtonSteps = 4;

    // Share of |Q| to which the residual is solved [1].
    private const double Converged = 1e-8;

    // The same in single precision: below it lies rounding [1].
    private const double ConvergedSingle = 1e-6;

    // A tread that slips slower than this sticks: the criterion is about sliding [m/s].
    private const double LeastSlip = 1e-3;

    // Share of the slip speed over which the slope of friction is taken [1].
    private const double Nearby = 0.01;

    // Margin of the ring criterion up to which a ring is resolved [1]; the criterion is exact for the plain law only.
    private const double ResolvedMargin = 1.2;

    /// <summary>Solves the block.</summary>
    /// <param name="p">Parameters.</param>
    /// <param name="shape">What is on.</param>
    /// <param name="load">N [N].</param>
    /// <param name="speed">Predicted |v| [m/s].</param>
    /// <param name="mu">Friction at that speed [1].</param>
    /// <param name="roll">K [1/s].</param>
    /// <param name="g">Stage step, 0 for a plain evaluation [s].</param>
    /// <param name="wx">Rim velocity along the circumference [m/s].</param>
    /// <param name="wy">Rim velocity across, times the lateral ratio [m/s].</param>
    /// <param name="ws">Its yaw rate times the patch's mean radius [m/s].</param>
    /// <param name="s">The known parts; replaced by the solution.</param>
    /// <param name="sigma1">Limited damping of the bristles [s/m].</param>
    /// <param name="alpha">The switch [1].</param>
    /// <returns>lambda, the decay by sliding [1/s].</returns>
    [MethodImpl(Kernel.Part)]
    public static T Solve<T>(
        in WheelParameters<T> p, in WheelShape shape, T load, T speed, T mu, T roll, T g, T wx, T wy, T ws, ref RingState<T> s, out T sigma1, out T alpha)
        where T : struct, IReal<T>
    {
        T perMass = load * p.InverseTreadMass;
        T gm = g * p.InverseTreadMass;
        T pull = T.Fma(g, p.BodyStiffness, p.BodyDamping);
        T inverse = 1.0 / T.Fma(gm, T.Fma(load, p.Sigma2, pull), 1.0);
        T gi = g * inverse;
        T elasticNu = perMass * (g * p.Sigma0);
        T rx = T.Fma(gm, (pull * wx) - (p.BodyStiffness * s.Qx), s.Vx);
        T ry = T.Fma(gm, (pull * wy) - (p.BodyStiffness * s.Qy), s.Vy);
        bool spins = shape.SpinIndex >= 0;
        T rs = spins ? T.Fma(gm, (pull * ws) - (p.BodyStiffness * s.Qs), s.Vs) : (T)0.0;
        T rate = p.Sigma0 / mu;
        T held = 1.0 + (g * roll);

        sigma1 = shape.LimitDamping ? BristleLaw.LimitedDamping(p.Sigma1, p.Sigma1Over4Sigma0, roll) : p.Sigma1;
        T damping = perMass * sigma1;
        T qx = T.Fma(gi, T.Fma(damping, s.Zx, rx), s.Zx);
        T qy = T.Fma(gi, T.Fma(damping, s.Zy, ry), s.Zy);
        T qs = spins ? T.Fma(gi, T.Fma(damping, s.Zs, rs), s.Zs) : (T)0.0;
        T flat = (qx * qx) + (qy * qy);
        T length = T.Sqrt((spins ? flat + (qs * qs) : flat) + TinySquare);
        T perLength = 1.0 / length;
        T elastic = T.Fma(gi, elasticNu + damping, held);
        T zMax = mu * p.InverseSigma0;
        T low = p.ElasticShare * zMax;
        T inverseSpan = rate * p.InversePlasticShare;
        T decay, f;
        if (shape.Plain)
        {
            alpha = 1.0;
            decay = rate * speed;
            f = 1.0 / (elastic + (g * decay));
        }
        else
        {
            T product = (rx * qx) + (ry * qy);
            T along = (spins ? product + (rs * qs) : product) * perLength;
            T slide = rate * T.Max(0.0, inverse * (along - (elasticNu * T.Min(zMax, length))));
            f = BristleLaw.Switched(length, g, slide, elastic, zMax, low, inverseSpan, out alpha);
            decay = alpha * slide;
        }

        if (!T.AllLess(alpha, 1e-30))
        {
            T m = f * length;
            T nx = perLength * qx;
            T ny = perLength * qy;
            T ns = perLength * qs;
            if (shape.LimitDamping)
            {
                // Q hardly turns: its length is taken along the direction it had
                sigma1 = BristleLaw.LimitedDamping(p.Sigma1, p.Sigma1Over4Sigma0, decay + roll);
                damping = perMass * sigma1;
                qx = T.Fma(gi, T.Fma(damping, s.Zx, rx), s.Zx);
                qy = T.Fma(gi, T.Fma(damping, s.Zy, ry), s.Zy);
                length = (nx * qx) + (ny * qy);
                if (spins)
                {
                    qs = T.Fma(gi, T.Fma(damping, s.Zs, rs), s.Zs);
                    length = length + (ns * qs);
                }

                elastic = T.Fma(gi, elasticNu + damping, held);
            }

            T nu = elasticNu + damping;
            T sx = inverse * T.Fma(damping, s.Zx, rx);
            T sy = inverse * T.Fma(damping, s.Zy, ry);
            T ss = spins ? inverse * T.Fma(damping, s.Zs, rs) : (T)0.0;
            T ahead = (sx * nx) + (sy * ny);
            decay = shape.Plain
                ? PlainDecay(m, g * rate, length, elastic, inverse * nu, nx, ny, ns, sx, sy, ss) * rate
                : SwitchedDecay(m, g * rate, length, elastic, inverse * nu, spins ? ahead + (ss * ns) : ahead, zMax, low, inverseSpan, out alpha) * rate;
            f = 1.0 / (elastic + (g * decay));
        }

        T zx = f * qx;
        T zy = f * qy;
        T hold = inverse * (elasticNu + damping);
        T vx = (inverse * T.Fma(damping, s.Zx, rx)) - (hold * zx);
        T vy = (inverse * T.Fma(damping, s.Zy, ry)) - (hold * zy);
        s.Vx = T.IfLess(0.0, g, vx, s.Vx);
        s.Vy = T.IfLess(0.0, g, vy, s.Vy);
        s.Qx = T.Fma(g, s.Vx - wx, s.Qx);
        s.Qy = T.Fma(g, s.Vy - wy, s.Qy);
        if (spins)
        {
            T zs = f * qs;
            T vs = (inverse * T.Fma(damping, s.Zs, rs)) - (hold * zs);
            s.Vs = T.IfLess(0.0, g, vs, s.Vs);
            s.Qs = T.Fma(g, s.Vs - ws, s.Qs);
            s.Zs = zs;
        }

        s.Zx = zx;
        s.Zy = zy;
        return decay;
    }

    /// <summary>A ring that grows by falling friction is resolved, since an implicit stage would damp it: the longest next step after a plain evaluation [s].
    /// The criterion of a held rim (Routh-Hurwitz on ring and bristle; see <c>RingCriterion</c>).</summary>
    [MethodImpl(Kernel.Part)]
    public static T StepBound<T>(in WheelParameters<T> p, WheelKind<T> kind, in WheelWork<T> w)
        where T : struct, IReal<T>
    {
        if (T.AllLess(w.SlipSpeed, LeastSlip))
        {
            return double.PositiveInfinity;
        }

        T speed = T.Max(LeastSlip, w.SlipSpeed);
        T near = (1.0 + Nearby) * speed;
        T renewal = p.Kappa * T.Abs(w.SurfaceSpeed) * p.InverseSigma0;
        T mu = w.Friction;
        T muNear = w.FloorFriction * WheelEquations.Friction(p, kind, near, w.Load);
        T slope = ((muNear * SteadyShare(p, kind.Shape, renewal * muNear / near)) - (mu * SteadyShare(p, kind.Shape, renewal * mu / speed))) / (Nearby * speed);
        T tau = mu * p.InverseSigma0 / speed;
        T feed = w.Load * slope;
        T loss = T.Fma(w.Load, p.Sigma2, p.BodyDamping);
        T first = p.TreadMass + (loss * tau) + (feed * p.Sigma1 * p.InverseSigma0);
        T second = loss + (p.BodyStiffness * tau) + feed;
        T margin = T.IfLess(first, 0.0, -1.0, T.IfLess(second, 0.0, -1.0, first * second));
        T least = T.IfLess(margin, ResolvedMargin * (p.TreadMass * tau * p.BodyStiffness), p.RingStep, double.PositiveInfinity);
        return T.IfLess(w.SlipSpeed, LeastSlip, double.PositiveInfinity, T.IfLess(0.0, w.Load, least, double.PositiveInfinity));
    }

    // s = |z|/z_max of steady sliding with renewal rho against sliding
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T SteadyShare<T>(in WheelParameters<T> p, in WheelShape shape, T rho)
        where T : struct, IReal<T>
    {
        if (shape.Plain)
        {
            return 1.0 / (1.0 + rho);
        }

        T rest = 1.0 - p.ElasticShare;
        T half = 0.5 * (p.ElasticShare - (rest * rho));
        return T.IfLess(1.0, p.ElasticShare * rho, 1.0 / T.Max(1e-30, rho), half + T.Sqrt((half * half) + rest));
    }

    // v.n of the tread at the root over the switch's share; start inside the bracket 0 to |Q|/E
    [MethodImpl(Kernel.Part)]
    private static T SwitchedDecay<T>(T m, T gRate, T length, T elastic, T hold, T along, T zMax, T low, T inverseSpan, out T alpha)
        where T : struct, IReal<T>
    {
        T below = 0.0;
        T above = length;
        T close = (Lane.IsSingle<T>() ? ConvergedSingle : Converged) * length;
        for (int n = 0; n < NewtonSteps; n++)
        {
            T v = T.Max(0.0, along - (hold * m));
            T a = T.Max(0.0, T.Min(1.0, (m - low) * inverseSpan));
            T residual = (m * T.Fma(gRate, a * v, elastic)) - length;
            if (T.AllLess(T.Abs(residual), close))
            {
                break;
            }

            T dv = T.IfLess(0.0, v, -hold, 0.0);
            T da = T.IfLess(low, m, T.IfLess(m, zMax, inverseSpan, 0.0), 0.0);
            T slope = T.Fma(gRate, T.Fma(m, T.Fma(da, v, a * dv), a * v), elastic);
            m = Next(m, residual, slope, close, ref below, ref above);
        }

        alpha = T.Max(0.0, T.Min(1.0, (m - low) * inverseSpan));
        return alpha * T.Max(0.0, along - (hold * m));
    }

    // |v| of the tread at the root, the switch always on
    [MethodImpl(Kernel.Part)]
    private static T PlainDecay<T>(T m, T gRate, T length, T elastic, T hold, T nx, T ny, T ns, T sx, T sy, T ss)
        where T : struct, IReal<T>
    {
        T below = 0.0;
        T above = length;
        T close = (Lane.IsSingle<T>() ? ConvergedSingle : Converged) * length;
        T v = 0.0;
        for (int n = 0; n <= NewtonSteps; n++)
        {
            T vx = sx - (hold * m * nx);
            T vy = sy - (hold * m * ny);
            T vs = ss - (hold * m * ns);
            v = T.Sqrt((vx * vx) + (vy * vy) + (vs * vs) + TinySquare);
            if (n < NewtonSteps)
            {
                T dv = -hold * ((vx * nx) + (vy * ny) + (vs * ns)) / v;
                T residual = (m * T.Fma(gRate, v, elastic)) - length;
                T slope = T.Fma(gRate, T.Fma(m, dv, v), elastic);
                m = Next(m, residual, slope, close, ref below, ref above);
            }
        }

        return v;
    }

    // The bracket shrinks by the sign of the residual; a step that leaves it goes to its middle. What is close enough stays, so that leaving the loop early changes no lane.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Next<T>(T m, T residual, T slope, T close, ref T below, ref T above)
        where T : struct, IReal<T>
    {
        below = T.IfLess(residual, 0.0, m, below);
        above = T.IfLess(residual, 0.0, above, m);
        T next = m - (residual / slope);
        T middle = 0.5 * (below + above);
        next = T.IfLess(next, below, middle, T.IfLess(above, next, middle, next));
        return T.IfLess(T.Abs(residual), close, m, next);
    }
}
