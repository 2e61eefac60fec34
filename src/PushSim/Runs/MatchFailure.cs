namespace PushSim.Runs;

/// <summary>Why a match could not be played to its end.</summary>
public enum MatchFailure
{
    /// <summary>It could.</summary>
    None,

    /// <summary>Its draws make no settings.</summary>
    Draws,

    /// <summary>No run can start from these settings: a centre of mass does not stand over the wheels, or the floor leans past upright.</summary>
    Refused,

    /// <summary>A battery cannot deliver what its controllers ask for.</summary>
    Battery,

    /// <summary>The step became too small, or the derivatives are not finite.</summary>
    Step,

    /// <summary>More work than allowed.</summary>
    Work,
}
