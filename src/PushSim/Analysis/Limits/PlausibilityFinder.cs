using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Limits;

/// <summary>Finds the <see cref="Plausibility"/> of robots by the steps of <see cref="LimitFinder"/>, without its gains, curves and match: milliseconds each.</summary>
public static class PlausibilityFinder
{
    // Speeds at which the battery current is looked at [1].
    private const int Speeds = 33;

    /// <summary>Of the robot and its opponent, as the scenario commands them; none of one without motors, controllers or battery, or that does not stand on its wheels.</summary>
    /// <param name="scenario">Checked settings.</param>
    public static IReadOnlyList<Plausibility> All(ScenarioSettings scenario) =>
        [.. new[] { scenario, LimitFinder.OpponentScene(scenario) }.OfType<ScenarioSettings>().Select(s => Find(s)).OfType<Plausibility>()];

    /// <summary>Of a robot alone: full throttle on a level floor.</summary>
    public static IReadOnlyList<Plausibility> Of(RobotSettings robot) => All(LimitFinder.Standing(robot, robot.Name));

    /// <summary>The result of a run with a warning for each doubt of each of its robots.</summary>
    public static RunResult Review(RunResult result)
    {
        ScenarioSettings[] scenes = [.. new[] { result.Scenario, LimitFinder.OpponentScene(result.Scenario) }.OfType<ScenarioSettings>()];
        return result with
        {
            Warnings = [.. result.Warnings, .. scenes.SelectMany((s, k) => (Find(s)?.Doubts ?? []).Select(d => new RunWarning.Doubtful(d) { Robot = k }))],
        };
    }

    /// <summary>Of a scenario's first robot; null where there is none.</summary>
    /// <param name="scenario">Checked settings.</param>
    /// <param name="throttle">Throttle 0..1; null: the greatest that the scenario commands, full if none [1].</param>
    internal static Plausibility? Find(ScenarioSettings scenario, double? throttle = null)
    {
        RobotSettings robot = scenario.Robot;
        if (robot.Drives.All(d => d.Motors.Count == 0) || robot.Battery is null || robot.Controllers.Count == 0)
        {
            return null;
        }

        try
        {
            scenario = SceneBuilder.InCanonicalOrder(scenario);
            var now = new LimitCondition { Throttle = throttle ?? LimitFinder.Throttle(scenario) };
            return Of(scenario, LimitFinder.State(LimitStateKind.AsInFile, scenario, now, LimitFinder.Hook(scenario)));
        }
        catch (SimulationException)
        {
            return null;
        }
    }

    /// <summary>The same, where the state of its limits is known.</summary>
    /// <param name="scenario">Settings in canonical order.</param>
    /// <param name="state">The limits as in the file.</param>
    internal static Plausibility Of(ScenarioSettings scenario, LimitState state)
    {
        var launch = new LaunchEstimate<R1>(new LimitModel<R1>(scenario, state.Condition, null, 1.0));
        return new Plausibility
        {
            Robot = scenario.Robot.Name,
            Throttle = state.Condition.Throttle,
            TopSpeed = state.TopSpeed,
            MotorForce = state.MotorForce,
            TyreForce = state.TractionPeak,
            Pull = state.Pull,
            Binding = state.Binding,
            RearsUpAt = state.Status == PullStatus.RearsUp ? state.RearsUpAt : null,
            Weight = scenario.Robot.Chassis.Mass * scenario.Floor.Gravity,
            FirstMetre = launch.Starts ? launch.TimeFor(1.0).Value : null,
            Current = Enumerable.Range(0, Speeds).Max(k => launch.BatteryCurrent(state.TopSpeed * k / (Speeds - 1.0)).Value),
        };
    }
}
