namespace PushSim.Runs;

/// <summary>Why a turn has no modes.</summary>
public enum NoModesCause
{
    /// <summary>It has.</summary>
    None,

    /// <summary>It does not turn.</summary>
    CannotTurn,

    /// <summary>The floor is not the same all around.</summary>
    UnevenFloor,

    /// <summary>Something holds the robot back.</summary>
    HeldBack,

    /// <summary>Nothing is commanded.</summary>
    NoCommand,

    /// <summary>The robot does not stand on its wheels.</summary>
    NoStand,

    /// <summary>No steady turn was found.</summary>
    NotFound,

    /// <summary>It would take more work than the closer look has.</summary>
    LeftOut,
}
