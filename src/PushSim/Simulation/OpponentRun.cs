namespace PushSim.Simulation;

/// <summary>The second robot's part of a run.</summary>
/// <param name="Robot">The robot.</param>
/// <param name="Channels">Its history by key, in its own floor frame (the first robot's turned by half a turn).</param>
/// <param name="Answers">Its answers, each null where it does not apply.</param>
/// <param name="Limits">What limited its push, moment by moment.</param>
public sealed record OpponentRun(RobotSettings Robot, IReadOnlyList<Channel> Channels, RunAnswers Answers, IReadOnlyList<LimitSpan> Limits)
{
    /// <summary>The channel of that key. Throws <see cref="KeyNotFoundException"/> if absent.</summary>
    public Channel this[string key] =>
        Channels.FirstOrDefault(c => c.Key == key) ?? throw new KeyNotFoundException($"no channel '{key}'");
}

/// <summary>What limits a push.</summary>
public enum PushLimit
{
    /// <summary>Nothing is commanded.</summary>
    Idle,

    /// <summary>Driven tyres slide at the end of their grip.</summary>
    Tyres,

    /// <summary>Controllers hold the current at their limit.</summary>
    Controllers,

    /// <summary>The motors give what they can.</summary>
    Motors,

    /// <summary>The battery's voltage has broken down under the load.</summary>
    Battery,

    /// <summary>A driven wheel is off the floor.</summary>
    LiftedWheels,
}

/// <summary>A stretch of time with one limit.</summary>
/// <param name="From">Its start [s].</param>
/// <param name="To">Its end [s].</param>
/// <param name="Limit">What limited the push.</param>
public sealed record LimitSpan(double From, double To, PushLimit Limit);
