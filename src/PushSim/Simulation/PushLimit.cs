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
