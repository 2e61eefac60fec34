
namespace PushSim.Runs;

/// <summary>What a reader of a run should know before believing it.</summary>
public abstract record RunWarning
{
    private RunWarning()
    {
    }

    /// <summary>The robot that it tells of: 0 the first, 1 the opponent [1].</summary>
    public int Robot { get; init; }

    /// <summary>At rest its body stands on the floor beside its wheels.</summary>
    /// <param name="Share">Share of the load that the body takes off the wheels [1].</param>
    public sealed record OnItsBody(double Share) : RunWarning;

    /// <summary>Its tread rings are a good part of its mass, and add to its inertia while sliding.</summary>
    /// <param name="Share">Their share of it [1].</param>
    public sealed record TreadMass(double Share) : RunWarning;

    /// <summary>A wheel that carries nothing at rest.</summary>
    /// <param name="Wheel">Its name.</param>
    public sealed record Unloaded(string Wheel) : RunWarning;

    /// <summary>The battery falls below its cut-off.</summary>
    /// <param name="Lowest">Its lowest voltage [V].</param>
    /// <param name="CutOff">The cut-off [V].</param>
    public sealed record BelowCutOff(double Lowest, double CutOff) : RunWarning;

    /// <summary>The pack is asked for more than packs are sold for.</summary>
    /// <param name="Current">The current [A].</param>
    /// <param name="Hourly">What would empty it in an hour [A].</param>
    public sealed record HardOnPack(double Current, double Hourly) : RunWarning;

    /// <summary>A winding that gets hotter than it may.</summary>
    /// <param name="Motor">The motor.</param>
    /// <param name="Drive">Its drive.</param>
    /// <param name="Limit">What it may [degree Celsius].</param>
    /// <param name="Time">Since when it is hotter [s].</param>
    public sealed record Hot(string Motor, string Drive, double Limit, double Time) : RunWarning;

    /// <summary>A motor without sensors: what it does at standstill under load is not predicted.</summary>
    /// <param name="Motor">The motor.</param>
    public sealed record Sensorless(string Motor) : RunWarning;

    /// <summary>The tether snaps taut.</summary>
    /// <param name="Of">With that jerk.</param>
    /// <param name="HidesBreakaway">Whether it hides the breakaway from a load cell.</param>
    public sealed record Jerk(TetherJerk Of, bool HidesBreakaway) : RunWarning;

    /// <summary>Wheels hop while the robot pushes.</summary>
    /// <param name="Hops">Which, how often and how long.</param>
    public sealed record Hopping(PushHops Hops) : RunWarning;

    /// <summary>The robot bounces on the tether.</summary>
    /// <param name="Times">How often the tether fell slack [1].</param>
    public sealed record Bouncing(int Times) : RunWarning;

    /// <summary>Who gets under whom hangs on less than the robots sink and rock.</summary>
    /// <param name="Difference">Height of the opponent's lower edge in front above that of the first robot, both standing [m].</param>
    /// <param name="Width">What both sink into their tyres and rock on them before they touch [m].</param>
    public sealed record TipsUndecided(double Difference, double Width) : RunWarning;

    /// <summary>A number of the robot that cannot be meant.</summary>
    /// <param name="Why">Which.</param>
    public sealed record Doubtful(Implausible Why) : RunWarning;
}
