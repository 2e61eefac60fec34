using PushSim.Analysis.Chance;
using PushSim.Simulation;

namespace PushSim.Analysis.Meaning;

/// <summary>Shoves of a robot on a fitted tyre, its friction drawn anew for each with the scatter of the pulls; all else is drawn by another source, the same for
/// every tyre, so that tyres are compared on like matches.</summary>
/// <param name="inner">Matches of the robot as in its file.</param>
/// <param name="tyre">The tyre.</param>
/// <param name="motors">What becomes of the robot's motors.</param>
/// <param name="seed">The seed.</param>
public sealed class FittedShoves(IMatchSource inner, FittedTyre tyre, Func<RobotSettings, RobotSettings> motors, ulong seed) : IMatchSource
{
    // Friction never falls below this share of its mean by a draw [1].
    private const double Least = 0.05;

    // one name for all tyres: the same matches are the slippery ones
    private readonly DrawnQuantity? _factor = tyre.Spread > 0.0 ? new("fitted friction", "", 0.0, 1.0, 2.0 * tyre.Spread, DrawShape.Normal, Least, 2.0) : null;

    /// <summary>The settings with the tyre and the motors put in.</summary>
    /// <param name="scenario">The settings as in the file.</param>
    /// <param name="factor">Multiplies both frictions [1].</param>
    public ScenarioSettings With(ScenarioSettings scenario, double factor = 1.0) => scenario with { Robot = motors(tyre.On(scenario.Robot, factor)) };

    /// <inheritdoc/>
    public ScenarioSettings? Match(long number, out string cause) =>
        inner.Match(number, out cause) is ScenarioSettings s ? With(s, _factor?.Draw(seed, number) ?? 1.0) : null;
}
