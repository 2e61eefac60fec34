using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>What to know before believing a tyre's friction.</summary>
public abstract record PullWarning
{
    private PullWarning()
    {
    }

    /// <summary>A single reading has no interval.</summary>
    /// <param name="Steady">Steady readings [1].</param>
    /// <param name="Peaks">Peak readings [1].</param>
    public sealed record Single(int Steady, int Peaks) : PullWarning;

    /// <summary>Static friction is a lower bound.</summary>
    /// <param name="Cause">Why.</param>
    public sealed record LowerBound(LowerBoundCause Cause) : PullWarning;

    /// <summary>Skids hold either way once the robot stands.</summary>
    /// <param name="Creeping">Sliding friction if it still creeps forward [1].</param>
    /// <param name="DrawnBack">Sliding friction if it is drawn back [1].</param>
    public sealed record Skids(double Creeping, double DrawnBack) : PullWarning;

    /// <summary>No pull slides long enough.</summary>
    public sealed record NoSliding : PullWarning;

    /// <summary>One pull does not show the scatter.</summary>
    public sealed record OnePull : PullWarning;

    /// <summary>The force stops rising before the tyre lets go.</summary>
    /// <param name="Bent">In so many pulls [1].</param>
    /// <param name="Of">Of so many [1].</param>
    public sealed record RampBends(int Bent, int Of) : PullWarning;

    /// <summary>A drift of the cell cannot be seen.</summary>
    public sealed record NoDrift : PullWarning;

    /// <summary>Readings are left out as spikes.</summary>
    /// <param name="Count">How many [1].</param>
    public sealed record Spikes(int Count) : PullWarning;

    /// <summary>The load that was taken is not the robot's weight, though all its wheels are under test.</summary>
    /// <param name="Load">The load taken [N].</param>
    /// <param name="Weight">The robot's weight with its downforce [N].</param>
    public sealed record OtherWeight(double Load, double Weight) : PullWarning;

    /// <summary>Pulls and simulated test tell one friction differently.</summary>
    /// <param name="IsStatic">Whether it is the static friction.</param>
    /// <param name="OfPulls">What the pulls say [1].</param>
    /// <param name="Simulated">What the simulated test says, which is taken [1].</param>
    public sealed record Disagreement(bool IsStatic, Interval OfPulls, Interval Simulated) : PullWarning;

    /// <summary>The height of the tether is not known, on which the load of the tyres depends.</summary>
    public sealed record NoHeight : PullWarning;
}
