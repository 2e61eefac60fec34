using PushSim.Chassis;
using PushSim.Powertrain;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>Turns checked settings into the equations' numbers: places relative to the centre of mass, reflected inertias.</summary>
internal static class ModelBuilder
{
    /// <summary>Gravity along floor x, y and down [m/s^2], from the slopes: the board rises by SlopeX towards +x.</summary>
    public static (double X, double Y, double Z) Gravity(FloorSettings floor)
    {
        double g = floor.Gravity;
        double x = -g * Math.Sin(floor.SlopeX);
        double y = -g * Math.Sin(floor.SlopeY);
        return (x, y, Math.Sqrt((g * g) - (x * x) - (y * y)));
    }

    /// <summary>Inertias about the centre of mass, given or those of a uniform body box [kg m^2].</summary>
    public static (double Roll, double Pitch, double Yaw) Inertia(ChassisSettings c)
    {
        double l2 = c.Length * c.Length;
        double w2 = c.Width * c.Width;
        double h2 = c.Height * c.Height;
        return (
            c.RollInertia ?? c.Mass * (w2 + h2) / 12.0,
            c.PitchInertia ?? c.Mass * (l2 + h2) / 12.0,
            c.YawInertia ?? c.Mass * (l2 + w2) / 12.0);
    }

    /// <summary>Canonical order of wheels: front to back, inner to outer, file order within a pair, so that left and right partners
    /// stand side by side in every sum and a symmetric robot stays exactly symmetric.</summary>
    public static RobotSettings InCanonicalOrder(RobotSettings robot)
    {
        double cy = robot.Chassis.CentreOfMassY;
        int[] order = [.. Enumerable.Range(0, robot.Wheels.Count)
            .OrderByDescending(i => robot.Wheels[i].X)
            .ThenBy(i => Math.Abs(robot.Wheels[i].Y - cy))
            .ThenBy(i => i)];
        int[] place = new int[order.Length];
        for (int i = 0; i < order.Length; i++)
        {
            place[order[i]] = i;
        }

        List<DriveSettings> drives = [.. robot.Drives.Select(d => d with
        {
            Wheels = [.. d.Wheels.Select(w => (place[w.Wheel], w.Ratio)).OrderBy(w => w.Item1)],
        })];

        // a wheel in no drive that is no skid turns freely: a drive of its own, without motors
        for (int i = 0; i < order.Length; i++)
        {
            if (!robot.Wheels[order[i]].IsSkid && !drives.Any(d => d.Wheels.Any(w => w.Wheel == i)))
            {
                drives.Add(new DriveSettings { Name = robot.Wheels[order[i]].Name, Wheels = [(i, 1.0)] });
            }
        }

        return robot with { Wheels = [.. order.Select(i => robot.Wheels[i])], Drives = drives };
    }

    /// <summary>The equations of a scenario whose robot is in canonical order.</summary>
    public static RobotEquations<T> Build<T>(ScenarioSettings scenario, StateLayout layout, bool hasLedger = true)
        where T : struct, IReal<T>
    {
        RobotSettings robot = scenario.Robot;
        ChassisSettings c = robot.Chassis;
        (double roll, double pitch, double yaw) = Inertia(c);
        (double gx, double gy, double gz) = Gravity(scenario.Floor);
        int motors = robot.Controllers.Sum(k => k.Motors.Count);
        return new RobotEquations<T>
        {
            Layout = layout,
            HasLedger = hasLedger,
            Wheels = Aligned.Copy([.. robot.Wheels.Select((_, i) => WheelBuilder.Numbers<T>(scenario, i))]),
            Kinds = [.. robot.Wheels.Select((_, i) => WheelBuilder.Kind<T>(scenario, layout, i))],
            Drives = Aligned.Copy([.. robot.Drives.Select(d => DriveBuilder.Numbers<T>(robot, d))]),
            DriveShapes = [.. robot.Drives.Select((_, d) => DriveBuilder.Shape(scenario, layout, d))],
            Motors = Aligned.Copy(ControllerBuilder.Motors<T>(robot)),
            MotorShapes = ControllerBuilder.MotorShapes(robot, layout),
            Controllers = Aligned.Copy([.. robot.Controllers.Select(k => ControllerBuilder.Numbers<T>(robot, k))]),
            ControllerShapes = ControllerBuilder.Shapes(robot, layout),
            Battery = robot.Battery is null || robot.Controllers.Count == 0 ? null : new BatteryEquations<T>(robot.Battery),
            Tether = scenario.Tether is null ? null : Tether<T>(scenario.Tether, c, scenario.Manoeuvre.InitialHeading),
            Underside = Underside<T>(robot, scenario.Floor),
            Patches = [.. scenario.Floor.Patches.Select(p => new PatchParameters<T> { MinX = p.MinX, MaxX = p.MaxX, MinY = p.MinY, MaxY = p.MaxY, FrictionScale = p.FrictionScale })],
            WheelWork = Aligned.Array<WheelWork<T>>(robot.Wheels.Count),
            MotorWork = Aligned.Array<MotorWork<T>>(motors),
            ControllerWork = Aligned.Array<ControllerWork<T>>(robot.Controllers.Count),
            Commands = new RobotCommands<T>(robot.Controllers.Count, robot.Drives.Count),
            HasGiven = scenario.GivenSpeeds.Count > 0,
            Driver = new DriverEquations<T>(scenario.Manoeuvre),
            DriveFriction = Aligned.Array<T>(robot.Drives.Count),
            DriveCapacity = Aligned.Array<T>(robot.Drives.Count),
            Body = new BodyNumbers<T>
            {
                Mass = c.Mass,
                InverseMass = 1.0 / c.Mass,
                InverseRoll = 1.0 / roll,
                InversePitch = 1.0 / pitch,
                InverseYaw = 1.0 / yaw,
                GyroRoll = (yaw - pitch) / roll,
                GyroPitch = (roll - yaw) / pitch,
                GyroYaw = (pitch - roll) / yaw,
                Height = c.CentreOfMassHeight,
                GravityX = gx,
                GravityY = gy,
                GravityZ = gz,
                Downforce = c.Downforce,
                DownforceX = c.DownforceX - c.CentreOfMassX,
                DownforceY = c.DownforceY - c.CentreOfMassY,
                InverseDownforceGap = 1.0 / c.DownforceGap,
                FloorFriction = scenario.Floor.FrictionScale,
                AirTemperature = scenario.Floor.AirTemperature,
            },
        };
    }

    private static Contact.FloorContact<T> Underside<T>(RobotSettings robot, FloorSettings floor)
        where T : struct, IReal<T>
    {
        Contact.UndersideSettings u = robot.OutlineOrBox.Underside;
        return new(SceneBuilder.Body(robot), u with { Friction = floor.FrictionScale * u.Friction });
    }

    private static TetherEquations<T> Tether<T>(TetherSettings t, ChassisSettings c, double heading)
        where T : struct, IReal<T>
    {
        double hookX = t.HookX - c.CentreOfMassX;
        double hookY = t.HookY - c.CentreOfMassY;
        (double sine, double cosine) = Math.SinCos(heading);
        double gapX = t.AnchorX - ((cosine * hookX) - (sine * hookY));
        double gapY = t.AnchorY - ((sine * hookX) + (cosine * hookY));
        double gapZ = t.AnchorHeight - t.HookHeight;
        return new TetherEquations<T>
        {
            Numbers = new TetherNumbers<T>
            {
                HookX = hookX,
                HookY = hookY,
                HookZ = t.HookHeight - c.CentreOfMassHeight,
                AnchorY = t.AnchorY,
                AnchorHeight = t.AnchorHeight,
                FreeLength = Math.Sqrt((gapX * gapX) + (gapY * gapY) + (gapZ * gapZ)) + t.Slack,
                Stiffness = t.Stiffness,
                Damping = t.Damping,
                CentreHeight = c.CentreOfMassHeight,
            },
        };
    }
}
