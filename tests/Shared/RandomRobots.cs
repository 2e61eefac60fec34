using PushSim.Chassis;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Tests;

/// <summary>Random but sane robots and scenarios from a seed; the same seed gives the same scenario.</summary>
internal sealed class RandomRobots
{
    private readonly Random _random;

    private RandomRobots(int seed) => _random = new Random(seed);

    /// <summary>A scenario of any kind.</summary>
    public static ScenarioSettings Scenario(int seed)
    {
        var r = new RandomRobots(seed);
        RobotSettings robot = r.Robot();
        return r.Scene(robot);
    }

    private double Between(double low, double high) => low + (_random.NextDouble() * (high - low));

    private double Log(double low, double high) => low * Math.Pow(high / low, _random.NextDouble());

    private bool Chance(double p) => _random.NextDouble() < p;

    private TyreSettings Tyre(double load)
    {
        double mu = Between(0.3, 1.2);
        double kc = Log(800.0, 8000.0);
        double mass = Between(0.002, 0.006);
        return new TyreSettings
        {
            Name = "random",
            StaticFriction = mu,
            KineticFriction = mu * Between(0.7, 1.0),
            SlipSpeed = Between(0.2, 1.0),
            BreakawayDeflection = Between(0.2e-3, 0.6e-3),
            BodyStiffness = kc,
            BodyDamping = Between(0.3, 0.8) * Math.Sqrt(kc * mass),
            TreadMass = mass,
            VerticalStiffness = load / Between(0.2e-3, 0.8e-3),
            VerticalDamping = Between(1.0, 4.0),
            RollingRenewal = Between(60.0, 250.0),
            RollingResistance = Chance(0.5) ? Between(0.005, 0.04) : 0.0,
            LoadExponent = Chance(0.3) ? Between(-0.15, 0.25) : 0.0,
            ReferenceLoad = load,
            FrictionRise = Chance(0.2) ? 0.02 : 0.0,
            FrictionTable = Chance(0.2) ? [(0.0, mu), (0.1, 0.95 * mu), (0.5, 0.85 * mu), (2.0, 0.8 * mu)] : null,
            FoulingDistance = Chance(0.3) ? Between(0.5, 5.0) : 0.0,
            DustyFriction = Between(0.5, 1.0),
            SpecificWear = Chance(0.3) ? 0.2e-9 : 0.0,
        };
    }

    private MotorSettings Motor(double scale)
    {
        bool hasHeat = Chance(0.3);
        return new MotorSettings
        {
            Name = "random motor",
            TorqueConstant = 0.007 * Between(0.7, 1.4),
            Resistance = Between(1.5, 4.0) / scale,
            FrictionTorque = Between(0.0, 0.001),
            ViscousFriction = Chance(0.5) ? 1e-7 : 0.0,
            RotorInertia = Between(1e-7, 5e-7),
            BrushDrop = Chance(0.3) ? Between(0.2, 0.8) : 0.0,
            WindingToCaseThermalResistance = hasHeat ? 10.0 : 0.0,
            CaseToAirThermalResistance = 30.0,
            WindingHeatCapacity = 3.0,
            CaseHeatCapacity = 12.0,
        };
    }

    private RobotSettings Robot()
    {
        double mass = Log(0.3, 4.0);
        double size = 0.13 * Math.Cbrt(mass / 1.36);
        int axles = _random.Next(2, 5);
        double track = size * Between(0.9, 1.4);
        double wheelbase = size * Between(0.6, 1.2);
        double load = mass * 9.8 / (2.0 * axles);
        TyreSettings tyre = Tyre(load);
        List<WheelSettings> wheels = [];
        double radius = Between(0.02, 0.03);
        for (int a = 0; a < axles; a++)
        {
            foreach (int side in new[] { 1, -1 })
            {
                wheels.Add(new WheelSettings
                {
                    Name = $"wheel {a} {(side > 0 ? "left" : "right")}",
                    X = wheelbase * (0.5 - ((double)a / (axles - 1))),
                    Y = side * track / 2.0,
                    Radius = radius,
                    SpinInertia = Between(5e-6, 2e-5),
                    Tyre = tyre,
                });
            }
        }

        double ratio = Between(15.0, 30.0);
        MotorSettings motor = Motor(Math.Sqrt(mass));
        bool perSide = Chance(0.4);
        double efficiency = Between(0.65, 1.0);
        double hold = Between(1.5, 3.0) * mass * 9.8 * radius * 1.2;
        int motors = perSide && Chance(0.5) ? 2 : 1;
        List<DriveSettings> drives = [];
        foreach (CommandSide side in new[] { CommandSide.Left, CommandSide.Right })
        {
            int first = side == CommandSide.Left ? 0 : 1;
            int[] own = [.. Enumerable.Range(0, axles).Select(a => (2 * a) + first)];
            foreach (int[] group in perSide ? [own] : own.Select(w => new[] { w }))
            {
                drives.Add(new DriveSettings
                {
                    Name = $"{side} {group[0]}",
                    Wheels = [.. group.Select(w => (w, 1.0))],
                    Motors = [.. Enumerable.Repeat((motor, ratio), motors)],
                    GearEfficiency = efficiency,
                    HoldTorque = hold,
                });
            }
        }

        var zero = (ZeroCommand)_random.Next(3);
        double limit = Chance(0.5) ? Between(2.0, 8.0) : double.PositiveInfinity;
        bool regeneration = Chance(0.5);
        var many = Chance(0.5) ? Wiring.Parallel : Wiring.Series;
        bool shared = Chance(0.5);
        double slew = Chance(0.3) ? Between(2.0, 10.0) : double.PositiveInfinity;
        double deadband = Chance(0.3) ? 0.05 : 0.0;
        bool hot = Chance(0.3);
        List<ControllerSettings> controllers = [];
        foreach (CommandSide side in new[] { CommandSide.Left, CommandSide.Right })
        {
            List<(int, int)> own = [.. drives.Select((d, i) => (d, i)).Where(p => p.d.Name.StartsWith(side.ToString(), StringComparison.Ordinal))
                .SelectMany(p => Enumerable.Range(0, p.d.Motors.Count).Select(m => (p.i, m)))];
            foreach (List<(int, int)> group in shared ? [own] : own.Select(m => new List<(int, int)> { m }))
            {
                controllers.Add(new ControllerSettings
                {
                    Name = $"{side} {group[0]}",
                    Motors = group,
                    Side = side,
                    Wiring = group.Count > 1 ? many : Wiring.Single,
                    CurrentLimit = limit * group.Count,
                    OnResistance = 0.05,
                    Regeneration = regeneration,
                    ZeroCommand = zero,
                    SlewLimit = slew,
                    Deadband = deadband,
                    ThermalResistance = hot ? 20.0 : 0.0,
                    HeatCapacity = 5.0,
                });
            }
        }

        return new RobotSettings
        {
            Name = "random robot",
            Chassis = new ChassisSettings
            {
                Mass = mass,
                Length = size * 1.3,
                Width = size * 1.2,
                Height = size * 0.4,
                CentreOfMassHeight = size * Between(0.1, 0.25),
                CentreOfMassX = wheelbase * Between(-0.15, 0.15),
                CentreOfMassY = track * Between(-0.1, 0.1),
                Downforce = Chance(0.2) ? mass * 9.8 * Between(0.2, 1.0) : 0.0,
                DownforceX = 0.01,
                DownforceY = -0.005,
            },
            Wheels = wheels,
            Drives = drives,
            Controllers = controllers,
            Battery = TestRobots.Battery with { Resistance = 0.1 / mass, InitialCharge = Between(0.6, 1.0) },
        };
    }

    private ScenarioSettings Scene(RobotSettings robot)
    {
        ManoeuvreKind[] kinds = [ManoeuvreKind.Launch, ManoeuvreKind.Reversal, ManoeuvreKind.Spot, ManoeuvreKind.Arc, ManoeuvreKind.PullTest, ManoeuvreKind.DragTest, ManoeuvreKind.Timeline];
        ManoeuvreKind kind = kinds[_random.Next(kinds.Length)];
        double d = Between(0.4, 1.0);
        CommandPoint[] commands = kind switch
        {
            ManoeuvreKind.Reversal => [new(0.05, d, 0.0), new(0.6, -d, 0.0)],
            ManoeuvreKind.Spot => [new(0.05, 0.0, d)],
            ManoeuvreKind.Arc => [new(0.05, d, -0.5 * d)],
            ManoeuvreKind.DragTest => [],
            ManoeuvreKind.Timeline => [new(0.05, d, 0.0), new(0.3, 0.2, 0.6, true), new(0.6, 0.0, 0.0), new(0.8, -d, 0.3, true)],
            _ => [new(0.05, d, 0.0)],
        };
        bool hasTether = ManoeuvreTraits.Of(kind).NeedsTether;
        double mass = robot.Chassis.Mass;
        return new ScenarioSettings
        {
            Name = kind.ToString(),
            Robot = robot,
            Floor = new FloorSettings
            {
                FrictionScale = Between(0.6, 1.1), Dust = 1.0, SlopeX = Chance(0.3) ? Between(-0.05, 0.05) : 0.0, SlopeY = Chance(0.3) ? Between(-0.05, 0.05) : 0.0,
            },
            Manoeuvre = new ManoeuvreSettings { Kind = kind, EndTime = 1.2, Commands = commands, InitialHeading = Chance(0.3) ? Between(-1.0, 1.0) : 0.0 },
            Tether = !hasTether ? null : new TetherSettings
            {
                HookX = kind == ManoeuvreKind.PullTest ? -0.09 : 0.09,
                HookY = Between(-0.01, 0.01),
                HookHeight = Between(0.015, 0.04),
                AnchorX = kind == ManoeuvreKind.PullTest ? -0.5 : 0.5,
                AnchorHeight = Between(0.015, 0.04),
                Slack = 0.004,
                Stiffness = 4000.0 * mass,
                Damping = 0.4,
                AnchorSpeed = kind == ManoeuvreKind.DragTest ? [(0.0, 0.0), (0.2, 0.0), (0.4, 0.1)] : [],
            },
        };
    }
}
