using PushSim.Analysis.Limits;
using PushSim.Analysis.Turning;
using PushSim.Analysis.Wear;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;

namespace PushSim.Analysis.Meaning;

/// <summary>Runs a robot on a fitted tyre: the standing push, a launch and a turn on the spot, each on a level floor where friction is as it was fitted.</summary>
public static class MeaningFinder
{
    /// <summary>Longest launch [s].</summary>
    public const double LaunchTime = 4.0;

    private const double TurnTime = 2.0;
    private const double Start = 0.05;
    private const double Metre = 1.0;

    /// <summary>Where no scenario gives the floor: level, with the dust of most floors of the shelf, an estimate.</summary>
    public static FloorSettings UsualFloor { get; } = new() { Dust = 0.3 };

    /// <summary>Finds all but the shoves.</summary>
    /// <param name="robot">The robot on the tyre, with motors, controllers and a battery.</param>
    /// <param name="tyre">What is known of the tyre.</param>
    /// <param name="stronger">What becomes of the motors; null: they stay.</param>
    /// <param name="floor">The floor; its friction scale, slope and, but for the grip over many turns, dust are left out, since the fitted friction holds for the floor of the pulls.</param>
    /// <param name="life">What is asked of the tyres over many turns; null: the usual.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static TyreMeaning Find(RobotSettings robot, FittedTyre tyre, Func<RobotSettings, RobotSettings>? stronger, FloorSettings floor, TyreLifeSettings? life, CancellationToken cancel)
    {
        FloorSettings level = floor with { FrictionScale = 1.0, SlopeX = 0.0, SlopeY = 0.0, Dust = 0.0 };
        var launch = new ScenarioSettings
        {
            Name = "launch",
            Robot = stronger is null ? robot : stronger(robot),
            Floor = level,
            Manoeuvre = Command(ManoeuvreKind.Launch, 1.0, 0.0, LaunchTime),
        };
        ScenarioSettings turn = launch with { Name = "spot", Manoeuvre = Command(ManoeuvreKind.Spot, 0.0, 1.0, TurnTime), TyreLife = life };
        try
        {
            return Run(new TyreMeaning { Tyre = tyre, IsStronger = stronger is not null }, launch, turn, floor.Dust, cancel);
        }
        catch (SimulationException e)
        {
            return new TyreMeaning { Tyre = tyre, IsStronger = stronger is not null, Stop = RunStop.Refused(e.Message) };
        }
    }

    /// <summary>Motors of more torque at the same no-load speed: resistance divided by the factor. Controllers and battery stay.</summary>
    /// <param name="robot">The robot.</param>
    /// <param name="factor">How many times the stall torque, above 0 [1].</param>
    public static RobotSettings Stronger(RobotSettings robot, double factor) => TurnHelps.Stronger(robot, factor);

    private static TyreMeaning Run(TyreMeaning meaning, ScenarioSettings launch, ScenarioSettings turn, double dust, CancellationToken cancel)
    {
        LimitState state = LimitFinder.State(LimitStateKind.AsInFile, SceneBuilder.InCanonicalOrder(launch), new LimitCondition(), LimitFinder.Hook(launch));
        RunResult straight = Simulator.Run(launch, cancel);
        RunResult spot = Simulator.Run(turn, cancel);
        meaning = meaning with
        {
            MotorForce = state.MotorForce,
            TyreForce = state.TractionPeak,
            Bound = state.Bound,
            FirstMetre = TimeOver(straight),
            Stop = straight.Stop ?? spot.Stop,
        };
        if (spot.Status != RunStatus.Finished || spot.Answers.YawRate is not double rate)
        {
            return meaning;
        }

        bool turns = TurnTrial.Turning(turn, rate);
        var measures = new TurnHelps(turn, WorkBudget.Endless(cancel));
        return meaning with
        {
            YawRate = rate,
            Turn = turns ? TurnReview.Ease(measures.LeastCurrentShare(true), measures.LeastMotorShare(true)) : TurnEase.CannotTurn,
            Chatter = meaning.Tyre.IsMaterialKnown ? ChatterReview.Of(spot, cancel) : ChatterVerdict.Unknown(ChatterDoubt.Material),
            Life = meaning.Tyre.IsMaterialKnown ? GripLife.Of(turn with { Floor = turn.Floor with { Dust = dust } }, null, WorkBudget.Endless(cancel)) : null,
            WearPerMinute = meaning.Tyre.IsMaterialKnown ? WearResult.Of(spot)?.Wheels.Sum(w => w.PerMinute) : null,
        };
    }

    private static ManoeuvreSettings Command(ManoeuvreKind kind, double throttle, double turn, double end) =>
        new() { Kind = kind, Commands = [new CommandPoint(Start, throttle, turn)], EndTime = end };

    private static double? TimeOver(RunResult run)
    {
        Series x = run.Trace.Body.X;
        int k = x.FindIndex(v => v - x[0] >= Metre);
        if (k < 1)
        {
            return null;
        }

        double part = (Metre - (x[k - 1] - x[0])) / (x[k] - x[k - 1]);
        return run.Time[k - 1] + (part * (run.Time[k] - run.Time[k - 1])) - Start;
    }
}
