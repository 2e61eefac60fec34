namespace PushSim.Runs;

/// <summary>How well a robot turns.</summary>
public enum TurnEase
{
    /// <summary>With torque and current to spare.</summary>
    Freely,

    /// <summary>It turns; what it has to spare was left out for want of work.</summary>
    Unknown,

    /// <summary>Little less torque or current and it would stand.</summary>
    AtTheLimit,

    /// <summary>It stands, or all but stands.</summary>
    CannotTurn,
}

/// <summary>What one wheel does in the settled part of a turn.</summary>
/// <param name="Wheel">Name of the wheel.</param>
/// <param name="Load">Mean load [N].</param>
/// <param name="LeastLoad">Least load [N].</param>
/// <param name="AirShare">Share of the time off the floor [1].</param>
/// <param name="LiftOffs">How often it left the floor [1].</param>
/// <param name="DriveForce">Mean force along the wheel, positive forward [N].</param>
/// <param name="ScrubForce">Mean sideways force, positive to the left [N].</param>
/// <param name="ScrubMoment">Mean moment of the sideways force against the turn [N m].</param>
/// <param name="DriveMoment">Mean moment of the drive force with the turn [N m].</param>
/// <param name="SlipSpeed">Mean slip speed of the tread [m/s].</param>
/// <param name="Swing">Swing of the tyre force above 15 Hz, root mean square [N]; 0 without enough samples.</param>
/// <param name="Frequency">Frequency of its chatter [Hz]; null if quiet.</param>
/// <param name="Wear">Worn volume over the whole run [m^3]; null without a wear number.</param>
public sealed record WheelTurn(
    string Wheel, double Load, double LeastLoad, double AirShare, int LiftOffs, double DriveForce, double ScrubForce, double ScrubMoment,
    double DriveMoment, double SlipSpeed, double Swing, double? Frequency, double? Wear);

/// <summary>A change of the robot and what it does to the turn.</summary>
/// <param name="What">What is changed.</param>
/// <param name="From">Value now [unit of the change].</param>
/// <param name="To">Changed value [unit of the change].</param>
/// <param name="Turns">Whether it turns then.</param>
/// <param name="YawRate">Yaw rate then, positive counter-clockwise [rad/s].</param>
/// <param name="ScrubMoment">Moment of scrub against the turn then [N m].</param>
/// <param name="Current">Mean battery current then [A].</param>
public sealed record TurnHelp(TurnChange What, double From, double To, bool Turns, double YawRate, double ScrubMoment, double Current);

/// <summary>Chatter at one slip speed of the tyres' friction curve.</summary>
/// <param name="SlipSpeed">Speed over which friction falls from static to kinetic, v_s [m/s].</param>
/// <param name="RingMargin">Least margin of the ring criterion, below 1 buzzes [1]; null if nothing slides.</param>
/// <param name="Growth">Growth rate of the fastest growing mode [1/s].</param>
/// <param name="Chatters">Whether a mode is chatter that begins by itself.</param>
public sealed record SlipSpeedPoint(double SlipSpeed, double? RingMargin, double Growth, bool Chatters);

/// <summary>What feeds the fastest growing mode of a steady turn: its growth rates with one cause or both taken away, the turn left as it is.</summary>
/// <param name="WithoutFall">With friction that does not change with slip speed [1/s].</param>
/// <param name="WithSteadyLoad">With treads that are held as if each wheel kept its load while the body bounces, pitches and rolls [1/s].</param>
/// <param name="WithNeither">With both taken away [1/s].</param>
public sealed record TurnFeed(double WithoutFall, double WithSteadyLoad, double WithNeither)
{
    /// <summary>Which of them it lives on.</summary>
    public ChatterFeed Kind => (WithoutFall > 0.0, WithSteadyLoad > 0.0, WithNeither > 0.0) switch
    {
        (false, true, _) => ChatterFeed.Friction,
        (true, false, _) => ChatterFeed.Loads,
        (false, false, _) => ChatterFeed.Both,
        (true, true, false) => ChatterFeed.Either,
        _ => ChatterFeed.Unknown,
    };
}

/// <summary>Everything that is asked about a turn besides a run's answers.</summary>
public sealed record TurnResult
{
    /// <summary>How well it turns.</summary>
    public required TurnEase Ease { get; init; }

    /// <summary>Start of the settled part that means are taken over [s].</summary>
    public required double SettledFrom { get; init; }

    /// <summary>Yaw rate that the same wheels' surface speeds would give without slip [rad/s].</summary>
    public required double YawRateWithoutSlip { get; init; }

    /// <summary>Mean place of the centre of rotation from the centre of mass, x forward and y left, in the settled part [m]; null if it does not turn.</summary>
    public required (double X, double Y)? RotationCentre { get; init; }

    /// <summary>Centre of rotation from the centre of mass at each sample of the run, NaN while it hardly turns [m].</summary>
    public required (double[] X, double[] Y) RotationCentreOverTime { get; init; }

    /// <summary>Path of each contact point over the floor, in the order of the robot's wheels, at each sample of the run [m].</summary>
    public required IReadOnlyList<(string Wheel, double[] X, double[] Y)> ContactPaths { get; init; }

    /// <summary>Mean battery current in the settled part [A].</summary>
    public required double Current { get; init; }

    /// <summary>Mean power out of the battery's terminals in the settled part [W].</summary>
    public required double Power { get; init; }

    /// <summary>Share of the settled part in which a controller limited its current, the most limited one [1].</summary>
    public required double LimitingShare { get; init; }

    /// <summary>Each wheel's part.</summary>
    public required IReadOnlyList<WheelTurn> Wheels { get; init; }

    /// <summary>Frequencies of the spectra [Hz]; empty with too few samples.</summary>
    public required double[] Frequencies { get; init; }

    /// <summary>Spectrum of each wheel's tyre force.</summary>
    public required IReadOnlyList<ForceSpectrum> Spectra { get; init; }

    /// <summary>Least current limit of each controller that still turns it, as a share of the limit (of the stall current where there is none) [1]; null if no limit does.</summary>
    public double? LeastCurrentShare { get; init; }

    /// <summary>That limit of the weakest controller [A]; null if no limit does.</summary>
    public double? LeastCurrentLimit { get; init; }

    /// <summary>Least stall torque of the motors, at the same no-load speed, that still turns it, as a share of what they have [1]; null if none does.</summary>
    public double? LeastMotorShare { get; init; }

    /// <summary>Changes and what they do to the turn.</summary>
    public IReadOnlyList<TurnHelp> Helps { get; init; } = [];

    /// <summary>Modes of the linearised steady turn, the fastest growing first; empty if there is none.</summary>
    public IReadOnlyList<TurnMode> Modes { get; init; } = [];

    /// <summary>What feeds the fastest growing mode; null if none grows.</summary>
    public TurnFeed? Feed { get; init; }

    /// <summary>Why there are no modes.</summary>
    public NoModesCause NoModes { get; init; }

    /// <summary>Growth rate of a disturbance of 1e-4 in a simulation of the steady turn [1/s]; null if there is none.</summary>
    public double? SimulatedGrowth { get; init; }

    /// <summary>The ring criterion of each wheel that slides in the steady turn.</summary>
    public IReadOnlyList<RingCheck> Rings { get; init; } = [];

    /// <summary>Ring criterion and growth over the slip speeds that a tyre may have; empty if no tyre has the three-number curve.</summary>
    public IReadOnlyList<SlipSpeedPoint> SlipSpeeds { get; init; } = [];

    /// <summary>Damping at which chatter begins and stops; null without a steady turn.</summary>
    public ChatterRange? Range { get; init; }
}
