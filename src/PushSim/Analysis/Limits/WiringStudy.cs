using PushSim.Powertrain;
using PushSim.Simulation;

namespace PushSim.Analysis.Limits;

/// <summary>The same motors wired separately, in parallel and in series, with one wheel in the air or on a slippery patch: which motor takes the power and what
/// the others still push. What lifts the wheel carries its load. The current limit is the same per motor in each wiring.</summary>
internal static class WiringStudy
{
    /// <summary>Friction of the slippery patch as a share of the floor's [1].</summary>
    public const double Slippery = 0.3;

    /// <summary>The cases, and those of which no steady pull was found.</summary>
    public static (IReadOnlyList<WiringCase> Cases, IReadOnlyList<(Wiring Wiring, WheelLoss Case)> Missing) Find(ScenarioSettings scenario, LimitCondition condition, LimitHook hook)
    {
        (string Name, CommandSide Side, List<(int Drive, int Motor)> Motors)[] sides =
        [
            Side(scenario.Robot, CommandSide.Left), Side(scenario.Robot, CommandSide.Right),
        ];
        if (sides.All(s => s.Motors.Select(m => m.Drive).Distinct().Count() < 2))
        {
            return ([], []);
        }

        CommandSide side = sides[0].Motors.Select(m => m.Drive).Distinct().Count() >= 2 ? CommandSide.Left : CommandSide.Right;
        int lost = scenario.Robot.Drives[Side(scenario.Robot, side).Motors[0].Drive].Wheels[0].Wheel;
        List<WiringCase> cases = [];
        List<(Wiring Wiring, WheelLoss Case)> missing = [];
        foreach (Wiring wiring in new[] { Wiring.Single, Wiring.Parallel, Wiring.Series })
        {
            RobotSettings robot = Rewired(scenario.Robot, wiring);
            foreach (WheelLoss loss in Enum.GetValues<WheelLoss>())
            {
                var model = new LimitModel<R1>(scenario with { Robot = robot }, condition, null, 1.0);
                model.Lifted = loss == WheelLoss.Lifted ? lost : -1;
                model.FloorOf[lost] = model.FloorOf[lost] * (loss == WheelLoss.Slippery ? Slippery : 1.0);
                if (Case(model, hook, wiring, loss, lost, side) is WiringCase found)
                {
                    cases.Add(found);
                }
                else
                {
                    missing.Add((wiring, loss));
                }
            }
        }

        return (cases, missing);
    }

    private static (string Name, CommandSide Side, List<(int Drive, int Motor)> Motors) Side(RobotSettings robot, CommandSide side) =>
        (side.ToString(), side, [.. robot.Controllers.Where(c => c.Side == side).SelectMany(c => c.Motors).OrderBy(m => m.Drive).ThenBy(m => m.Motor)]);

    private static RobotSettings Rewired(RobotSettings robot, Wiring wiring)
    {
        List<ControllerSettings> controllers = [];
        foreach (CommandSide side in new[] { CommandSide.Left, CommandSide.Right })
        {
            ControllerSettings[] old = [.. robot.Controllers.Where(c => c.Side == side)];
            if (old.Length == 0)
            {
                continue;
            }

            List<(int Drive, int Motor)> motors = Side(robot, side).Motors;
            double each = old.Average(c => c.CurrentLimit / (c.Wiring == Wiring.Parallel ? c.Motors.Count : 1));
            if (wiring == Wiring.Single || motors.Count == 1)
            {
                controllers.AddRange(motors.Select((m, n) => old[0] with { Name = $"{side} {n + 1}", Motors = [m], Wiring = Wiring.Single, CurrentLimit = each }));
            }
            else
            {
                controllers.Add(old[0] with
                {
                    Name = side.ToString(), Motors = motors, Wiring = wiring, CurrentLimit = wiring == Wiring.Parallel ? each * motors.Count : each,
                });
            }
        }

        return robot with { Controllers = controllers };
    }

    private static WiringCase? Case(LimitModel<R1> model, LimitHook hook, Wiring wiring, WheelLoss loss, int lost, CommandSide side)
    {
        if (StandingPull.Solve(model, hook).Steady is not { } pull)
        {
            return null;
        }

        RobotSettings robot = model.Scenario.Robot;
        double[] force = pull.WheelForces(model, hook, new R1[model.Wheels.Length]);
        List<WiredMotor> motors = [];
        int m = 0;
        foreach (ControllerSettings controller in robot.Controllers)
        {
            foreach ((int drive, int _) in controller.Motors)
            {
                MotorWork<R1> work = model.MotorWork[m++];
                if (controller.Side != side)
                {
                    continue;
                }

                double current = work.Current.Value;
                double power = (work.BackEmf.Value * current) + work.CopperPower.Value + work.BrushPower.Value;
                int[] wheels = model.WheelsOf[drive];
                double lever = model.Wheels[wheels[0]].DriveRatio.Value * model.Wheels[wheels[0]].Radius.Value;
                motors.Add(new WiredMotor(
                    robot.Drives[drive].Name, current, power, 0.0,
                    wheels.Sum(i => force[i]) / robot.Drives[drive].Motors.Count, pull.Omega[drive] * lever));
            }
        }

        double all = motors.Sum(p => p.Power);
        return new WiringCase(wiring, loss, robot.Wheels[lost].Name, pull.Pull(model, hook).Value, [.. motors.Select(p => p with { PowerShare = all > 0.0 ? p.Power / all : 0.0 })]);
    }
}
