using System.Runtime.CompilerServices;
using PushSim.Numerics;

namespace PushSim.Powertrain;

/// <summary>
/// A controller gives a voltage between 0 and d V_b so that the motor current stays within +-I_lim:
/// i = min(i_hi, max(I_lim, i_lo)) for d > 0 with i_hi = (d V_b - E)/R, i_lo = -E/R, mirrored for d &lt; 0. It can hold
/// neither braking current below |E|/R nor the current of a lowered throttle. The bus gives P = V i, or max(0, V i)
/// without regeneration. Brush drop narrows every voltage difference by the drop.
/// </summary>
internal static class ControllerEquations
{
    /// <summary>Output current at a bus voltage [A].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Current<T>(in ControllerParameters<T> p, in ControllerWork<T> c, T bus)
        where T : struct, IReal<T>
    {
        // mirrored to d >= 0
        T sign = T.IfLess(c.Duty, 0.0, -1.0, 1.0);
        T emf = sign * c.Source;
        T resistance = c.Resistance + p.OnResistance;
        T high = Shrink((T.Abs(c.Duty) * bus) - emf, c.Drop) / resistance;
        T low = Shrink(-emf, c.Drop) / resistance;
        T limited = T.Min(high, T.Max(c.Limit, low));
        return sign * (c.Share * limited);
    }

    /// <summary>Bus current P(V_b)/V_b and its derivative by V_b at fixed duty; leaves current, voltage and powers in the work.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void BusCurrent<T>(in ControllerParameters<T> p, ref ControllerWork<T> c, T bus, out T current, out T slope)
        where T : struct, IReal<T>
    {
        if (c.IsOpen || c.IsZero)
        {
            current = 0.0;
            slope = 0.0;
            return;
        }

        T resistance = c.Resistance + p.OnResistance;
        T i = Current(p, c, bus);
        T drop = Clamp((c.Duty * bus) - c.Source, c.Drop);
        T v = c.Source + (i * resistance) + T.IfLess(0.0, c.Drop, drop, 0.0);
        T power = v * i;
        if (!p.Regeneration)
        {
            power = T.Max(0.0, power);
        }

        T inverse = 1.0 / bus;
        current = power * inverse;

        // off its limit V = d V_b and dI/dV_b = d^2/R; at its limit P is constant. Only the speed of Newton hangs on this.
        T free = c.Duty * c.Duty * c.Share / resistance;
        T held = -(current * inverse);
        T isFree = T.Abs(v - (c.Duty * bus)) - (1e-9 * bus);
        slope = T.IfLess(isFree, 0.0, T.IfLess(0.0, power, free, p.Regeneration ? free : 0.0), held);
    }

    /// <summary>The part of a voltage difference beyond the brush drop [V].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Shrink<T>(T difference, T drop)
        where T : struct, IReal<T> => difference - Clamp(difference, drop);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Clamp<T>(T x, T bound)
        where T : struct, IReal<T> => T.Max(-bound, T.Min(bound, x));
}
