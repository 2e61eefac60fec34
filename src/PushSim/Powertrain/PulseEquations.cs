using System.Runtime.CompilerServices;

namespace PushSim.Powertrain;

/// <summary>A motor fed by pulses of period T, on for the share d: means of the periodic current through R and L, in closed form.
/// <code>
///   on:   i runs towards  I = |V_b - e|/R          off: towards -D,  D = (V_off +- e)/R        x = T R/L,  a = exp(-d x),  b = exp(-(1-d) x)
///   ends: i_1 = I (1 - a),  zero after the share z = ln(1 + i_1/D)/x  of T, where that is less than 1 - d
///         on = d I - i_1/x     off = i_1/x - z D
///   goes on:  swing = (I + D)(1 - a)(1 - b)/(1 - a b)     on = d I - swing/x     on + off = d I - (1 - d) D
///   R (mean of i^2) = V_b on - V_off off - e (on + off)                    (what coil stores comes back within a period)
/// </code>
/// V_off is V_b and two diodes where all switches are off, one diode where one stays on, 0 where both low switches are on. Where the back-EMF passes V_b the current is
/// negative all along, and every diode's way leads into the bus. Where V_off +- e is not positive (turned backwards against one diode) the current has no zero and goes on.
/// Solved from L di/dt = V - R i - e for each share; power electronics' buck converter in both of its modes (Erickson, Maksimovic, Fundamentals of Power
/// Electronics, chapter 5, from memory), with R kept. Left out: what diodes and switches differ in resistance, switching losses, the time both are off.</summary>
internal static class PulseEquations
{
    /// <summary>Forward voltage of a diode of the bridge [V]; usual silicon, 0.6 to 0.9 (common practice, no source). A lower one stretches the tail of the current.</summary>
    public const double DiodeDrop = 0.7;

    // T R/L within which the exponentials keep their digits; beyond, the coil does not count or hardly lets go of its current within a thousand pulses [1].
    private const double LeastPeriod = 1e-4;
    private const double MostPeriod = 300.0;

    // The last number before 1 [1].
    private const double BelowOne = 0.99999999999999988898;

    // Keeps off a division by zero; far below any current [A].
    private const double Tiny = 1e-30;

    // Newton steps from the share of continuous current down to the share that holds a mean current; convex, so each one stays above [1].
    private const int LimitSteps = 5;

    // Share by which a limit must shorten the pulses to count as acting [1].
    private const double LimitNoise = 1e-9;

    /// <summary>What an estimate goes by: electrical time L/R [s] and motor constant Kt^2/R [N m s/rad] of a 30 mm motor measured by students
    /// (R 2.9 ohm, L 1.13 mH, Kt 15.7 mN m/A; second-hand).</summary>
    private const double KnownTime = 0.39e-3;
    private const double KnownConstant = 8.5e-5;

    /// <summary>Inductance of a winding of which nobody gave one [H]: L/R grows with the square of the size, Kt^2/R with its fifth power (motors of one shape, computed here). A factor of 2 either way.</summary>
    public static double Inductance(MotorSettings motor) =>
        motor.Inductance ?? (motor.Resistance * KnownTime * Math.Pow(motor.TorqueConstant * motor.TorqueConstant / motor.Resistance / KnownConstant, 0.4));

    /// <summary>The means at a bus voltage.</summary>
    [MethodImpl(Kernel.Part)]
    public static PulseMeans<T> Means<T>(in ControllerParameters<T> p, in ControllerShape shape, in ControllerWork<T> c, T bus)
        where T : struct, IReal<T>
    {
        PulseShape<T> s = Shape(p, shape, c, bus);
        T share = c.Magnitude;
        if (shape.LimitsEachPulse)
        {
            share = T.Min(share, ShareOfPeak(p, s, c.Limit));
        }

        PulseMeans<T> means = At(s, share);

        // negative current is what the back-EMF drives, no limit holds it; nor that which no pulse at all leaves
        T least = s.EndsNot ? -s.Away : T.Max(0.0, -s.Away);
        T most = T.IfLess(s.Sign, 0.0, 1e30, T.Max(c.Limit, least));
        T factor = 1.0;
        if (!shape.LimitsEachPulse && !T.AllLess(means.Current, most))
        {
            T held = ShareOfMean(s, share, most);
            share = T.IfLess(most, means.Current, held, share);
            T unlimited = means.Current;
            means = At(s, share);

            // what the steps leave above the limit whole pulses leave out
            factor = T.IfLess(most, unlimited, T.IfLess(most, means.Current, most / T.Max(Tiny, means.Current), 1.0), 1.0);
        }

        factor = factor * c.Share;
        T current = factor * means.Current;
        T taken = factor * means.Taken;
        T square = means.Ripple + (means.Current * means.Current);
        T isLimiting = T.IfLess(share + LimitNoise, c.Magnitude, 1.0, T.IfLess(factor + LimitNoise, c.Share, 1.0, 0.0));
        T slope = T.IfLess(0.5, isLimiting, -(taken / bus), factor * means.Slope);
        means.Current = s.Sign * current;
        means.Ripple = T.Max(0.0, (factor * square) - (current * current));
        means.Taken = shape.Regeneration ? taken : T.Max(0.0, taken);
        means.Slope = shape.Regeneration ? slope : T.IfLess(taken, 0.0, 0.0, slope);
        means.IsLimiting = isLimiting;
        return means;
    }

    // Target currents while on and off, mirrored so that the current is not negative; both low switches on keep its sign.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static PulseShape<T> Shape<T>(in ControllerParameters<T> p, in ControllerShape shape, in ControllerWork<T> c, T bus)
        where T : struct, IReal<T>
    {
        PulseShape<T> s;
        s.EndsNot = shape.BetweenPulses == BetweenPulses.Brake;
        T drop = T.Max(-c.Drop, T.Min(c.Drop, (s.EndsNot ? c.Magnitude * bus : bus) - c.Emf));
        T emf = shape.HasBrushDrop ? c.Emf + drop : c.Emf;
        T ahead = bus - emf;
        s.Sign = s.EndsNot ? 1.0 : T.IfLess(ahead, 0.0, -1.0, 1.0);
        s.Bus = bus;
        s.Off = shape.BetweenPulses switch
        {
            BetweenPulses.Coast => bus + (2.0 * DiodeDrop),
            BetweenPulses.Diode => T.IfLess(s.Sign, 0.0, bus + DiodeDrop, DiodeDrop),
            _ => 0.0,
        };
        s.OffRise = shape.BetweenPulses switch
        {
            BetweenPulses.Coast => 1.0,
            BetweenPulses.Diode => T.IfLess(s.Sign, 0.0, 1.0, 0.0),
            _ => 0.0,
        };
        s.Emf = s.Sign * emf;
        s.Conductance = c.Conductance;
        s.Towards = s.Sign * ahead * c.Conductance;
        s.Away = (s.Off + s.Emf) * c.Conductance;
        s.Period = T.Max(LeastPeriod, T.Min(MostPeriod, p.PulseTimeOverInductance * (c.Resistance + p.OnResistance)));
        return s;
    }

    // Means at the share d; Current counts towards the bus's push (before the sign), Ripple is the mean square less the mean's square.
    [MethodImpl(Kernel.Part)]
    private static PulseMeans<T> At<T>(in PulseShape<T> s, T d)
        where T : struct, IReal<T>
    {
        T rise = s.Sign * s.Conductance;
        PulseMeans<T> means;
        means.IsLimiting = 0.0;
        if (T.AllLess(BelowOne, d))
        {
            // no pulses at all: what the formulas below come to, to the bit
            means.Current = s.Towards;
            means.Ripple = 0.0;
            means.Taken = s.Sign * s.Towards;
            means.Slope = s.Sign * rise;
            return means;
        }

        T inverse = 1.0 / s.Period;
        T whole = T.Exp(-s.Period);
        T a = T.Exp(-(d * s.Period));
        T rest = 1.0 - d;
        T k = (1.0 - a) * (1.0 - (whole / a)) / (1.0 - whole);
        T fall = s.OffRise * s.Conductance;
        T on = (d * s.Towards) - ((s.Towards + s.Away) * k * inverse);
        T sum = (d * s.Towards) - (rest * s.Away);
        T off = sum - on;
        T onRise = (d * rise) - ((rise + fall) * k * inverse);
        T offRise = (d * rise) - (rest * fall) - onRise;
        if (!s.EndsNot)
        {
            T away = T.Max(Tiny, s.Away);
            T peak = s.Towards * (1.0 - a);
            T z = T.Log(1.0 + (peak / away)) * inverse;
            T peakRise = rise * (1.0 - a);
            T zRise = ((peakRise * away) - (peak * fall)) * inverse / (away * (away + peak));
            T isEnding = T.IfLess(s.Away, Tiny, 0.0, T.IfLess(z, rest, 1.0, 0.0));
            on = T.IfLess(0.5, isEnding, (d * s.Towards) - (peak * inverse), on);
            off = T.IfLess(0.5, isEnding, (peak * inverse) - (z * away), off);
            sum = T.IfLess(0.5, isEnding, on + off, sum);
            onRise = T.IfLess(0.5, isEnding, (d * rise) - (peakRise * inverse), onRise);
            offRise = T.IfLess(0.5, isEnding, (peakRise * inverse) - (zRise * away) - (z * fall), offRise);
        }

        means.Current = sum;
        T square = ((s.Sign * s.Bus * on) - (s.Off * off) - (s.Emf * sum)) * s.Conductance;
        means.Ripple = T.IfLess(BelowOne, d, 0.0, T.Max(0.0, square - (sum * sum)));
        means.Taken = (s.Sign * on) - (s.OffRise * off);
        means.Slope = (s.Sign * onRise) - (s.OffRise * offRise);
        return means;
    }

    // Share at which the mean current is the wanted one: that of continuous current, which is too long where the current ends, and Newton steps down from there.
    [MethodImpl(Kernel.Part)]
    private static T ShareOfMean<T>(in PulseShape<T> s, T share, T wanted)
        where T : struct, IReal<T>
    {
        T d = T.Max(0.0, T.Min(share, (wanted + s.Away) / (s.Towards + s.Away)));
        for (int n = 0; n < LimitSteps && !s.EndsNot; n++)
        {
            T away = T.Max(Tiny, s.Away);
            T a = T.Exp(-(d * s.Period));
            T peak = s.Towards * (1.0 - a);
            T z = T.Log(1.0 + (peak / away)) / s.Period;
            T excess = (d * s.Towards) - (z * away) - wanted;
            T slope = s.Towards * (1.0 - (a * away / (away + peak)));
            T next = T.Max(0.0, d - (T.Max(0.0, excess) / T.Max(Tiny, slope)));
            d = T.IfLess(s.Away, Tiny, d, T.IfLess(z, 1.0 - d, next, d));
        }

        return d;
    }

    // Share after which the current reaches a peak: from zero where it ends between the pulses, else from where the periodic current begins.
    [MethodImpl(Kernel.Part)]
    private static T ShareOfPeak<T>(in ControllerParameters<T> p, in PulseShape<T> s, T peak)
        where T : struct, IReal<T>
    {
        T whole = T.Exp(-s.Period);
        T sum = T.Max(Tiny, s.Towards + s.Away);
        T most = T.Max(T.Max(Tiny, whole), (s.Towards - (peak * (1.0 - whole)) + (s.Away * whole)) / sum);
        T d = -(T.Log(T.Min(1.0, most)) / s.Period);
        if (!s.EndsNot)
        {
            T away = T.Max(Tiny, s.Away);
            T fromZero = -(T.Log(T.Max(Tiny, 1.0 - (peak / T.Max(Tiny, s.Towards)))) / s.Period);
            T z = T.Log(1.0 + (peak / away)) / s.Period;
            d = T.IfLess(s.Away, Tiny, d, T.IfLess(fromZero + z, 1.0, fromZero, d));
        }

        // a current that the back-EMF drives, and one that never comes so high, stay as they are
        return T.IfLess(s.Sign, 0.0, 1.0, T.IfLess(s.Towards, peak, 1.0, d));
    }
}
