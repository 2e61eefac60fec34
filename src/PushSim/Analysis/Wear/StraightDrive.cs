using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Wear;

/// <summary>A straight drive of a scenario's robot on its floor, to set its wear beside a turn's.</summary>
public static class StraightDrive
{
    // Long enough for these robots to reach their speed [s].
    private const double Duration = 2.5;

    private const double Start = 0.05;

    // Where the manoeuvre has no command to take the throttle from [1].
    private const double UsualThrottle = 0.6;

    /// <summary>The drive: as much command as the manoeuvre's strongest, straight ahead, without tether, wall or opponent.</summary>
    public static ScenarioSettings Of(ScenarioSettings scenario)
    {
        double throttle = scenario.Manoeuvre.Commands.Select(c => Math.Max(Math.Abs(c.Throttle), Math.Abs(c.Turn))).DefaultIfEmpty(0.0).Max();
        return scenario with
        {
            Name = "straight",
            Tether = null,
            Opponent = null,
            Walls = [],
            Floor = scenario.Floor with { SlopeX = 0.0, SlopeY = 0.0 },
            Manoeuvre = new ManoeuvreSettings
            {
                Kind = ManoeuvreKind.Launch,
                EndTime = Duration,
                Commands = [new CommandPoint(Start, 0.0, 0.0), new CommandPoint(Start + 0.5, throttle > 0.0 ? Math.Min(1.0, throttle) : UsualThrottle, 0.0, Ramp: true)],
            },
        };
    }

    /// <summary>Runs it; null for a robot that nothing drives.</summary>
    public static RunResult? Run(ScenarioSettings scenario, CancellationToken cancel) => Run(scenario, WorkBudget.Endless(cancel));

    /// <summary>The same as a part of more work; null where it needs more than is left, too.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="work">What is left for it.</param>
    public static RunResult? Run(ScenarioSettings scenario, WorkBudget work)
    {
        RunResult? run = null;
        WorkBudget.Try(() => run = scenario.Robot.Controllers.Count == 0 ? null : Simulator.Run(Of(scenario), work));
        return run?.Status == RunStatus.Finished ? run : null;
    }
}
