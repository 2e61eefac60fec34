namespace PushSim.Runs;

/// <summary>A part of the closer look at a run, which may be left out for want of work.</summary>
public enum LookPart
{
    /// <summary>Whether a shove is too close to call.</summary>
    CloseCall,

    /// <summary>What a run would answer if its controllers coasted between pulses.</summary>
    Coasting,

    /// <summary>What a shove owes to who moves first.</summary>
    Starts,

    /// <summary>What the bump of a shove gave.</summary>
    Bump,

    /// <summary>How a shove ends with values drawn from their tolerances.</summary>
    Drawn,

    /// <summary>The least current limit that turns a robot.</summary>
    LeastCurrent,

    /// <summary>The least motors that turn it.</summary>
    LeastMotor,

    /// <summary>What changes of the robot do to a turn.</summary>
    Helps,

    /// <summary>Modes of a turn, and whether a small change of the tyres lets one grow.</summary>
    Modes,

    /// <summary>Where chatter begins and stops.</summary>
    Range,

    /// <summary>What would keep tyres quiet.</summary>
    Cure,

    /// <summary>Grip over many runs.</summary>
    Grip,
}
