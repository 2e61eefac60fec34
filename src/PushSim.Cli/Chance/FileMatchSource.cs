using PushSim.Analysis.Chance;
using PushSim.Scenarios;
using PushSim.Scenarios.Drawing;
using PushSim.Simulation;

namespace PushSim.Cli.Chance;

/// <summary>Matches of a scenario file: its toleranced values drawn by seed and number.</summary>
internal sealed class FileMatchSource(DrawableScenario scenario, ulong seed) : IMatchSource
{
    public IReadOnlyList<DrawnQuantity> Quantities { get; } = [.. scenario.Values.Select(Quantity)];

    public ScenarioSettings Middle => scenario.Middle;

    public string Robot => scenario.Middle.Robot.Name;

    public string Opponent => scenario.Middle.Opponent!.Robot.Name;

    public double[] Values(long number)
    {
        double[] values = new double[Quantities.Count];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = Quantities[i].Draw(seed, number);
        }

        return values;
    }

    public ScenarioSettings? Match(long number, out string cause) => scenario.With(Values(number), out cause);

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
