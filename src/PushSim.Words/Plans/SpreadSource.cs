namespace PushSim.Words.Plans;

/// <summary>Where the scatter of a plan comes from.</summary>
public enum SpreadSource
{
    /// <summary>It was given.</summary>
    Given,

    /// <summary>It was measured in earlier pulls.</summary>
    Measured,

    /// <summary>It is assumed.</summary>
    Assumed,
}
