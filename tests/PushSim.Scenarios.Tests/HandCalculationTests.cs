using System.Collections.Concurrent;
using System.Globalization;
using PushSim.Analysis.Limits;
using PushSim.Chassis;
using PushSim.Powertrain;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Starters;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>
/// Twenty robots by pen and paper beside `limits`: statics of a rigid body on springs, one motor equation, one battery equation, Coulomb friction. Every number
/// is computed here from what the file says, by none of the engine's code. What a hand leaves out is
/// less than the 3 % allowed: sliding tyres hold up to 0.5 % less, since they also roll and slide at a finite speed; motors without thermal data (badger, vole,
/// wombat) push 1.8 % less, since the engine leaves their resistance at the 25 degrees Celsius of its statement where the hand takes that of the air.
/// </summary>
public class HandCalculationTests(ITestOutputHelper output)
{
    private const double Allowed = 0.03;
    private const double Gravity = 9.80665;
    private const double Air = 20.0;

    // copper, resistance rise per kelvin at 20 degrees Celsius (IEC 60028, from memory) [1/K]
    private const double Copper = 0.00393;

    // four answers are of one search; the fifth is its state at another tether
    private static readonly ConcurrentDictionary<string, Lazy<RobotSettings>> s_robots = new();
    private static readonly ConcurrentDictionary<(string Robot, bool IsTethered), Lazy<LimitState>> s_limits = new();

    private enum Answer
    {
        Stall,
        Sag,
        Grip,
        TopSpeed,
        Tip,
    }

    /// <summary>The shipped ones, then starters: grams, wheels, words of motor and tyre.</summary>
    public static TheoryData<string> Robots =>
    [
        "aardvark", "badger", "gopher", "mole", "pangolin", "vole", "wombat",
        "75|2||", "150|4||printed TPU 95A", "300|2||", "450|4||silicone", "700|4|16 mm|", "1000|6||", "1200|4||", "1500|8||", "2000|4|25 mm|polyurethane", "3000|6|30 mm|", "4500|4|37 mm|rubber", "6000|8|37 mm|", "1360|4|20 mm|foam",
    ];

    [Theory]
    [MemberData(nameof(Robots))]
    public void Motors_stalled(string robot) => Compare(robot, Answer.Stall);

    [Theory]
    [MemberData(nameof(Robots))]
    public void Battery_with_all_motors_stalled(string robot) => Compare(robot, Answer.Sag);

    [Theory]
    [MemberData(nameof(Robots))]
    public void Grip_of_sliding_tyres(string robot) => Compare(robot, Answer.Grip);

    [Theory]
    [MemberData(nameof(Robots))]
    public void Top_speed(string robot) => Compare(robot, Answer.TopSpeed);

    [Theory]
    [MemberData(nameof(Robots))]
    public void Pull_at_which_it_rears_up(string robot) => Compare(robot, Answer.Tip);

    private void Compare(string name, Answer answer)
    {
        RobotSettings robot = s_robots.GetOrAdd(name, n => new Lazy<RobotSettings>(() => Read(n))).Value;
        LimitState now = s_limits.GetOrAdd((name, answer == Answer.Tip), _ => new Lazy<LimitState>(() => Limits(robot, answer == Answer.Tip))).Value;
        (double byHand, double? told) = answer switch
        {
            Answer.Stall => (Stalled(robot).Force, now.MotorForce),
            Answer.Sag => (Stalled(robot).Bus, now.StallVoltage),
            Answer.Grip => (Grip(robot), now.TractionSliding),
            Answer.TopSpeed => (TopSpeed(robot), now.TopSpeed),
            _ => (robot.Chassis.Mass * Gravity * (robot.Chassis.CentreOfMassX - Rear(robot)) / TipHeight(robot), (double?)now.RearsUpAt),
        };
        output.WriteLine(FormattableString.Invariant($"{name} {answer}: {byHand:0.0000} by hand, {told:0.0000} told, {100.0 * ((told / byHand) - 1.0):+0.00;-0.00} %"));
        Assert.NotNull(told);
        Assert.InRange(told.Value, (1.0 - Allowed) * byHand, (1.0 + Allowed) * byHand);
    }

    private static LimitState Limits(RobotSettings robot, bool isTethered)
    {
        ScenarioSettings scenario = LimitFinder.Standing(robot, "hand");
        if (!isTethered)
        {
            return LimitFinder.Find(scenario).Now;
        }

        scenario = SceneBuilder.InCanonicalOrder(scenario with
        {
            Tether = new TetherSettings { HookX = Rear(robot), HookHeight = TipHeight(robot), AnchorX = Rear(robot) - 1.0, AnchorHeight = TipHeight(robot), Stiffness = 5e3 },
        });
        return LimitFinder.State(LimitStateKind.AsInFile, scenario, new LimitCondition { Throttle = LimitFinder.Throttle(scenario) }, LimitFinder.Hook(scenario));
    }

    private static RobotSettings Read(string name)
    {
        if (!name.Contains('|', StringComparison.Ordinal))
        {
            return Robot(Path.Combine(Generated.Root(), "scenarios", "robots", name + ".toml"));
        }

        string[] asked = name.Split('|');
        double mass = 1e-3 * double.Parse(asked[0], CultureInfo.InvariantCulture);
        int wheels = int.Parse(asked[1], CultureInfo.InvariantCulture);
        var design = new StarterDesign(
            mass, wheels, StarterParts.MotorOf(asked[2].Length > 0 ? asked[2] : null, mass, wheels, out string noMotor)!, StarterParts.TyreOf(asked[3].Length > 0 ? asked[3] : null, out string noTyre)!);
        Assert.Equal("", noMotor + noTyre);
        string file = Path.Combine(Path.GetTempPath(), $"hand-{Guid.NewGuid():N}.toml");
        File.WriteAllText(file, new StarterRobot(design, isLocked: false).Text());
        try
        {
            return Robot(file);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static RobotSettings Robot(string file)
    {
        ReadResult read = ScenarioReader.Check(file);
        Assert.DoesNotContain(read.Problems, p => p.Severity == Severity.Error);
        return read.Robot!;
    }

    private static double Rear(RobotSettings robot) => robot.Wheels.Min(w => w.X);

    // a tether so high that the front lifts at two thirds of what the rear tyres hold
    private static double TipHeight(RobotSettings robot) =>
        1.5 * (robot.Chassis.CentreOfMassX - Rear(robot)) / robot.Wheels.Where(w => w.X <= Rear(robot) + 1e-6).Min(w => w.Tyre.KineticFriction);

    // loads of a rigid body on springs, pulled back at a height: N_i = k_i (c + s x_i) with sum N = W and sum N x = W x_cm - F h
    private static double[] Loads(RobotSettings robot, double force)
    {
        ChassisSettings body = robot.Chassis;
        double weight = body.Mass * Gravity;
        double moment = (weight * body.CentreOfMassX) - (force * body.CentreOfMassHeight) + (body.Downforce * body.DownforceX);
        weight += body.Downforce;
        double k0 = robot.Wheels.Sum(w => w.Tyre.VerticalStiffness);
        double k1 = robot.Wheels.Sum(w => w.Tyre.VerticalStiffness * w.X);
        double k2 = robot.Wheels.Sum(w => w.Tyre.VerticalStiffness * w.X * w.X);
        double determinant = (k0 * k2) - (k1 * k1);
        double c = ((weight * k2) - (moment * k1)) / determinant;
        double s = ((moment * k0) - (weight * k1)) / determinant;
        return [.. robot.Wheels.Select(w => Math.Max(0.0, w.Tyre.VerticalStiffness * (c + (s * w.X))))];
    }

    // mu N of the driven wheels under the loads that this very force leaves them
    private static double Grip(RobotSettings robot)
    {
        bool[] isDriven = [.. robot.Wheels.Select((_, i) => robot.Drives.Any(d => d.Motors.Count > 0 && d.Wheels.Any(w => w.Wheel == i)))];
        double force = 0.0;
        for (int pass = 0; pass < 200; pass++)
        {
            double[] load = Loads(robot, force);
            force = robot.Wheels.Select((w, i) => isDriven[i] && load[i] > 0.0 ? Friction(w.Tyre, load[i]) * load[i] : 0.0).Sum();
        }

        return force;
    }

    private static double Friction(TyreSettings tyre, double load) =>
        (tyre.FrictionTable is { } table ? table[^1].Friction : tyre.KineticFriction) * Math.Pow(load / (tyre.TreadArea * tyre.ReferenceLoad), -tyre.LoadExponent);

    private static double Open(BatterySettings battery)
    {
        int above = Math.Max(1, battery.CellVoltage.ToList().FindIndex(p => p.Charge >= battery.InitialCharge));
        ((double s0, double v0), (double s1, double v1)) = (battery.CellVoltage[above - 1], battery.CellVoltage[above]);
        return battery.Cells * (v0 + ((v1 - v0) * (battery.InitialCharge - s0) / (s1 - s0)));
    }

    private static double Inner(BatterySettings battery) =>
        battery.Resistance * (1.0 + (battery.EmptyResistance * Math.Exp(-battery.InitialCharge / battery.EmptyShare))) * Math.Exp(-battery.ResistanceFall * (Air - 25.0));

    private static double Winding(MotorSettings motor) => motor.Resistance * (1.0 + (Copper * (Air - 20.0))) / (1.0 + (Copper * (motor.ReferenceTemperature - 20.0)));

    // motor current of a controller at full throttle: Ohm's law, or its limit shared by the motors beside each other; and its power
    private static (double Each, double Power) Current(RobotSettings robot, ControllerSettings controller, double bus, Func<(int Drive, int Motor), double> emf)
    {
        MotorSettings motor = robot.Drives[controller.Motors[0].Drive].Motors[controller.Motors[0].Motor].Motor;
        int beside = controller.Wiring == Wiring.Series ? 1 : controller.Motors.Count;
        int inRow = controller.Wiring == Wiring.Series ? controller.Motors.Count : 1;
        double back = controller.Motors.Average(emf);
        double free = (bus - (inRow * (back + motor.BrushDrop))) / ((inRow * Winding(motor)) + (beside * controller.OnResistance));
        double each = Math.Min(free, controller.CurrentLimit / beside);
        double power = (controller.OnResistance * each * beside * each * beside) + (beside * inRow * each * (back + motor.BrushDrop + (each * Winding(motor))));
        return (each, power);
    }

    // the bus: V = V_open - R P(V)/V, from above
    private static double Bus(RobotSettings robot, Func<(int Drive, int Motor), double> emf)
    {
        double open = Open(robot.Battery!);
        double bus = open;
        for (int pass = 0; pass < 500; pass++)
        {
            double now = bus;
            bus = (0.5 * bus) + (0.5 * (open - (Inner(robot.Battery!) * robot.Controllers.Sum(c => Current(robot, c, now, emf).Power / now))));
        }

        return bus;
    }

    // gears take (1 - eta) of the torque, dry friction the rest
    private static double WheelForce(RobotSettings robot, double bus, Func<(int Drive, int Motor), double> emf, double share)
    {
        double force = 0.0;
        foreach (ControllerSettings controller in robot.Controllers)
        {
            double each = Current(robot, controller, bus, emf).Each;
            foreach ((int d, int m) in controller.Motors)
            {
                DriveSettings drive = robot.Drives[d];
                (MotorSettings motor, double ratio) = drive.Motors[m];
                double speed = emf((d, m)) / motor.TorqueConstant;
                double torque = ratio * ((drive.GearEfficiency * motor.TorqueConstant * each * (share == 0.0 ? motor.StandstillTorqueShare : 1.0)) - motor.FrictionTorque - (motor.ViscousFriction * speed));
                force += torque * drive.Wheels[0].Ratio / robot.Wheels[drive.Wheels[0].Wheel].Radius;
            }
        }

        return force - robot.Drives.Where(d => d.Motors.Count > 0).Sum(d => d.FrictionTorque * d.Wheels[0].Ratio / robot.Wheels[d.Wheels[0].Wheel].Radius);
    }

    private static (double Force, double Bus) Stalled(RobotSettings robot)
    {
        double bus = Bus(robot, _ => 0.0);
        return (WheelForce(robot, bus, _ => 0.0, 0.0), bus);
    }

    // where the motors give no more than rolling takes, skids their friction
    private static double TopSpeed(RobotSettings robot)
    {
        double[] load = Loads(robot, 0.0);
        double drag = robot.Wheels.Select((w, i) => (w.IsSkid ? w.Tyre.KineticFriction : w.Tyre.RollingResistance) * load[i]).Sum();
        double low = 0.0;
        double high = 100.0;
        for (int pass = 0; pass < 60; pass++)
        {
            double v = 0.5 * (low + high);
            double Emf((int Drive, int Motor) m)
            {
                DriveSettings drive = robot.Drives[m.Drive];
                return drive.Motors[m.Motor].Motor.TorqueConstant * drive.Motors[m.Motor].Ratio * drive.Wheels[0].Ratio * v / robot.Wheels[drive.Wheels[0].Wheel].Radius;
            }

            (low, high) = WheelForce(robot, Bus(robot, Emf), Emf, 1.0) > drag ? (v, high) : (low, v);
        }

        return 0.5 * (low + high);
    }
}
