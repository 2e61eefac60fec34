using PushSim.Analysis.Chance;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Units;
using PushSim.Simulation;

namespace PushSim.Cli.Matches;

/// <summary>Matches of a scenario file: its toleranced values drawn by seed and number.</summary>
/// <param name="scenario">The scenario.</param>
/// <param name="seed">The seed.</param>
/// <param name="redrawn">Key of values that differ from those of the same match without it; null for none.</param>
internal sealed class FileMatchSource(DrawableScenario scenario, ulong seed, string? redrawn = null) : IMatchSource
{
    // The redrawn values are those of a match so far off that nobody runs it [1].
    private const long FarOff = 1L << 40;

    public IReadOnlyList<DrawnQuantity> Quantities { get; } = [.. scenario.Values.Select(Quantity)];

    /// <summary>The scenario without draws, as accurate as the matches.</summary>
    public ScenarioSettings Middle { get; } = Accuracy(scenario, scenario.Middle);

    public string Robot => scenario.Middle.Robot.Name;

    public string Opponent => scenario.Middle.Opponent!.Robot.Name;

    public double[] Values(long number)
    {
        double[] values = new double[Quantities.Count];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = Quantities[i].Draw(seed, Quantities[i].Key == redrawn ? number + FarOff : number);
        }

        return values;
    }

    public ScenarioSettings? Match(long number, out string cause) => scenario.With(Values(number), out cause) is ScenarioSettings match ? Accuracy(scenario, match) : null;

    // many matches need not be as accurate as one run, unless the file says so
    private static ScenarioSettings Accuracy(DrawableScenario scenario, ScenarioSettings match) => scenario.StatesAccuracy
        ? match
        : match with { Numerics = match.Numerics with { Method = NumericsSettings.OfDraws.Method, Tolerance = NumericsSettings.OfDraws.Tolerance } };

    private static DrawnQuantity Quantity(TolerancedValue v) => new(
        v.Key,
        v.Part,
        v.OwnShare,
        v.Middle,
        v.Tolerance,
        v.Spread switch { Spread.Uniform => DrawShape.Uniform, Spread.Triangular => DrawShape.Triangular, _ => DrawShape.Normal },
        v.Least,
        v.Most);
}
