using System.Runtime.CompilerServices;
using PushSim.Tyres;

namespace PushSim.Binding;

/// <summary>What binds a wheel at a moment. Of causes that hold together the one nearest the floor counts: a lifted wheel, no command, a sliding tyre, a current limit,
/// a series wiring, the battery, the motor. One run, lanes and the steady pull of the limits all ask here.</summary>
internal static class BindingRule
{
    /// <summary>Number of kinds [1].</summary>
    public const int Kinds = 8;

    // Switch alpha of the bristle above which a tyre counts as at the end of its grip: there it gives over 90 % of what it can [1].
    private const double AtItsGrip = 0.5;

    /// <summary>Slip below which a tyre creeps under its load and does not slide, and a wheel stands [m/s]: with it a standing wheel at 95 % of its grip would be said to slide.</summary>
    public const double Creep = 1e-3;

    // Share of grip from which on a tyre of the plain law, which has no switch, slides [1].
    private const double PlainGrip = 0.9;

    // Share of a wheel's controllers above which they bind it [1].
    private const double Most = 0.5;

    // Loss of battery voltage under load that makes the battery bind where nothing nearer the floor does [1].
    private const double BatterySag = 0.2;

    /// <summary>1 where a tyre slides at the end of its grip, 0 else [1].</summary>
    /// <param name="shape">What is on at its tyre.</param>
    /// <param name="alpha">Switch of its bristle [1].</param>
    /// <param name="slip">Slip speed of the tread over the floor [m/s].</param>
    /// <param name="grip">Size of its force over its load and friction [1]; asked of the plain law only.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Slides<T>(in WheelShape shape, T alpha, T slip, T grip)
        where T : struct, IReal<T>
    {
        T slides = shape.Plain ? T.IfLess(grip, PlainGrip, 0.0, 1.0) : T.IfLess(alpha, AtItsGrip, 0.0, 1.0);
        return T.IfLess(slip, Creep, 0.0, slides);
    }

    /// <summary>What binds it, a <see cref="BindingKind"/> as a number [1].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Of<T>(in WheelMoment<T> m)
        where T : struct, IReal<T>
    {
        T kind = T.IfLess(m.Bus, (1.0 - BatterySag) * m.OpenCircuit, (double)BindingKind.Battery, (double)BindingKind.Motor);
        kind = T.IfLess(0.0, m.SeriesSlides, (double)BindingKind.Series, kind);
        kind = T.IfLess(Most, m.Limiting, T.IfLess(0.0, m.FoldedBack, (double)BindingKind.Heat, (double)BindingKind.CurrentLimit), kind);
        kind = T.IfLess(0.0, m.Slides, (double)BindingKind.Tyre, kind);
        kind = T.IfLess(0.0, m.Command, kind, (double)BindingKind.Nothing);
        return T.IfLess(0.0, m.Lifted, (double)BindingKind.Lifted, kind);
    }
}
