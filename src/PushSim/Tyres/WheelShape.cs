namespace PushSim.Tyres;

/// <summary>What is no number of a wheel: where its states stand and which optional terms are on. Fixed for a run, so branches on it cost nothing;
/// wheels of one shape run side by side.</summary>
internal readonly record struct WheelShape
{
    /// <summary>Place of its turning patch in each block of the tyres' implicit states; -1 without one.</summary>
    public int SpinIndex { get; init; }

    /// <summary>Index of the drive, -1 for a skid.</summary>
    public int Drive { get; init; }

    /// <summary>Index of the fouling state, -1 when dust is off.</summary>
    public int FoulingIndex { get; init; }

    /// <summary>Index of the wear integral, the tread's friction work follows; -1 when wear is off.</summary>
    public int WearIndex { get; init; }

    /// <summary>Points of the friction table; 0 without one [1].</summary>
    public int TablePoints { get; init; }

    /// <summary>Whether the switch of the bristle is always on.</summary>
    public bool Plain { get; init; }

    /// <summary>Whether friction rises with the logarithm of the speed.</summary>
    public bool HasRise { get; init; }

    /// <summary>Whether friction hangs on the load.</summary>
    public bool HasLoadExponent { get; init; }

    /// <summary>Whether rolling takes a torque.</summary>
    public bool HasRolling { get; init; }

    /// <summary>Whether the bristle's damping is limited by its decay.</summary>
    public bool LimitDamping { get; init; }
}
