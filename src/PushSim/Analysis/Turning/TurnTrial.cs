using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Turning;

/// <summary>Tries of a changed robot in the same turn, from rest, and what is read off them.</summary>
/// <param name="Turns">Whether it turns.</param>
/// <param name="YawRate">Mean yaw rate of the settled part [rad/s].</param>
/// <param name="ScrubMoment">Moment of scrub against the turn [N m].</param>
/// <param name="Current">Mean battery current of the settled part [A].</param>
internal sealed record TurnTrial(bool Turns, double YawRate, double ScrubMoment, double Current)
{
    // Enough for means [1/s].
    private const double SampleRate = 250.0;

    // A robot that reaches less than this share of the yaw rate that its motors would give it off the floor stands [1].
    private const double LeastShare = 0.02;

    /// <summary>Runs it. A run that tips or fails does not turn.</summary>
    public static TurnTrial Of(ScenarioSettings scenario, WorkBudget work)
    {
        RunResult run = Simulator.Run(scenario with { Numerics = scenario.Numerics with { SampleRate = SampleRate } }, work);
        if (run.Status != RunStatus.Finished)
        {
            return new TurnTrial(false, 0.0, 0.0, 0.0);
        }

        double rate = run.Answers.YawRate ?? 0.0;
        int n = run.Time.Length;
        Series? current = run.Trace.Battery?.Current;
        return new TurnTrial(Turning(run.Scenario, rate), rate, run.Answers.ScrubMoment ?? 0.0, current is null ? 0.0 : current[^Math.Max(1, 2 * n / 5)..].Average());
    }

    /// <summary>Whether a yaw rate counts as turning.</summary>
    public static bool Turning(ScenarioSettings scenario, double yawRate) => Math.Abs(yawRate) > LeastShare * Math.Abs(FreeYawRate(scenario));

    /// <summary>Yaw rate that the commanded motors would give with wheels that neither slip nor carry anything, from no-load speeds [rad/s].</summary>
    public static double FreeYawRate(ScenarioSettings scenario)
    {
        RobotSettings robot = scenario.Robot;
        CommandPoint? point = scenario.Manoeuvre.Commands.LastOrDefault(c => c.Throttle != 0.0 || c.Turn != 0.0);
        if (point is null || robot.Battery is null)
        {
            return 0.0;
        }

        double voltage = DriveBuilder.PackVoltage(robot);
        double most = Math.Max(1.0, Math.Abs(point.Throttle) + Math.Abs(point.Turn));
        (double Speed, double Y, int Count) left = default;
        (double Speed, double Y, int Count) right = default;
        foreach (ControllerSettings controller in robot.Controllers)
        {
            double sign = controller.Side == CommandSide.Left ? -1.0 : 1.0;
            double duty = (point.Throttle + (sign * point.Turn)) / most;
            foreach ((int drive, int motor) in controller.Motors)
            {
                (MotorSettings m, double ratio) = robot.Drives[drive].Motors[motor];
                foreach ((int wheel, double wheelRatio) in robot.Drives[drive].Wheels)
                {
                    ref var side = ref controller.Side == CommandSide.Left ? ref left : ref right;
                    double omega = duty * voltage / (m.TorqueConstant * ratio);
                    side = (side.Speed + (omega * wheelRatio * robot.Wheels[wheel].Radius), side.Y + robot.Wheels[wheel].Y, side.Count + 1);
                }
            }
        }

        return left.Count == 0 || right.Count == 0 ? 0.0
            : ((right.Speed / right.Count) - (left.Speed / left.Count)) / ((left.Y / left.Count) - (right.Y / right.Count));
    }

    /// <summary>The robot with its tyres changed, wheel by wheel.</summary>
    public static RobotSettings WithTyres(RobotSettings robot, Func<WheelSettings, TyreSettings> tyre) =>
        robot with { Wheels = [.. robot.Wheels.Select(w => w with { Tyre = tyre(w) })] };
}
