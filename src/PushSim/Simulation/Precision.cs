namespace PushSim.Simulation;

/// <summary>Number type of a run's equations.</summary>
public enum Precision
{
    /// <summary>64 bits: about sixteen digits.</summary>
    Double,

    /// <summary>32 bits: about seven digits, twice as many matches side by side. For drawn matches, whose draws differ by far more than the rounding.</summary>
    Single,
}
