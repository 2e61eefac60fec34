namespace PushSim.Runs;

/// <summary>How the wheels of a robot that pushes keep the floor, from the first touch to the end.</summary>
/// <param name="Wheels">Each wheel, in the order of the robot's wheels.</param>
public sealed record PushHops(IReadOnlyList<WheelAir> Wheels)
{
    /// <summary>Name of the wheel that hops and leaves the floor most; null if none hops.</summary>
    public string? Wheel { get; init; }

    /// <summary>Frequency of the swing of its load while it hops [Hz]; null if none hops.</summary>
    public double? Frequency { get; init; }

    /// <summary>When it first leaves the floor [s].</summary>
    public double From { get; init; }

    /// <summary>When it last leaves the floor [s].</summary>
    public double To { get; init; }

    /// <summary>Greatest share of the time that any wheel was off the floor [1].</summary>
    public double MostAirShare => Wheels.Max(w => w.Share);
}
