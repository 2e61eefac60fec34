namespace PushSim.Runs;

/// <summary>Why it cannot be said whether tyres chatter.</summary>
public enum ChatterDoubt
{
    /// <summary>It can.</summary>
    None,

    /// <summary>What the tyre is made of is not known, so its stiffness and damping are guesses.</summary>
    Material,

    /// <summary>The run could not be made, or stopped before its end.</summary>
    Stopped,

    /// <summary>The run has too few samples.</summary>
    TooShort,

    /// <summary>There is no steady turn to look at.</summary>
    NoSteadyTurn,
}
