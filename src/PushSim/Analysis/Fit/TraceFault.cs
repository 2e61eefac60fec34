namespace PushSim.Analysis.Fit;

/// <summary>Why no friction can come out of a log.</summary>
public enum TraceFault
{
    /// <summary>Nothing wrong.</summary>
    None,

    /// <summary>Too few readings.</summary>
    TooFew,

    /// <summary>Every reading is zero.</summary>
    AllZero,

    /// <summary>The reading never changes or never leaves its noise.</summary>
    NoPull,

    /// <summary>The steps of the reading are nearly as large as the pull.</summary>
    TooCoarse,

    /// <summary>It pulls, but from reading to reading the force swings nearly as far as it rises in all.</summary>
    Swings,

    /// <summary>The force never leaves what passes for its noise, and the readings are too few to tell whether that is noise or a pull that swings.</summary>
    TooFewToTell,

    /// <summary>Pulls read negative.</summary>
    Reversed,

    /// <summary>The cell sticks at its greatest reading.</summary>
    Saturated,

    /// <summary>No slack part, and no tare given.</summary>
    NoSlack,
}
