using PushSim.Binding;
using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>The recorded series of a run with the sums that answers are made of.</summary>
internal sealed class RunHistory(ScenarioSettings scenario, double[] time, IReadOnlyList<Channel> channels, IReadOnlyList<BindingMoments> bindings)
{
    private readonly Dictionary<string, Channel> _byKey = channels.ToDictionary(c => c.Key);

    public ScenarioSettings Scenario { get; } = scenario;

    public RobotSettings Robot => Scenario.Robot;

    public double[] Time { get; } = time;

    public IReadOnlyList<Channel> Channels { get; } = channels;

    /// <summary>What bound each wheel, and each driven one.</summary>
    public IReadOnlyList<BindingMoments> Bindings { get; } = bindings;

    public IReadOnlyList<BindingMoments> DrivenBindings { get; } = [.. bindings.Where(b => b.IsDriven)];

    public Channel? Find(string key) => _byKey.GetValueOrDefault(key);

    public double[] this[string key] => _byKey[key].Values;

    public double[] Wheel(int index, string what) => this[$"wheel_{Slug.Of(Scenario.Robot.Wheels[index].Name)}_{what}"];

    /// <summary>Index of the first sample at or after a time.</summary>
    public int IndexAt(double t)
    {
        int i = Array.BinarySearch(Time, t - 1e-9);
        return Math.Clamp(i < 0 ? ~i : i, 0, Time.Length - 1);
    }

    /// <summary>Mean over samples from..to, both included.</summary>
    public static double Mean(double[] values, int from, int to) => values.AsSpan(from, to - from + 1).ToArray().Average();
}
