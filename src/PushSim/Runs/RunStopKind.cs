namespace PushSim.Runs;

/// <summary>Why a run stopped before its end time.</summary>
public enum RunStopKind
{
    /// <summary>No run can start from these settings; <see cref="RunStop.Refusal"/> says why.</summary>
    Refused,

    /// <summary>A state is no longer a finite number.</summary>
    State,

    /// <summary>A force, current or temperature is not a finite number.</summary>
    Rates,

    /// <summary>A battery cannot deliver what its controllers ask for.</summary>
    Battery,

    /// <summary>A robot tipped or has no driven wheel left on the floor; <see cref="RunStop.Upset"/> says which.</summary>
    Upset,

    /// <summary>The step became too small.</summary>
    Step,

    /// <summary>More work than allowed.</summary>
    Work,
}
