using System.Runtime.CompilerServices;

namespace PushSim.Powertrain;

/// <summary>A controller gives a voltage between 0 and d V_b so that the motor current stays within +-I_lim:
/// i = min(i_hi, max(I_lim, i_lo)) for d > 0 with i_hi = (d V_b - E)/R, i_lo = -E/R, mirrored for d &lt; 0. It can hold
/// neither braking current below |E|/R nor the current of a lowered throttle. The bus gives P = V i, or max(0, V i)
/// without regeneration. Brush drop narrows every voltage difference by the drop.</summary>
internal static class ControllerEquations
{
    // Share of the bus voltage over which the slope of limited pulses is taken [1].
    private const double SlopeStep = 1e-6;

    /// <summary>What does not hang on the bus voltage: the mirrored source and the least current.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Prepare<T>(in ControllerParameters<T> p, in ControllerShape shape, ref ControllerWork<T> c)
        where T : struct, IReal<T>
    {
        c.Sign = T.IfLess(c.Duty, 0.0, -1.0, 1.0);
        c.Magnitude = T.Abs(c.Duty);
        c.Emf = c.Sign * c.Source;
        c.Conductance = 1.0 / (c.Resistance + p.OnResistance);
        c.Low = (shape.HasBrushDrop ? Shrink(-c.Emf, c.Drop) : -c.Emf) * c.Conductance;
    }

    /// <summary>Output current at a bus voltage, positive with the command [A].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Current<T>(in ControllerShape shape, in ControllerWork<T> c, T difference)
        where T : struct, IReal<T>
    {
        T high = (shape.HasBrushDrop ? Shrink(difference, c.Drop) : difference) * c.Conductance;
        return c.Share * T.Min(high, T.Max(c.Limit, c.Low));
    }

    /// <summary>1 where the current limit asks for less than the whole d V_b, 0 else [1]; the torque that a sensorless motor leaves out is no limit of its controller.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T IsLimiting<T>(in ControllerParameters<T> p, in ControllerShape shape, in ControllerWork<T> c, T bus, T difference)
        where T : struct, IReal<T>
    {
        T whole = shape.HasBrushDrop ? Shrink(difference, c.Drop) : difference;
        T limited = T.Max(c.Limit, c.Low) * (c.Resistance + p.OnResistance);
        return T.IfLess(limited + (1e-6 * bus), whole, 1.0, 0.0);
    }

    /// <summary>Power taken from the bus [W] and the derivative of the bus current by V_b at fixed duty [S].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T BusPower<T>(in ControllerParameters<T> p, in ControllerShape shape, in ControllerWork<T> c, T bus, T inverseBus, out T slope)
        where T : struct, IReal<T>
    {
        if (shape.HasPulses)
        {
            PulseMeans<T> means = PulseEquations.Means(p, shape, c, bus);
            slope = means.Slope;
            if (!T.AllLess(means.IsLimiting, 0.5))
            {
                // the share of a limited pulse follows the bus: by a difference
                T step = SlopeStep * bus;
                T beyond = PulseEquations.Means(p, shape, c, bus + step).Taken;
                slope = T.IfLess(means.IsLimiting, 0.5, slope, (beyond - means.Taken) / step);
            }

            return means.Taken * bus;
        }

        T full = c.Magnitude * bus;
        T difference = full - c.Emf;
        T i = Current(shape, c, difference);
        T v = c.Emf + (i * (c.Resistance + p.OnResistance));
        if (shape.HasBrushDrop)
        {
            v = v + Clamp(difference, c.Drop);
        }

        T power = v * i;
        if (!shape.Regeneration)
        {
            power = T.Max(0.0, power);
        }

        // off its limit V and i rise with share d V_b (all of it for share 1: dI/dV_b = d^2/R); at its limit P is constant.
        // Only the speed of Newton hangs on this.
        T rise = c.Share * c.Magnitude;
        T constant = -(power * inverseBus * inverseBus);
        T free = (rise * (i + (v * c.Conductance)) * inverseBus) + constant;
        if (shape.HasBrushDrop)
        {
            // inside the drop no current flows whatever the bus does
            free = T.IfLess(T.Abs(difference), c.Drop, 0.0, free);
        }

        if (!shape.Regeneration)
        {
            free = T.IfLess(0.0, power, free, 0.0);
        }

        slope = T.IfLess(i, c.Share * T.Max(c.Limit, c.Low), free, constant);
        return power;
    }

    /// <summary>The part of a voltage difference beyond the brush drop [V].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Shrink<T>(T difference, T drop)
        where T : struct, IReal<T> => difference - Clamp(difference, drop);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Clamp<T>(T x, T bound)
        where T : struct, IReal<T> => T.Max(-bound, T.Min(bound, x));
}
