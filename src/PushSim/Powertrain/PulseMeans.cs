namespace PushSim.Powertrain;

/// <summary>Means over a pulse of one controller, positive with its command.</summary>
internal struct PulseMeans<T>
    where T : struct, IReal<T>
{
    /// <summary>Motor current [A], its mean square beyond the square of that mean [A^2], current out of the bus [A].</summary>
    public T Current, Ripple, Taken;

    /// <summary>Derivative of the bus current by the bus voltage, for Newton's speed only [S]; 1 where the current limit acts, 0 else.</summary>
    public T Slope, IsLimiting;
}
