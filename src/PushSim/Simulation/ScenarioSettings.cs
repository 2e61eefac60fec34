using PushSim.Chassis;
using PushSim.Powertrain;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>One robot, whole. SI, angles in rad, ISO 8855 axes.</summary>
public sealed record RobotSettings
{
    /// <summary>Name used in tables and messages.</summary>
    public required string Name { get; init; }

    /// <summary>The body.</summary>
    public required ChassisSettings Chassis { get; init; }

    /// <summary>2 to 8 wheels.</summary>
    public required IReadOnlyList<WheelSettings> Wheels { get; init; }

    /// <summary>The drives; a wheel in none turns freely unless it is a skid.</summary>
    public required IReadOnlyList<DriveSettings> Drives { get; init; }

    /// <summary>The controllers.</summary>
    public required IReadOnlyList<ControllerSettings> Controllers { get; init; }

    /// <summary>The battery; may be null only if no controller is there.</summary>
    public BatterySettings? Battery { get; init; }
}

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
}

/// <summary>One point of a timeline. Between points commands are held (jump at each point) unless <see cref="Ramp"/>.</summary>
/// <param name="Time">When [s].</param>
/// <param name="Throttle">Forward command, -1..1 [1].</param>
/// <param name="Turn">Turn command, -1..1, positive turns left (counter-clockwise) [1].</param>
/// <param name="Ramp">True: reached by a straight line from the point before.</param>
public sealed record CommandPoint(double Time, double Throttle, double Turn, bool Ramp = false);

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

    /// <summary>Heading at the start, positive counter-clockwise from floor x [rad].</summary>
    public double InitialHeading { get; init; }
}

/// <summary>How the equations are integrated.</summary>
public sealed record NumericsSettings
{
    /// <summary>Method name, one of the table's.</summary>
    public string Method { get; init; } = "ARK4(3)";

    /// <summary>Relative tolerance; the absolute ones per quantity scale with it [1].</summary>
    public double Tolerance { get; init; } = 1e-4;

    /// <summary>Cap on right-hand-side evaluations per simulated second [1/s].</summary>
    public double MaxEvaluationsPerSecond { get; init; } = 2e6;

    /// <summary>History samples per second [1/s].</summary>
    public double SampleRate { get; init; } = 1000.0;

    /// <summary>Highest frequency of tread ring on tyre body and bristles that is resolved [rad/s]; a stiffer tyre is softened to it and said so; infinite is no cap.</summary>
    public double RingFrequencyCap { get; init; } = 3000.0;
}

/// <summary>A whole scenario with one robot, checked and in SI.</summary>
public sealed record ScenarioSettings
{
    /// <summary>Name, used for the output folder.</summary>
    public required string Name { get; init; }

    /// <summary>The question it answers, one sentence.</summary>
    public string Question { get; init; } = "";

    /// <summary>The robot.</summary>
    public required RobotSettings Robot { get; init; }

    /// <summary>The floor.</summary>
    public FloorSettings Floor { get; init; } = new();

    /// <summary>The tether, if any.</summary>
    public TetherSettings? Tether { get; init; }

    /// <summary>What the robot is told to do.</summary>
    public required ManoeuvreSettings Manoeuvre { get; init; }

    /// <summary>How it is integrated.</summary>
    public NumericsSettings Numerics { get; init; } = new();
}
