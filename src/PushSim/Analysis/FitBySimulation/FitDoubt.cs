namespace PushSim.Analysis.FitBySimulation;

/// <summary>Why nothing that a fit by simulation says is to be believed.</summary>
public enum FitDoubt
{
    /// <summary>It is.</summary>
    None,

    /// <summary>The simulated test does not follow the log.</summary>
    NotFollowed,

    /// <summary>It follows the first moments of the sliding only.</summary>
    FirstMoments,

    /// <summary>Searches from different starts do not agree.</summary>
    Disagreeing,
}
