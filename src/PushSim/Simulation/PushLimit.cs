namespace PushSim.Simulation;

/// <summary>What limits a push.</summary>
public enum PushLimit
{
    /// <summary>Nothing is commanded.</summary>
    Idle,

    /// <summary>Driven tyres slide at the end of their grip.</summary>
    Tyres,

    /// <summary>Controllers hold the current at their limit.</summary>
    Controllers,

    /// <summary>The motors give what they can.</summary>
    Motors,

    /// <summary>The battery's voltage has broken down under the load.</summary>
    Battery,

    /// <summary>A driven wheel is off the floor.</summary>
    LiftedWheels,
}

/// <summary>A stretch of time with one limit.</summary>
/// <param name="From">Its start [s].</param>
/// <param name="To">Its end [s].</param>
/// <param name="Limit">What limited the push.</param>
public sealed record LimitSpan(double From, double To, PushLimit Limit);

/// <summary>Where a limit begins to bind.</summary>
internal static class LimitBounds
{
    /// <summary>alpha above which a tyre counts as at the end of its grip: there it gives over 90 % of what it can [1].</summary>
    public const double AtItsGrip = 0.5;

    /// <summary>Share above which a limit counts as the one that binds [1].</summary>
    public const double BindingShare = 0.5;

    /// <summary>Loss of battery voltage under load that makes the battery the limit when nothing else is [1].</summary>
    public const double BatterySag = 0.2;
}
