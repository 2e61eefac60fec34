namespace PushSim.Simulation;

/// <summary>Numbers of a driver, and nothing else.</summary>
internal struct DriverNumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Heading hold: k [1/rad], 1/lag [1/s], heading to hold [rad].</summary>
    public T HoldGain, InverseHoldLag, HoldHeadingAt;

    /// <summary>Steering: gain [1/rad], greatest command [1], its rate [1/s], 1 / one lag of the dead time [1/s].</summary>
    public T SteeringGain, SteeringLimit, SteeringRate, InverseLag;

    /// <summary>Easing: share of the throttle that goes [1], its rate [1/s], patience [s].</summary>
    public T EasedShare, EasingRate, Patience;
}
