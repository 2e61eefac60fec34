using PushSim.Binding;

namespace PushSim.Analysis.Limits;

/// <summary>Limits in one state of heat and charge.</summary>
public sealed record LimitState
{
    /// <summary>Which.</summary>
    public required LimitStateKind Kind { get; init; }

    /// <summary>The state.</summary>
    public required LimitCondition Condition { get; init; }

    /// <summary>What all motors together can give at the floor at standstill [N].</summary>
    public required double MotorForce { get; init; }

    /// <summary>What all driven tyres together hold as they break away, under the loads of that pull or, where the robot rears up before, of that moment [N].</summary>
    public required double TractionPeak { get; init; }

    /// <summary>What they hold sliding fast, under the loads of that pull or, where the robot rears up before they break away, of that moment [N].</summary>
    public required double TractionSliding { get; init; }

    /// <summary>Whether there is a steady pull.</summary>
    public required PullStatus Status { get; init; }

    /// <summary>Steady pull at standstill [N]; null where the robot rears up before, or the search came to no end: <see cref="Status"/> says which.</summary>
    public required double? Pull { get; init; }

    /// <summary>Pull at which the robot rears up on its hook [N]; null where its tyres or motors give out before. Known wherever <see cref="Status"/> says that it rears up.</summary>
    public required double? RearsUpAt { get; init; }

    /// <summary>Every kind that binds at least one loaded driven wheel in the steady pull, by what a tenth more of it buys, the most first; empty without a steady pull and where the battery cannot feed it.</summary>
    public required IReadOnlyList<BoundBy> Bound { get; init; }

    /// <summary>What binds most; null without a steady pull.</summary>
    public BindingKind? Binding => Bound.Count > 0 ? Bound[0].Kind : null;

    /// <summary>Speed above which the motors, below which the tyres bind [m/s]; null where one binds throughout.</summary>
    public required double? CrossingSpeed { get; init; }

    /// <summary>Top speed [m/s].</summary>
    public required double TopSpeed { get; init; }

    /// <summary>Battery voltage with all motors stalled [V].</summary>
    public required double StallVoltage { get; init; }

    /// <summary>Battery current with all motors stalled [A].</summary>
    public required double StallCurrent { get; init; }

    /// <summary>True if the battery cannot deliver what the controllers ask for with all motors stalled, as it would fall below half of its voltage at rest: motor force and stall current are then too high.</summary>
    public required bool IsStarved { get; init; }
}
