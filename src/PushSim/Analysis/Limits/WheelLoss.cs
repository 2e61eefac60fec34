namespace PushSim.Analysis.Limits;

/// <summary>How a wheel of a wiring study lost its grip.</summary>
public enum WheelLoss
{
    /// <summary>It did not: all stand on the floor.</summary>
    None,

    /// <summary>It is in the air.</summary>
    Lifted,

    /// <summary>It stands on a slippery patch.</summary>
    Slippery,
}
