using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>What a shove owes to who moves first: it is run again with one robot a tenth of a second ahead of the other and with both together, and with more grip and more mass.</summary>
public static class StartReview
{
    // Grip and mass that a tenth of a second is compared with, as multiples [1].
    private const double More = 1.1;

    private static readonly StartOrder[] s_orders = [StartOrder.First, StartOrder.Together, StartOrder.Last];

    /// <summary>The result with the study; results without a shove come back as they are.</summary>
    /// <exception cref="OperationCanceledException">The runs were cancelled.</exception>
    public static RunResult Review(RunResult result, CancellationToken cancel = default) => result.Shove is null ? result : result with { Start = Of(result.Scenario, cancel) };

    /// <summary>The study of a shove, as accurate as drawn matches are.</summary>
    /// <param name="shove">Settings with an opponent.</param>
    /// <param name="cancel">Stops the runs.</param>
    /// <exception cref="OperationCanceledException">The runs were cancelled.</exception>
    public static StartStudy Of(ScenarioSettings shove, CancellationToken cancel = default) => Of(shove, WorkBudget.Endless(cancel));

    /// <summary>The same as a part of more work.</summary>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    internal static StartStudy Of(ScenarioSettings shove, WorkBudget work)
    {
        ScenarioSettings drawn = shove with { Numerics = shove.Numerics.ForDraws() with { Precision = Precision.Double } };
        double lead = StartShift.Lead(drawn);
        ScenarioSettings[] starts = [.. s_orders.Select(o => StartShift.With(drawn, o, lead))];
        ScenarioSettings together = starts[(int)StartOrder.Together];
        ScenarioSettings[] all = [.. starts, together with { Robot = Gripping(together.Robot) }, together with { Robot = Heavier(together.Robot) }];
        MatchOutcome[] ends = MatchSet.Play([.. all.Select(m => m with { Shove = m.Shove with { PlaysOn = true } })], work);
        bool isWithoutLine = ends.Any(e => e.Beyond is not null);
        double?[] ground = [.. ends.Select(Ground)];
        var worth = new StartWorth(0.5 * (ground[0] - ground[2]), ground[3] - ground[1], ground[4] - ground[1], isWithoutLine);
        return new StartStudy([.. s_orders.Select((o, i) => new StartCase(o, Ending(ends[i]), ends[i].Winner, ends[i].GroundGained, ends[i].EndTime))], worth);
    }

    private static ShoveEnding? Ending(in MatchOutcome end) => end.Status == RunStatus.Failed ? null : end.Ending;

    // to the end of its time, whatever line lay before that; null where it does not come there
    private static double? Ground(MatchOutcome end)
    {
        (ShoveEnding? ending, double ground) = end.Beyond is { } beyond ? (beyond.Ending, beyond.GroundGained) : (Ending(end), end.GroundGained);
        return ending is null or ShoveEnding.Tips ? null : ground;
    }

    private static RobotSettings Gripping(RobotSettings robot) => robot with { Wheels = [.. robot.Wheels.Select(w => w with { Tyre = w.Tyre.Gripping(More) })] };

    // spread as the mass was
    private static RobotSettings Heavier(RobotSettings robot) => robot with
    {
        Chassis = robot.Chassis with
        {
            Mass = More * robot.Chassis.Mass, RollInertia = More * robot.Chassis.RollInertia, PitchInertia = More * robot.Chassis.PitchInertia, YawInertia = More * robot.Chassis.YawInertia,
        },
    };
}
