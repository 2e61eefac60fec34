using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Tests.Extremes;

/// <summary>Robots and scenes from a seed, far beyond what anybody builds; the same seed gives the same scenario.</summary>
internal sealed class ExtremeRobots
{
    // Simulated time of a run [s].
    private const double EndTime = 0.3;

    private readonly Random _random;

    private ExtremeRobots(int seed) => _random = new Random(seed);

    /// <summary>One robot; every third one runs into a wall, every fourth one pulls or is dragged by a tether.</summary>
    public static ScenarioSettings Alone(int seed)
    {
        var r = new ExtremeRobots(seed);
        RobotSettings robot = r.Robot("extreme");
        ScenarioSettings s = r.Scene(robot, seed % 3 == 0 ? ManoeuvreKind.WallPush : ManoeuvreKind.Timeline);
        if (seed % 3 == 0)
        {
            double away = Reach(robot) + r.Log(1e-4, 0.05);
            (double sine, double cosine) = Math.SinCos(r.Between(-1.2, 1.2));
            s = s with { Walls = [new((away * cosine) + sine, (away * sine) - cosine, (away * cosine) - sine, (away * sine) + cosine)] };
        }

        return seed % 4 == 0 ? s with { Tether = r.Tether(robot) } : s;
    }

    /// <summary>Two robots that meet under any angle.</summary>
    public static ScenarioSettings Pair(int seed)
    {
        var r = new ExtremeRobots(seed);
        RobotSettings first = r.Robot("first");

        // a tenth to ten times as large, or of any size
        RobotSettings second = r.Chance(0.5) ? r.Robot("second") : r.Robot("second", first.Chassis.Mass * r.Log(0.1, 10.0));
        ScenarioSettings s = r.Scene(first, ManoeuvreKind.Shove);
        return s with
        {
            Opponent = new OpponentSettings(second, r.Manoeuvre(ManoeuvreKind.Shove)),
            Shove = new ShoveSettings { Gap = r.Log(1e-4, 0.1), Offset = r.Between(-0.5, 0.5) * (Reach(first) + Reach(second)), Line = r.Log(0.05, 2.0) },
        };
    }

    private static double Reach(RobotSettings robot) => robot.OutlineOrBox.Corners.Max(c => double.Hypot(c.X, c.Y));

    private double Between(double low, double high) => low + (_random.NextDouble() * (high - low));

    private double Log(double low, double high) => low * Math.Pow(high / low, _random.NextDouble());

    private bool Chance(double p) => _random.NextDouble() < p;

    private ScenarioSettings Scene(RobotSettings robot, ManoeuvreKind kind) => new()
    {
        Name = kind.ToString(),
        Robot = robot,
        Floor = new FloorSettings { SlopeX = Chance(0.2) ? Between(-0.3, 0.3) : 0.0, SlopeY = Chance(0.2) ? Between(-0.3, 0.3) : 0.0, Dust = Chance(0.3) ? 1.0 : 0.0 },
        Manoeuvre = Manoeuvre(kind),
        Contact = new ContactSettings { Stiffness = Log(1e4, 1e8), Restitution = Between(0.05, 1.0), Friction = Between(0.0, 1.5) },
        Numerics = new NumericsSettings { SampleRate = 200.0 },
    };

    private ManoeuvreSettings Manoeuvre(ManoeuvreKind kind)
    {
        double heading = kind == ManoeuvreKind.Timeline || Chance(0.5) ? Between(-Math.PI, Math.PI) : 0.0;
        double speed = Chance(0.6) ? Log(0.01, 10.0) : 0.0;
        return new ManoeuvreSettings
        {
            Kind = kind,
            EndTime = EndTime,
            Commands = Commands(),
            InitialHeading = heading,
            InitialSpeed = Math.Cos(heading) < 0.0 ? -speed : speed,
            Driver = new DriverSettings { ReactionDelay = Chance(0.3) ? Between(0.0, 0.3) : 0.0, HeadingHold = Chance(0.3) ? Log(0.1, 100.0) : 0.0, HeadingLag = Log(0.001, 1.0) },
        };
    }

    // Jumps and ramps at any time, some a microsecond or less after the one before.
    private List<CommandPoint> Commands()
    {
        List<CommandPoint> points = [];
        double t = 0.0;
        for (int i = _random.Next(0, 30); i > 0; i--)
        {
            t += Chance(0.3) ? Log(1e-9, 1e-5) : Log(1e-5, 0.1);
            double Full() => Chance(0.3) ? Math.Sign(Between(-1.0, 1.0)) : Chance(0.2) ? 0.0 : Between(-1.0, 1.0);
            points.Add(new CommandPoint(t, Full(), Full(), Chance(0.3)));
        }

        return points;
    }

    private TetherSettings Tether(RobotSettings robot)
    {
        double away = Reach(robot);
        return new TetherSettings
        {
            HookX = Between(-0.5, 0.5) * away, HookHeight = Log(0.001, 0.5), AnchorX = (Chance(0.5) ? -1.0 : 1.0) * away * Log(1.5, 10.0), AnchorHeight = Log(0.001, 0.5),
            Slack = Log(1e-4, 0.05), Stiffness = Log(10.0, 1e7), Damping = Between(0.0, 1.0), AnchorSpeed = Chance(0.5) ? [(0.0, 0.0), (0.1, Between(-2.0, 2.0))] : [],
        };
    }

    // Stiffness of body and cover each over six decades around what suits the load; friction 0.01 to 3.
    private TyreSettings Tyre(double load, double mass)
    {
        double mu = Log(0.01, 3.0);
        double body = (load / 1e-3) * Log(1e-3, 1e3);
        double tread = mass * Log(1e-4, 0.02);
        return new TyreSettings
        {
            Name = "extreme tyre",
            StaticFriction = mu,
            KineticFriction = mu * Between(0.3, 1.1),
            SlipSpeed = Log(0.01, 5.0),
            BreakawayDeflection = Log(1e-5, 5e-3),
            BodyStiffness = body,
            BodyDamping = Log(0.01, 2.0) * Math.Sqrt(body * tread),
            TreadMass = tread,
            VerticalStiffness = (load / 1e-3) * Log(0.1, 1e5),
            VerticalDamping = Log(0.05, 10.0),
            RollingRenewal = Log(1.0, 1e4),
            RollingResistance = Chance(0.5) ? Log(0.001, 0.3) : 0.0,
            PlainFriction = Chance(0.1),
            LoadExponent = Chance(0.3) ? Between(-0.3, 0.5) : 0.0,
            ReferenceLoad = load,
            FrictionRise = Chance(0.2) ? Between(-0.05, 0.1) : 0.0,
            FoulingDistance = Chance(0.2) ? Log(0.01, 10.0) : 0.0,
            DustyFriction = Between(0.2, 1.0),
            SpecificWear = Chance(0.2) ? 1e-9 : 0.0,
        };
    }

    private RobotSettings Robot(string name, double? given = null)
    {
        double mass = Math.Clamp(given ?? Log(0.05, 500.0), 0.05, 500.0);
        double size = 0.13 * Math.Cbrt(mass / 1.36) * Log(0.5, 2.0);
        int count = _random.Next(2, 9);
        double radius = size * Between(0.05, 0.3);
        double load = mass * 9.8 / count;
        TyreSettings tyre = Tyre(load, mass);
        bool isSkid = count < 4;
        List<WheelSettings> wheels = [];
        for (int i = 0; i < count; i++)
        {
            // two wheels carry a robot only where skids help; some robots must fall over their two wheels
            bool left = i % 2 == 0;
            int rows = (count + 1) / 2;
            double row = rows == 1 ? 0.0 : 0.5 - ((double)(i / 2) / (rows - 1));
            wheels.Add(new WheelSettings
            {
                Name = $"wheel {i}",
                X = size * row,
                Y = i == count - 1 && count % 2 == 1 ? 0.0 : (left ? 0.5 : -0.5) * size,
                Radius = radius,
                SpinInertia = Log(1e-3, 0.1) * mass * radius * radius,
                Tyre = tyre,
                IsSkid = isSkid && i == 2,
            });
        }

        int[] driven = [.. Enumerable.Range(0, count).Where(i => !wheels[i].IsSkid && !(count % 2 == 1 && i == count - 1))];
        double ratio = Log(1.0, 1000.0);
        double top = Log(0.05, 15.0);
        double volts = 12.0;

        // motor for a top speed and a stall push of a tenth to ten times the weight
        double constant = volts * radius / (top * ratio);
        double stall = Log(0.1, 10.0) * mass * 9.8 * radius / (ratio * driven.Length) / constant;
        var motor = new MotorSettings
        {
            Name = "extreme motor",
            TorqueConstant = constant,
            Resistance = volts / stall,
            FrictionTorque = Chance(0.5) ? Log(1e-4, 0.1) * constant * stall : 0.0,
            RotorInertia = Log(1e-4, 1.0) * mass * radius * radius / (ratio * ratio),
            BrushDrop = Chance(0.3) ? Between(0.1, 1.5) : 0.0,
        };
        double efficiency = Between(0.3, 1.0);
        double hold = Chance(0.5) ? Log(0.01, 3.0) * load * radius : 0.0;
        var zero = (ZeroCommand)_random.Next(3);
        double off = count > 3 || Chance(0.2) ? 1.0 : 0.3;
        double limit = Chance(0.5) ? Log(0.05, 1.0) * stall : double.PositiveInfinity;
        bool returns = Chance(0.5);
        double slew = Chance(0.3) ? Log(0.5, 100.0) : double.PositiveInfinity;
        return new RobotSettings
        {
            Name = name,
            Chassis = new ChassisSettings
            {
                Mass = mass, Length = size * Between(0.5, 2.0), Width = size * Between(0.5, 2.0), Height = size * Between(0.2, 1.0),
                CentreOfMassHeight = size * Log(0.02, 1.0), CentreOfMassX = size * off * Between(-0.2, 0.2), CentreOfMassY = size * off * Between(-0.2, 0.2),
                Downforce = Chance(0.2) ? mass * 9.8 * Log(0.1, 10.0) : 0.0,
            },
            Wheels = wheels,
            Drives = [.. driven.Select(w => new DriveSettings { Name = $"drive {w}", Wheels = [(w, 1.0)], Motors = [(motor, ratio)], GearEfficiency = efficiency, HoldTorque = hold })],
            Controllers = [.. driven.Select((w, i) => new ControllerSettings
            {
                Name = $"controller {w}", Motors = [(i, 0)], Side = w % 2 == 0 ? CommandSide.Left : CommandSide.Right, CurrentLimit = limit,
                OnResistance = Log(1e-3, 0.1) * volts / stall, Regeneration = returns, ZeroCommand = zero, SlewLimit = slew,
            })],
            Battery = TestRobots.Battery with { Resistance = Log(0.001, 0.2) * volts / (stall * driven.Length), Capacity = 60.0 * stall * driven.Length, InitialCharge = Between(0.1, 1.0) },
        };
    }
}
