using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>The same run with controllers that coast between their pulses, where the file leaves open what they do and the command is a part of the whole: a controller that coasts turns its
/// motors faster at part command than one that brakes.</summary>
public static class CoastingReview
{
    // Commands above it have hardly any time between pulses [1].
    private const double Full = 0.98;

    /// <summary>Whether it may matter: some controller says nothing of its pulses, and a part of the whole is commanded.</summary>
    public static bool IsAsked(ScenarioSettings scenario) =>
        (scenario.Robot.Controllers.Any(IsSilent) && IsPart(scenario.Manoeuvre)) || (scenario.Opponent is { } other && other.Robot.Controllers.Any(IsSilent) && IsPart(other.Manoeuvre));

    /// <summary>The result with its coasting twin beside it.</summary>
    internal static RunResult Review(RunResult result, WorkBudget work) => IsAsked(result.Scenario) && result.Status != RunStatus.Failed ? result with { Coasting = Simulator.Run(Coasting(result.Scenario), work) } : result;

    /// <summary>The scenario with every silent controller coasting.</summary>
    public static ScenarioSettings Coasting(ScenarioSettings scenario) => scenario with
    {
        Robot = Coasting(scenario.Robot),
        Opponent = scenario.Opponent is { } other ? other with { Robot = Coasting(other.Robot) } : null,
    };

    private static RobotSettings Coasting(RobotSettings robot) => robot with { Controllers = [.. robot.Controllers.Select(c => IsSilent(c) ? c with { BetweenPulses = BetweenPulses.Coast } : c)] };

    private static bool IsSilent(ControllerSettings c) => c is { BetweenPulses: null };

    // either side by itself
    private static bool IsPart(ManoeuvreSettings manoeuvre) => manoeuvre.Commands.Any(c => IsPart(c.Throttle - c.Turn) || IsPart(c.Throttle + c.Turn));

    private static bool IsPart(double side) => Math.Abs(side) is > 0.0 and < Full;
}
