using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Why and when a run stopped before its end time.</summary>
/// <param name="Kind">Why.</param>
/// <param name="Time">When [s].</param>
public sealed record RunStop(RunStopKind Kind, double Time)
{
    /// <summary>The robot that it hangs on; null where it hangs on none.</summary>
    public RobotSettings? Robot { get; init; }

    /// <summary>How that robot lost its stand.</summary>
    public Upset Upset { get; init; }

    /// <summary>What is wrong with settings that no run can start from, as their reader says.</summary>
    public string Refusal { get; init; } = "";

    /// <summary>Evaluations of the right-hand side until then [1].</summary>
    public long Evaluations { get; init; }

    /// <summary>How many of them were allowed per simulated second [1/s].</summary>
    public double AllowedRate { get; init; }

    /// <summary>What of that robot asks for the shortest steps.</summary>
    public FastMode Fastest { get; init; }

    /// <summary>Of settings that no run can start from.</summary>
    /// <param name="refusal">What is wrong with them.</param>
    public static RunStop Refused(string refusal) => new(RunStopKind.Refused, 0.0) { Refusal = refusal };
}
