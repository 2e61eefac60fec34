using PushSim.Analysis.Chance;
using PushSim.Runs;

namespace PushSim.Scenarios.Drawing;

/// <summary>Matches of a scenario file: its toleranced values drawn by contest and number.</summary>
/// <param name="scenario">The scenario.</param>
/// <param name="contest">Settles the draws.</param>
/// <param name="redrawn">Group of causes that differ from those of the same match without it; null for none.</param>
/// <param name="change">What becomes of the robot once its values are drawn; null: nothing.</param>
public sealed class FileMatchSource(DrawableScenario scenario, ContestKey contest, string? redrawn = null, Func<RobotSettings, RobotSettings>? change = null) : IDrawnMatches
{
    private readonly ulong _draws = contest.Draws;
    private DrawFactor[]? _causes;

    /// <inheritdoc/>
    public IReadOnlyList<DrawnQuantity> Quantities { get; } = ErrorCauses.Quantities(scenario.Values);

    /// <inheritdoc/>
    public IReadOnlyList<string> Causes => [.. Factors.Select(f => f.Name)];

    /// <summary>Groups of causes that are drawn anew together, each once.</summary>
    public IReadOnlyList<string> Groups => [.. Factors.Select(f => f.Group).Distinct()];

    /// <inheritdoc/>
    public ScenarioSettings Middle { get; } = Made(scenario.Middle, change);

    /// <summary>Settles the draws.</summary>
    public ContestKey Contest => contest;

    /// <summary>Group of causes that are drawn anew; null for none.</summary>
    public string? Redrawn => redrawn;

    /// <summary>Name of the first robot.</summary>
    public string Robot => scenario.Middle.Robot.Name;

    /// <summary>Name of the opponent.</summary>
    public string Opponent => scenario.Middle.Opponent!.Robot.Name;

    /// <summary>How much later the opponent starts than the first robot, by the middles of what is drawn [s].</summary>
    public double Lead => StartShift.Lead(Middle) + Later("opponent.driver.reaction", Middle.Opponent!.Manoeuvre) - Later("manoeuvre.driver.reaction", Middle.Manoeuvre);

    /// <inheritdoc/>
    public double[] Values(long number)
    {
        double[] values = new double[Quantities.Count];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = Quantities[i].Draw(_draws, number, redrawn);
        }

        return values;
    }

    /// <inheritdoc/>
    public double[] CausesOf(long number) => [.. Factors.Select(f => f.Uniform(_draws, number))];

    /// <inheritdoc/>
    public ScenarioSettings? Match(long number, out string cause) => scenario.With(Values(number), out cause) is ScenarioSettings match ? Made(match, change) : null;

    /// <summary>A match to be run alone and looked at, under a name of its own; null if its draws contradict each other.</summary>
    /// <param name="number">Number of the match, from 0.</param>
    /// <param name="cause">Why there is none; empty if there is.</param>
    public ScenarioSettings? Replay(long number, out string cause) =>
        Match(number, out cause) is ScenarioSettings match ? match with { Name = string.Create(CultureInfo.InvariantCulture, $"{Middle.Name}-match-{number}") } : null;

    // each cause once, in the order of the quantities
    private DrawFactor[] Factors => _causes ??= [.. Quantities.SelectMany(q => q.Factors).DistinctBy(f => f.Name)];

    private double Later(string key, ManoeuvreSettings manoeuvre) => scenario.Values.Where(v => v.Key == key).Sum(v => v.Middle - manoeuvre.Driver.ReactionDelay);

    private static ScenarioSettings Made(ScenarioSettings match, Func<RobotSettings, RobotSettings>? change)
    {
        match = change is null ? match : match with { Robot = change(match.Robot) };
        return match with { Numerics = match.Numerics.ForDraws() };
    }
}
