using PushSim.Binding;
using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>What a robot was told to do with what it did, of which answers are made.</summary>
/// <param name="Scenario">The scenario as the robot sees it.</param>
/// <param name="Trace">What was recorded of the robot.</param>
/// <param name="Bindings">What bound each of its wheels.</param>
internal sealed record RunHistory(ScenarioSettings Scenario, Trace Trace, IReadOnlyList<BindingMoments> Bindings)
{
    public RobotSettings Robot => Scenario.Robot;

    /// <summary>Its peaks.</summary>
    public RobotPeaks Peaks { get; init; } = RobotPeaks.None;

    public Series Time => Trace.Time;

    /// <summary>What bound each driven wheel.</summary>
    public IReadOnlyList<BindingMoments> DrivenBindings { get; } = [.. Bindings.Where(b => b.IsDriven)];

    /// <inheritdoc cref="Trace.IndexAt"/>
    public int IndexAt(double t) => Trace.IndexAt(t);

    /// <summary>Mean of values worked out over samples from..to, both included.</summary>
    public static double Mean(double[] values, int from, int to) => values[from..(to + 1)].Average();
}
