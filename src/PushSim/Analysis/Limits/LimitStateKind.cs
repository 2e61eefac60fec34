namespace PushSim.Analysis.Limits;

/// <summary>A state of heat and charge.</summary>
public enum LimitStateKind
{
    /// <summary>As in the file.</summary>
    AsInFile,

    /// <summary>Cold, full.</summary>
    ColdFull,

    /// <summary>Warm, full.</summary>
    WarmFull,

    /// <summary>Cold, at part of the charge.</summary>
    ColdPart,

    /// <summary>Warm, at part of the charge.</summary>
    WarmPart,
}
