namespace PushSim.Analysis.Season;

/// <summary>One pull of a season, as the fit takes it.</summary>
/// <param name="Tyre">The tyre.</param>
/// <param name="State">State of the floor: what is told apart by name.</param>
/// <param name="Day">Number of the day, any count that differs from day to day [1].</param>
/// <param name="Load">Force between tyres and floor [N].</param>
/// <param name="Force">Force that was pulled: sliding or at breakaway [N].</param>
public sealed record SeasonPull(string Tyre, string State, int Day, double Load, double Force)
{
    /// <summary>What had gone over the floor since it was in its state: pulls [1] or metres [m]; null if nobody counted.</summary>
    public double? Count { get; init; }

    /// <summary>Whether <see cref="Count"/> is in metres.</summary>
    public bool IsInMetres { get; init; }

    /// <summary>Logarithm of the friction [1].</summary>
    public double LogFriction => Math.Log(Force / Load);
}
