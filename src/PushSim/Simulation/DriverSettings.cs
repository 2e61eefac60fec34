namespace PushSim.Simulation;

/// <summary>The one at the sticks, and the controller's own aid: how they bend the commands. Sizes are common practice, no source.</summary>
public sealed record DriverSettings
{
    /// <summary>Gain of a driver who steers a little [1/rad].</summary>
    public const double ModestSteering = 0.5;

    /// <summary>All commands come later by this [s].</summary>
    public double ReactionDelay { get; init; }

    /// <summary>Heading hold k: turn command = -k times the error of the heading against the one at the start [1/rad]; 0 is off.</summary>
    public double HeadingHold { get; init; }

    /// <summary>Time of heading hold's first-order lag [s].</summary>
    public double HeadingLag { get; init; } = 0.05;

    /// <summary>Turn command per angle between the nose and the line of sight to the opponent's centre of mass [1/rad]; 0: nobody steers.</summary>
    public double Steering { get; init; }

    /// <summary>Greatest turn command of steering, 0..1 [1].</summary>
    public double SteeringLimit { get; init; } = 0.3;

    /// <summary>How fast that command changes at most [1/s].</summary>
    public double SteeringRate { get; init; } = 2.0;

    /// <summary>Dead time from what is seen to the stick [s], as a chain of three lags of a third of it each.</summary>
    public double DeadTime { get; init; } = 0.2;

    /// <summary>Share of the commanded throttle that is left once the driver eases off, 0..1 [1]; 1: the driver never does.</summary>
    public double EaseTo { get; init; } = 1.0;

    /// <summary>How fast the throttle goes there, in shares of the command [1/s].</summary>
    public double EaseRate { get; init; } = 1.0;

    /// <summary>Time without ground gained after which the driver eases off [s].</summary>
    public double EaseAfter { get; init; } = 0.5;
}
