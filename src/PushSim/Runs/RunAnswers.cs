using PushSim.Binding;
using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>The numbers a builder asks for; null where one does not apply to the manoeuvre.</summary>
public sealed record RunAnswers
{
    /// <summary>Force at which the tyres of a pull let go [N]; null where they never do, or a jerk of the tether hides it.</summary>
    public double? PullBreakaway { get; init; }

    /// <summary>The jerk of a tether that snaps taut; null where it does not.</summary>
    public TetherJerk? PullJerk { get; init; }

    /// <summary>Whether the robot bounced on the tether, so that its mean force is no steady one.</summary>
    public bool IsBouncing { get; init; }

    /// <summary>Mean tether force once sliding or stalled [N].</summary>
    public double? PullPlateau { get; init; }

    /// <summary>What bound the robot in its pull, push or launch; null where nothing was commanded or it is not asked.</summary>
    public BindingShares? Binding { get; init; }

    /// <summary>What bound it most.</summary>
    public BindingKind? LimitedBy => Binding?.Leading;

    /// <summary>Whether motors that limit a push do so by their top speed and gearing, not by their torque.</summary>
    public bool IsNearTopSpeed { get; init; }

    /// <summary>Highest forward speed [m/s].</summary>
    public double? TopSpeed { get; init; }

    /// <summary>Time from the first command to 90 % of the top speed [s].</summary>
    public double? TimeTo90PercentSpeed { get; init; }

    /// <summary>Time from the first command until the robot is a metre from where it was then [s].</summary>
    public double? TimeToOneMetre { get; init; }

    /// <summary>Distance from the brake or reverse command to standstill [m].</summary>
    public double? StopDistance { get; init; }

    /// <summary>Mean yaw rate over the settled part of a turn, positive counter-clockwise [rad/s].</summary>
    public double? YawRate { get; init; }

    /// <summary>Whether that is a turn at all.</summary>
    public bool IsTurning => YawRate is double rate && Math.Abs(rate) > AnswerFinder.LeastYawRate;

    /// <summary>(mean wheel surface speed difference) / (yaw rate x track) [1]; 1 is turning without scrub.</summary>
    public double? EffectiveTrackRatio { get; init; }

    /// <summary>Mean moment that scrub puts up against the turn, positive [N m].</summary>
    public double? ScrubMoment { get; init; }

    /// <summary>Mean battery current over the settled part of a turn [A].</summary>
    public double? TurnCurrent { get; init; }

    /// <summary>Frequency of tyre chatter that this run shows [Hz], in a push that of wheels that hop; null when quiet.</summary>
    public double? Chatter { get; init; }

    /// <summary>Whether chatter was looked for, in enough samples.</summary>
    public bool IsChatterLookedFor { get; init; }

    /// <summary>Worn volume of all tyres together [m^3]; null when no tyre has a wear number.</summary>
    public double? Wear { get; init; }

    /// <summary>That volume over the energy that these tyres' treads lost on the floor [m^3/J]; null when no tyre has a wear number or nothing was lost.</summary>
    public double? WearPerWork { get; init; }

    /// <summary>Greatest push on a wall or opponent, along the way the first robot faces [N].</summary>
    public double? PushPeak { get; init; }

    /// <summary>Mean push on a wall or opponent over the last part of the contact, along the way the first robot faces: positive when it pushes with its front, below zero when it is pushed from behind [N].</summary>
    public double? PushPlateau { get; init; }

    /// <summary>Peaks of currents and loads, with their moments and limits.</summary>
    public RobotPeaks Peaks { get; init; } = RobotPeaks.None;

    /// <summary>Peak battery current [A].</summary>
    public double? PeakBatteryCurrent => Peaks.BatteryCurrent?.Value;

    /// <summary>Lowest battery voltage [V].</summary>
    public double? LowestBatteryVoltage => Peaks.BatteryVoltage?.Value;

    /// <summary>Peak motor winding temperature [degree Celsius].</summary>
    public double? PeakWindingTemperature { get; init; }

    /// <summary>Peak battery temperature; null where its heat is not followed [degree Celsius].</summary>
    public double? PeakBatteryTemperature { get; init; }

    /// <summary>Charge taken from the battery [A s].</summary>
    public double? ChargeUsed { get; init; }

    /// <summary>Furthest movement of the centre of mass from its start [m].</summary>
    public double? Travel { get; init; }
}
