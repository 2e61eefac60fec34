using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>What a shove owes to who moves first: it is run again with one robot a tenth of a second ahead of the other and with both together, and with more grip and more mass.</summary>
public static class StartReview
{
    // Grip and mass that a tenth of a second is compared with, as multiples [1].
    private const double More = 1.1;

    // A line that nobody reaches [m].
    private const double FarLine = 1000.0;

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
        MatchOutcome[] ends = MatchSet.Play(all, work.Part(0.5));
        // those that the line did not end go the same way without it
        int[] lined = [.. Enumerable.Range(0, ends.Length).Where(i => Ending(ends[i]) == ShoveEnding.Line)];
        bool isWithoutLine = lined.Length > 0;
        MatchOutcome[] free = [.. ends];
        MatchOutcome[] further = isWithoutLine ? MatchSet.Play([.. lined.Select(i => all[i] with { Shove = all[i].Shove with { Line = FarLine } })], work.Part(0.5)) : [];
        for (int k = 0; k < lined.Length; k++)
        {
            free[lined[k]] = further[k];
        }

        double?[] ground = [.. free.Select(e => Ending(e) is null or ShoveEnding.Tips ? (double?)null : e.GroundGained)];
        var worth = new StartWorth(0.5 * (ground[0] - ground[2]), ground[3] - ground[1], ground[4] - ground[1], isWithoutLine);
        return new StartStudy([.. s_orders.Select((o, i) => new StartCase(o, Ending(ends[i]), ends[i].Winner, ends[i].GroundGained, ends[i].EndTime))], worth);
    }

    private static ShoveEnding? Ending(in MatchOutcome end) => end.Status == RunStatus.Failed ? null : end.Ending;

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
