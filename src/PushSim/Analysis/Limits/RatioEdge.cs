namespace PushSim.Analysis.Limits;

/// <summary>Whether a ratio lies at an end of those that were tried, so that the true answer may lie beyond.</summary>
public enum RatioEdge
{
    /// <summary>It does not.</summary>
    None,

    /// <summary>The lowest tried.</summary>
    Lowest,

    /// <summary>The highest tried.</summary>
    Highest,
}
