namespace PushSim.Analysis.Fit;

/// <summary>Why a pull is to be done again.</summary>
public enum PullFlaw
{
    /// <summary>It is good.</summary>
    None,

    /// <summary>The tyre did not slide long enough for a plateau.</summary>
    NoPlateau,

    /// <summary>The cell sticks at its greatest reading.</summary>
    Clipped,

    /// <summary>The force changes all the while the tyre slides: the tether swings round, or the robot turns.</summary>
    Sideways,

    /// <summary>The force swings nearly as far as it rises.</summary>
    Swings,

    /// <summary>The reading moves in steps nearly as large as the pull.</summary>
    TooCoarse,

    /// <summary>No slack before and after it tells the tare.</summary>
    NoSlack,

    /// <summary>Readings are missing in the midst of it.</summary>
    Gap,

    /// <summary>It is no pull: a knock, a hand, a tether that only goes taut.</summary>
    NoPull,
}
