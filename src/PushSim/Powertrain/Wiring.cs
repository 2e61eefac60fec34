namespace PushSim.Powertrain;

/// <summary>How the motors of one controller are wired.</summary>
public enum Wiring
{
    /// <summary>One motor only.</summary>
    Single,

    /// <summary>One voltage for all; the current limit acts on the sum.</summary>
    Parallel,

    /// <summary>One current through all; voltages add.</summary>
    Series,
}
