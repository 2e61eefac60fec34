using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Season;

/// <summary>Friction of one tyre on a floor in one state.</summary>
/// <param name="Tyre">The tyre.</param>
/// <param name="State">State of the floor.</param>
/// <param name="Friction">Friction at <see cref="Load"/> with its interval, the day's spread in it; of a fading series the fresh value [1].</param>
/// <param name="Load">Load that it holds at [N].</param>
/// <param name="Pulls">Pulls [1].</param>
/// <param name="Days">Days [1].</param>
/// <param name="Freedom">Degrees of freedom of the interval [1].</param>
public sealed record SeasonGroup(string Tyre, string State, Interval Friction, double Load, int Pulls, int Days, double Freedom)
{
    /// <summary>How the friction fades over a series of pulls; null if no series was counted or it does not fade.</summary>
    public Fading? Fading { get; init; }

    /// <summary>Mean of each day in the order of days, as it was measured [1].</summary>
    public IReadOnlyList<(int Day, double Friction, int Pulls)> ByDay { get; init; } = [];
}
