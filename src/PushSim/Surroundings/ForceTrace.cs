namespace PushSim.Surroundings;

/// <summary>One log of a load cell: samples in rising time, at any rate, even or not.</summary>
public sealed record ForceTrace
{
    /// <summary>Times, never falling [s].</summary>
    public required double[] Time { get; init; }

    /// <summary>Readings, a pull positive, with whatever the slack chain reads [N].</summary>
    public required double[] Force { get; init; }

    /// <summary>Surface speed of the driven wheels, if it was logged [m/s].</summary>
    public double[]? SurfaceSpeed { get; init; }

    /// <summary>Turning speed of the driven wheels, if it was logged [rad/s].</summary>
    public double[]? TurnRate { get; init; }

    /// <summary>Battery current, if it was logged [A].</summary>
    public double[]? Current { get; init; }

    /// <summary>Battery voltage, if it was logged [V].</summary>
    public double[]? Voltage { get; init; }
}
