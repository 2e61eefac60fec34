namespace PushSim.Simulation;

/// <summary>Kind of manoeuvre: decides the commands' meaning, the verdict and the plots.</summary>
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

/// <summary>One point of a timeline. Between points commands are held (jump at each point) unless <see cref="Ramp"/>.</summary>
/// <param name="Time">When [s].</param>
/// <param name="Throttle">Forward command, -1..1 [1].</param>
/// <param name="Turn">Turn command, -1..1, positive turns left (counter-clockwise) [1].</param>
/// <param name="Ramp">True: reached by a straight line from the point before.</param>
public sealed record CommandPoint(double Time, double Throttle, double Turn, bool Ramp = false);

/// <summary>How the one at the sticks, or the controller's own aid, bends the commands.</summary>
public sealed record DriverSettings
{
    /// <summary>All commands come later by this [s].</summary>
    public double ReactionDelay { get; init; }

    /// <summary>Heading hold k: turn command = -k times the error of the heading against the one at the start [1/rad]; 0 is off.</summary>
    public double HeadingHold { get; init; }

    /// <summary>Time of heading hold's first-order lag [s].</summary>
    public double HeadingLag { get; init; } = 0.05;
}

/// <summary>What the robot is told to do.</summary>
public sealed record ManoeuvreSettings
{
    /// <summary>The kind.</summary>
    public required ManoeuvreKind Kind { get; init; }

    /// <summary>Commands in rising time; before the first point both are zero.</summary>
    public required IReadOnlyList<CommandPoint> Commands { get; init; }

    /// <summary>When the run ends [s].</summary>
    public required double EndTime { get; init; }

    /// <summary>Forward speed at the start [m/s]; wheels roll along.</summary>
    public double InitialSpeed { get; init; }

    /// <summary>Heading at the start, positive counter-clockwise from floor x (of an opponent: from floor -x) [rad].</summary>
    public double InitialHeading { get; init; }

    /// <summary>Delay and heading hold.</summary>
    public DriverSettings Driver { get; init; } = new();

    /// <summary>Greatest throttle of either sign that is commanded, 0..1, 0 if none is [1].</summary>
    public double GreatestThrottle => Math.Min(1.0, Commands.Select(c => Math.Abs(c.Throttle)).DefaultIfEmpty(0.0).Max());
}
