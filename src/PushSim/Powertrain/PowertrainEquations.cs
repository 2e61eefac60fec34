using System.Runtime.CompilerServices;

namespace PushSim.Powertrain;

/// <summary>Motors, controllers and battery of one robot:
/// V = i R(T) + Kt G omega + brush drop, R = R_ref (1 + a (T - T_ref)). Inductance counts within a pulse only, see
/// <see cref="PulseEquations"/>: L/R is well under a millisecond against tens of milliseconds of spin-up. A controller's motors act as one source: single as it is,
/// series as sums, parallel as E = sum(E/R)/sum(1/R), R = 1/sum(1/R). In a parallel group the brush drop takes the
/// sign of the group's current.</summary>
internal static class PowertrainEquations
{
    /// <summary>Copper, resistance rise per kelvin at 20 degrees Celsius (IEC 60028, from memory) [1/K].</summary>
    public const double CopperRise = 0.00393;

    /// <summary>Back-EMF and hot resistance of each motor, then each controller's equivalent source.</summary>
    [MethodImpl(Kernel.Part)]
    public static void Gather<T>(
        ReadOnlySpan<MotorParameters<T>> motors,
        ReadOnlySpan<MotorShape> motorShapes,
        ReadOnlySpan<ControllerParameters<T>> controllers,
        ReadOnlySpan<ControllerShape> shapes,
        ReadOnlySpan<T> driveSpeed,
        ReadOnlySpan<T> y,
        Span<MotorWork<T>> motorWork,
        Span<ControllerWork<T>> controllerWork)
        where T : struct, IReal<T>
    {
        for (int k = 0; k < controllers.Length; k++)
        {
            ref readonly ControllerParameters<T> p = ref controllers[k];
            ref readonly ControllerShape shape = ref shapes[k];
            ref ControllerWork<T> c = ref controllerWork[k];
            T sumE = 0.0, sumR = 0.0, sumDrop = 0.0, share = 1.0;
            for (int m = shape.FirstMotor; m < shape.FirstMotor + shape.MotorCount; m++)
            {
                ref readonly MotorParameters<T> q = ref motors[m];
                ref readonly MotorShape own = ref motorShapes[m];
                T omega = driveSpeed[own.Drive];
                T e = q.Constant * omega;
                T r = q.Resistance;
                if (own.HeatIndex >= 0)
                {
                    r = r * (1.0 + (q.ResistanceRise * (y[own.HeatIndex] - q.ReferenceTemperature)));
                }

                motorWork[m].BackEmf = e;
                motorWork[m].Resistance = r;
                T weight = shape.Wiring == Wiring.Parallel ? 1.0 / r : (T)1.0;
                sumE = sumE + (weight * e);
                sumDrop = sumDrop + (weight * q.BrushDrop);
                sumR = sumR + (shape.Wiring == Wiring.Parallel ? weight : r);
                if (own.IsSensorless)
                {
                    T full = T.Min(1.0, T.Abs(omega) * q.InverseFullTorqueSpeed);
                    share = T.Min(share, q.StandstillShare + ((1.0 - q.StandstillShare) * full));
                }
            }

            T scale = shape.Wiring == Wiring.Parallel ? 1.0 / sumR : (T)1.0;
            c.Source = scale * sumE;
            c.Drop = scale * sumDrop;
            c.Resistance = shape.Wiring == Wiring.Parallel ? scale : sumR;
            c.Share = share;
            c.Limit = p.CurrentLimit;
            if (shape.HeatIndex >= 0)
            {
                T left = (p.FoldBackTemperature - y[shape.HeatIndex]) * p.InverseFoldBackSpan;
                c.Limit = c.Limit * T.Max(0.0, T.Min(1.0, 1.0 + left));
            }

            ControllerEquations.Prepare(p, shape, ref c);
        }
    }

    /// <summary>With the bus voltage known: currents of each motor and all losses.</summary>
    [MethodImpl(Kernel.Part)]
    public static void Settle<T>(
        ReadOnlySpan<MotorParameters<T>> motors,
        ReadOnlySpan<ControllerParameters<T>> controllers,
        ReadOnlySpan<ControllerShape> shapes,
        T bus,
        Span<MotorWork<T>> motorWork,
        Span<ControllerWork<T>> controllerWork)
        where T : struct, IReal<T>
    {
        for (int k = 0; k < controllers.Length; k++)
        {
            ref readonly ControllerParameters<T> p = ref controllers[k];
            ref readonly ControllerShape shape = ref shapes[k];
            ref ControllerWork<T> c = ref controllerWork[k];
            T difference = (c.Magnitude * bus) - c.Emf;
            T sigma = 0.0;
            if (shape.HasBrushDrop)
            {
                sigma = T.IfLess(0.5, c.IsOpen, 0.0, c.Sign * T.Max(-1.0, T.Min(1.0, difference / c.Drop)));
            }

            T i = T.IfLess(0.5, c.IsOpen, 0.0, c.Sign * ControllerEquations.Current(shape, c, difference));
            T ripple = 0.0;
            PulseMeans<T> pulse = default;
            if (shape.HasPulses)
            {
                pulse = PulseEquations.Means(p, shape, c, bus);
                i = T.IfLess(0.5, c.IsZero, i, c.Sign * pulse.Current);
                ripple = T.IfLess(0.5, c.IsZero, 0.0, pulse.Ripple);
                if (shape.HasBrushDrop && shape.BetweenPulses != BetweenPulses.Brake)
                {
                    sigma = T.IfLess(0.5, c.IsZero, sigma, c.Sign * T.IfLess(0.0, pulse.Current, 1.0, T.IfLess(pulse.Current, 0.0, -1.0, 0.0)));
                }
            }

            T terminal = c.Source + (i * c.Resistance) + (sigma * c.Drop);
            T voltage = terminal + (i * p.OnResistance);
            T power = shape.HasPulses ? pulse.Taken * bus : voltage * i;
            T busPower = T.IfLess(0.5, c.IsZero, 0.0, shape.Regeneration ? power : T.Max(0.0, power));
            c.Current = i;
            c.Voltage = voltage;
            c.BusPower = busPower;
            c.Ripple = ripple;
            c.Loss = busPower - (terminal * i) - (ripple * c.Resistance);
            c.IsLimiting = shape.HasPulses ? T.IfLess(0.5, c.IsZero, 0.0, pulse.IsLimiting) : ControllerEquations.IsLimiting(p, shape, c, bus, difference);
            for (int m = shape.FirstMotor; m < shape.FirstMotor + shape.MotorCount; m++)
            {
                ref MotorWork<T> w = ref motorWork[m];
                T own = sigma * motors[m].BrushDrop;
                w.Current = shape.Wiring == Wiring.Parallel ? (terminal - w.BackEmf - own) / w.Resistance : i;
                w.CopperPower = w.Current * w.Current * w.Resistance;
                if (shape.HasPulses)
                {
                    // each winding has its part of the ripple: the whole in a row, by its conductance side by side
                    T part = shape.Wiring == Wiring.Parallel ? c.Resistance * c.Resistance / w.Resistance : w.Resistance;
                    w.CopperPower = w.CopperPower + (ripple * part);
                }

                w.BrushPower = own * w.Current;
            }
        }
    }

    /// <summary>One drive's friction: T_f = (dry + sum (1 - eta)|Kt G i| + T_hold)(s + tau_s s')/s_max with the bristle
    /// s' = omega - alpha (|omega|/s_max) s. A loss never set by the sign of power, which jumps at stall.</summary>
    [MethodImpl(Kernel.Part)]
    public static T Friction<T>(in DriveParameters<T> p, T omega, T capacity, T g, ref T s, out T ds)
        where T : struct, IReal<T>
    {
        T q = T.Fma(g, omega, s);
        T length = T.Abs(q);
        T towards = T.IfLess(q, 0.0, -omega, omega);
        T slide = T.Max(0.0, towards) * p.InverseWindUp;
        T f = Tyres.BristleLaw.Switched(length, g, slide, 1.0, p.WindUp, p.Low, p.InverseSpan, out T alpha);
        s = f * q;
        T decay = alpha * slide;
        ds = omega - (decay * s);
        T damping = Tyres.BristleLaw.LimitedDamping(p.DampingTime, 0.25 * p.DampingTime, decay);
        return capacity * (s + (damping * ds)) * p.InverseWindUp;
    }
}
