namespace PushSim.Simulation;

/// <summary>Kind of manoeuvre. What follows from it stands in its row of <see cref="ManoeuvreTraits"/>.</summary>
public enum ManoeuvreKind
{
    /// <summary>Full or part throttle from rest.</summary>
    Launch,

    /// <summary>From speed to zero command.</summary>
    Brake,

    /// <summary>From speed to reversed throttle.</summary>
    Reversal,

    /// <summary>The robot pulls a tether on a fixed anchor.</summary>
    PullTest,

    /// <summary>A moving anchor drags the robot at zero command.</summary>
    DragTest,

    /// <summary>Turn on the spot.</summary>
    Spot,

    /// <summary>Turn on an arc.</summary>
    Arc,

    /// <summary>Stand at zero command (tilted board).</summary>
    Hold,

    /// <summary>Any timeline of throttle and turn.</summary>
    Timeline,

    /// <summary>Two robots push each other.</summary>
    Shove,

    /// <summary>The robot pushes a wall.</summary>
    WallPush,
}
