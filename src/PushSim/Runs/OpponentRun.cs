using PushSim.Binding;
using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>The second robot's part of a run.</summary>
/// <param name="Robot">The robot.</param>
/// <param name="Trace">What was recorded of it, in its own floor frame (the first robot's turned by half a turn).</param>
/// <param name="Answers">Its answers, each null where it does not apply.</param>
/// <param name="Limits">What bound its push, stretch by stretch.</param>
public sealed record OpponentRun(RobotSettings Robot, Trace Trace, RunAnswers Answers, IReadOnlyList<BindingSpan> Limits)
{
    /// <summary>How its wheels keep the floor while it pushes; null where it touches nothing.</summary>
    public PushHops? Hops { get; init; }
}
