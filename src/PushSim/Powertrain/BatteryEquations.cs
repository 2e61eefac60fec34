using System.Runtime.CompilerServices;

namespace PushSim.Powertrain;

/// <summary>Cells in series: open-circuit voltage piecewise linear in the state of charge, and the bus voltage as the largest
/// root of V_b - V_oc + v_1 + R_b sum P_k(V_b)/V_b = 0. One resistance acts at once, one with a delay, both by temperature and charge:
/// <code>
///   R_b = f R    v_1' = (f R_1 i - v_1)/tau    f = (1 + e exp(-s/s_e)) exp(-c (T - 25))    C T' = R_b i^2 + v_1^2/(f R_1) - (T - T_air)/R_th
/// </code>
/// A usual equivalent circuit (Chen, Rincon-Mora, IEEE Trans. Energy Conversion 21, 2006, with one of its two branches). Left out: hysteresis, heat of reaction.</summary>
internal sealed class BatteryEquations<T> : INumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Most Newton steps; enough for 1e-9 V with several controllers at their limits (tested). 3 or 4 are usual.</summary>
    public const int NewtonSteps = 24;

    // Residual, as a share of the open-circuit voltage, from which one last step is exact to rounding [1].
    private const double Converged = 1e-10;

    // The same in single precision [1].
    private const double ConvergedSingle = 1e-6;

    // At which the resistances are stated [degree Celsius].
    private const double ReferenceTemperature = 25.0;

    // of each straight piece: state of charge where it begins and span of it [1], rise of the pack's voltage per unit of it [V]; voltage when empty [V]
    internal readonly T[] Charge;
    internal readonly T[] Span;
    internal readonly T[] Slope;

    public BatteryEquations(BatterySettings settings)
    {
        Numbers.Resistance = settings.Resistance;
        Numbers.InitialCharge = settings.InitialCharge;
        Numbers.InverseCapacity = 1.0 / settings.Capacity;
        Numbers.SlowResistance = settings.SlowResistance;
        Numbers.InverseSlowTime = 1.0 / settings.SlowTime;
        Numbers.Fall = settings.ResistanceFall;
        Numbers.EmptyResistance = settings.EmptyResistance;
        Numbers.InverseEmptyShare = 1.0 / settings.EmptyShare;
        Numbers.InverseHeatCapacity = settings.HeatCapacity > 0.0 ? 1.0 / settings.HeatCapacity : 0.0;
        Numbers.HeatConductance = settings.ThermalResistance > 0.0 ? 1.0 / settings.ThermalResistance : 0.0;
        Varies = settings.ResistanceFall != 0.0 || settings.EmptyResistance != 0.0;
        int cells = settings.Cells;
        int pieces = Math.Max(0, settings.CellVoltage.Count - 1);
        Charge = new T[pieces];
        Span = new T[pieces];
        Slope = new T[pieces];
        Numbers.FirstVoltage = cells * settings.CellVoltage[0].Voltage;
        for (int i = 0; i < pieces; i++)
        {
            double span = settings.CellVoltage[i + 1].Charge - settings.CellVoltage[i].Charge;
            double rise = settings.CellVoltage[i + 1].Voltage - settings.CellVoltage[i].Voltage;
            Charge[i] = settings.CellVoltage[i].Charge;
            Span[i] = span;
            Slope[i] = cells * rise / span;
        }
    }

    /// <summary>Its numbers but for the curve.</summary>
    public BatteryNumbers<T> Numbers;

    /// <summary>What is no number of it.</summary>
    public BatteryShape Shape => new(Slope.Length, Varies);

    /// <summary>Whether the resistances hang on charge or temperature.</summary>
    public bool Varies { get; }

    public void Show(NumberWalk<T> walk)
    {
        walk.Take(ref Numbers);
        walk.Take(Charge);
        walk.Take(Span);
        walk.Take(Slope);
    }

    /// <summary>f, what both resistances are multiplied with [1], after some charge was taken [A s], at a temperature [degree Celsius].</summary>
    [MethodImpl(Kernel.Part)]
    public T ResistanceFactor(T taken, T temperature)
    {
        if (!Varies)
        {
            return 1.0;
        }

        T s = T.Max(0.0, Numbers.InitialCharge - (taken * Numbers.InverseCapacity));
        return (1.0 + (Numbers.EmptyResistance * T.Exp(-(s * Numbers.InverseEmptyShare)))) * T.Exp(-(Numbers.Fall * (temperature - ReferenceTemperature)));
    }

    /// <summary>v_1' [V/s].</summary>
    public T SlowRise(T factor, T current, T slow) => ((factor * Numbers.SlowResistance * current) - slow) * Numbers.InverseSlowTime;

    /// <summary>T' [K/s].</summary>
    public T Warming(T factor, T current, T slow, T temperature, T air)
    {
        T branch = T.Max(1e-12, factor * Numbers.SlowResistance);
        T power = (factor * Numbers.Resistance * current * current) + (slow * slow / branch);
        return (power - ((temperature - air) * Numbers.HeatConductance)) * Numbers.InverseHeatCapacity;
    }

    /// <summary>Open-circuit voltage [V] after some charge was taken [A s].</summary>
    [MethodImpl(Kernel.Part)]
    public T OpenCircuitVoltage(T taken)
    {
        T s = Numbers.InitialCharge - (taken * Numbers.InverseCapacity);
        T voltage = Numbers.FirstVoltage;
        for (int i = 0; i < Slope.Length; i++)
        {
            voltage = voltage + (Slope[i] * T.Max(0.0, T.Min(Span[i], s - Charge[i])));
        }

        return voltage;
    }

    /// <summary>Bus voltage by Newton inside a bracket [V_oc/2, upper] that shrinks by the sign of the residual; a step that leaves it goes to its middle.</summary>
    /// <param name="voc">Open-circuit voltage, less that of the slow branch [V].</param>
    /// <param name="inner">Resistance that acts at once [ohm].</param>
    /// <param name="parameters">Parameters of the controllers.</param>
    /// <param name="shapes">Their shapes.</param>
    /// <param name="controllers">The controllers, prepared.</param>
    /// <param name="residual">Residual at the answer [V]; far from 0 when the battery cannot deliver.</param>
    /// <returns>Bus voltage [V].</returns>
    [MethodImpl(Kernel.Part)]
    public T Solve(T voc, T inner, ReadOnlySpan<ControllerParameters<T>> parameters, ReadOnlySpan<ControllerShape> shapes, ReadOnlySpan<ControllerWork<T>> controllers, out T residual)
    {
        // a hair below the half, so that a root right at the half lies inside
        T low = (0.5 - (Lane.IsSingle<T>() ? 1e-6 : 1e-9)) * voc;
        T backflow = 0.0;
        T inverseVoc = 1.0 / voc;
        for (int k = 0; k < controllers.Length; k++)
        {
            ref readonly ControllerWork<T> c = ref controllers[k];
            T emf = T.Abs(c.Emf);

            // a sensorless drive at part torque leaves part of the back-EMF at its terminals; V_b times the current of pulses is never below -E^2/(4 R)
            T most = shapes[k].HasPulses ? 1.0 : c.Magnitude + ((1.0 - c.Share) * emf * inverseVoc);
            backflow = backflow + (most * emf * c.Conductance);
        }

        T high = voc + (inner * backflow);
        T close = (Lane.IsSingle<T>() ? ConvergedSingle : Converged) * voc;
        T v = voc;
        T next = voc;
        residual = 0.0;
        for (int n = 0; n < NewtonSteps; n++)
        {
            T inverse = 1.0 / v;
            T power = 0.0;
            T slope = 0.0;
            for (int k = 0; k < controllers.Length; k++)
            {
                T p = ControllerEquations.BusPower(parameters[k], shapes[k], controllers[k], v, inverse, out T s);
                power = power + T.IfLess(0.5, controllers[k].IsZero, 0.0, p);
                slope = slope + T.IfLess(0.5, controllers[k].IsZero, 0.0, s);
            }

            residual = v - voc + (inner * power * inverse);
            low = T.IfLess(residual, 0.0, v, low);
            high = T.IfLess(0.0, residual, v, high);
            next = v - (residual / (1.0 + (inner * slope)));
            T middle = 0.5 * (low + high);
            T size = T.Abs(residual);

            // a step onto an end of the bracket would come back for ever where the slope jumps in between
            T safe = T.IfLess(low, next, T.IfLess(next, high, next, middle), middle);
            next = T.IfLess(size, close, next, safe);

            // a lane that has converged stays where it is, so that leaving early changes no bit
            v = T.IfLess(size, close, v, next);
            if (T.AllLess(size, close))
            {
                break;
            }
        }

        return next;
    }
}
