using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Analysis.Chance;

/// <summary>The scenes of <see cref="EngineSelfTest"/>: invented robots, each with other parts, in matches of a tenth of a second.</summary>
internal static class SelfTestScenes
{
    private static readonly TyreSettings s_grippy = new()
    {
        Name = "grippy", StaticFriction = 1.1, KineticFriction = 0.85, SlipSpeed = 0.4, BreakawayDeflection = 0.4e-3, ViscousFriction = 0.01, RollingRenewal = 120.0, BodyStiffness = 2500.0, BodyDamping = 2.0,
        TreadMass = 0.004, VerticalStiffness = 9000.0, VerticalDamping = 3.0, RollingResistance = 0.02, FrictionRise = 0.05, LoadExponent = -0.1, ReferenceLoad = 3.0, DustyFriction = 0.6, FoulingDistance = 0.5,
        SpecificWear = 0.2e-9, LateralFrictionRatio = 1.2, PatchWidth = 0.02,
    };

    private static readonly TyreSettings s_tabled = s_grippy with
    {
        Name = "tabled", FrictionTable = [(0.0, 0.9), (0.1, 0.95), (0.5, 0.8), (2.0, 0.7)], FrictionRise = 0.0, LoadExponent = 0.0, TreadArea = 0.8, BodyStiffness = 1800.0, TreadDamping = 0.5, FoulingDistance = 0.0,
    };

    private static readonly TyreSettings s_plain = s_grippy with { Name = "plain", PlainFriction = true, StaticFriction = 0.8, KineticFriction = 0.6, FrictionRise = 0.0, RollingResistance = 0.0, LoadExponent = 0.0, SpecificWear = 0.0, FoulingDistance = 0.0 };

    // so stiff that its ring is computed softer
    private static readonly TyreSettings s_hard = s_grippy with { Name = "hard", BodyStiffness = 90_000.0, BodyDamping = 4.0, StaticFriction = 0.5, KineticFriction = 0.4, FrictionRise = 0.0, FoulingDistance = 0.0 };

    private static readonly MotorSettings s_motor = new()
    {
        Name = "hot", TorqueConstant = 0.008, Resistance = 2.5, FrictionTorque = 0.0008, ViscousFriction = 1e-7, RotorInertia = 2.5e-7, BrushDrop = 0.4,
        WindingToCaseThermalResistance = 10.0, CaseToAirThermalResistance = 30.0, WindingHeatCapacity = 0.05, CaseHeatCapacity = 0.5,
    };

    private static readonly MotorSettings s_sensorless = s_motor with { Name = "sensorless", BrushDrop = 0.0, StandstillTorqueShare = 0.6, FullTorqueSpeed = 150.0, WindingToCaseThermalResistance = 0.0 };

    private static readonly BatterySettings s_battery = new() { Cells = 3, CellVoltage = [(0.0, 3.3), (0.1, 3.7), (0.5, 3.85), (1.0, 4.2)], Resistance = 0.12, Capacity = 60.0, InitialCharge = 0.9 };

    /// <summary>The matches.</summary>
    public static IEnumerable<ScenarioSettings> Matches
    {
        get
        {
            RobotSettings own = Own(s_grippy);
            RobotSettings belts = Belts(s_tabled);
            RobotSettings skids = Skids();
            RobotSettings tall = own with { Chassis = own.Chassis with { CentreOfMassHeight = 0.3, Downforce = 0.0 } };
            var patched = new FloorSettings { FrictionScale = 0.9, Dust = 0.5, SlopeX = 0.03, SlopeY = -0.02, Patches = [new(-0.3, -0.02, -0.2, 0.04, 0.7), new(0.0, 0.3, 0.0, 0.2, 1.2)] };
            CommandPoint[] driven = [new(0.005, 1.0, 0.2), new(0.04, 0.6, -0.3, true), new(0.08, 0.0, 0.0), new(0.1, -0.5, 0.1)];
            yield return Match(own, belts, driven, 0.13) with { Floor = patched };
            yield return Match(belts, skids, [new(0.005, 1.0, 0.0)], 0.15, line: 1e-4) with { Walls = [new(0.2, -0.5, 0.22, 0.5)], Contact = new ContactSettings { Friction = 0.5, Restitution = 0.4 } };
            yield return Match(skids, own, [new(0.005, -0.7, 0.4)], 0.1) with { Numerics = new NumericsSettings() };
            yield return Match(tall, Own(s_hard), [new(0.0, -1.0, 0.0), new(0.06, 1.0, 0.0)], 0.8) with { Numerics = NumericsSettings.OfDraws with { Method = "ARK5(4)", Tolerance = 1e-3 } };
            yield return Match(Own(s_plain), Own(s_plain), [new(0.005, 1.0, 0.0)], 0.1, deciding: 1.0);

            // the other robot over its line
            yield return Match(skids, belts, [new(0.005, 1.0, 0.0)], 0.15, line: 1e-4);

            // into the sides of wheels that stick out, a little askew
            ScenarioSettings aside = Match(skids, own, [new(0.0, 1.0, 0.0)], 0.06);
            yield return aside with { Opponent = aside.Opponent! with { Manoeuvre = aside.Opponent.Manoeuvre with { InitialHeading = 1.5 } } };
        }
    }

    /// <summary>A pull on a tether with a load cell.</summary>
    public static ScenarioSettings Pull => new()
    {
        Name = "pull",
        Robot = Own(s_grippy),
        Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.PullTest, EndTime = 0.12, Commands = [new(0.005, 0.9, 0.1)], Driver = new DriverSettings { HeadingHold = 2.0 } },
        Tether = new TetherSettings
        {
            HookX = -0.09, HookY = 0.01, HookHeight = 0.03, AnchorX = -0.5, AnchorY = 0.02, AnchorHeight = 0.05, Slack = 0.001, Stiffness = 4000.0, AnchorSpeed = [(0.0, 0.0), (0.1, -0.01)],
            Cell = new LoadCellSettings { FilterTime = 0.01, Noise = 0.05, Resolution = 0.01 },
        },
        Numerics = new NumericsSettings { SampleRate = 200.0 },
    };

    private static ScenarioSettings Match(RobotSettings first, RobotSettings opponent, CommandPoint[] commands, double end, double line = 0.5, double deciding = 1e-4)
    {
        var manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.Shove, EndTime = end, Commands = commands, InitialHeading = 0.03, InitialSpeed = 0.2, Driver = new DriverSettings { ReactionDelay = 0.002, HeadingHold = 2.0 } };
        return new ScenarioSettings
        {
            Name = "match",
            Robot = first,
            Manoeuvre = manoeuvre,
            Opponent = new OpponentSettings(opponent, manoeuvre with { InitialHeading = -0.02, Commands = [new(0.004, 0.9, 0.0)], Driver = new DriverSettings() }),
            Shove = new ShoveSettings { Gap = 0.001, Offset = 0.01, Line = line, DecidingGround = deciding },
            Numerics = NumericsSettings.OfDraws,
        };
    }

    // A motor at each wheel, a ramp at the nose, a magnet
    private static RobotSettings Own(TyreSettings tyre) => new()
    {
        Name = "own",
        Chassis = new ChassisSettings { Mass = 1.36, Length = 0.18, Width = 0.16, Height = 0.06, CentreOfMassHeight = 0.028, CentreOfMassX = 0.004, CentreOfMassY = -0.002, Downforce = 6.0, DownforceX = 0.02, DownforceY = 0.003 },
        Wheels = Wheels(tyre, 0.028),
        Drives = [.. Enumerable.Range(0, 4).Select(i => new DriveSettings { Name = $"drive {i}", Wheels = [(i, 1.0)], Motors = [(s_motor, 20.0)], GearEfficiency = 0.8, HoldTorque = 0.3, FrictionTorque = 0.004, ExtraInertia = 1e-6 })],
        Controllers =
        [
            .. Enumerable.Range(0, 4).Select(i => new ControllerSettings
            {
                Name = $"controller {i}", Motors = [(i, 0)], Side = i % 2 == 0 ? CommandSide.Left : CommandSide.Right, CurrentLimit = 2.5, OnResistance = 0.05, SlewLimit = 60.0, Deadband = 0.04,
                ThermalResistance = 20.0, HeatCapacity = 0.02, FoldBackTemperature = 21.0, ShutDownTemperature = 40.0,
            }),
        ],
        Battery = s_battery,
        Outline = new OutlineSettings
        {
            Corners = [(0.11, -0.08), (0.11, 0.08), (-0.09, 0.08), (-0.09, -0.08)],
            Faces = [new(0.001, 0.035, 0.6), new(0.004, 0.06), new(0.004, 0.06), new(0.004, 0.06)],
        },
    };

    // A belt and two motors a side, wired in parallel, coasting
    private static RobotSettings Belts(TyreSettings tyre) => new()
    {
        Name = "belts",
        Chassis = new ChassisSettings { Mass = 1.3, Length = 0.17, Width = 0.15, Height = 0.07, CentreOfMassHeight = 0.03, RollInertia = 0.003, PitchInertia = 0.004, YawInertia = 0.006 },
        Wheels = Wheels(tyre, 0.026),
        Drives = [Belt("left", 0, 2), Belt("right", 1, 3)],
        Controllers = [Controller(0, CommandSide.Left, Wiring.Parallel, ZeroCommand.Coast), Controller(1, CommandSide.Right, Wiring.Parallel, ZeroCommand.Coast)],
        Battery = s_battery with { Resistance = 0.5, CutOffVoltage = 9.0, SlowResistance = 0.2, SlowTime = 0.05, ResistanceFall = 0.01, EmptyResistance = 2.0, HeatCapacity = 0.5, ThermalResistance = 20.0 },
        Outline = new OutlineSettings { Corners = [(0.09, -0.05), (0.1, 0.0), (0.09, 0.05), (-0.09, 0.07), (-0.09, -0.07)], Faces = [new(0.01, 0.07), new(0.012, 0.07), new(0.004, 0.06), new(0.004, 0.06), new(0.004, 0.06, 0.5)] },
    };

    // Two driven wheels in series, locked at zero, and a skid
    private static RobotSettings Skids() => new()
    {
        Name = "skids",
        Chassis = new ChassisSettings { Mass = 1.2, Length = 0.15, Width = 0.14, Height = 0.05, CentreOfMassHeight = 0.025, CentreOfMassX = -0.01 },
        Wheels =
        [
            new WheelSettings { Name = "left", X = -0.03, Y = 0.07, Radius = 0.025, SpinInertia = 1e-5, Tyre = s_grippy, InitialFouling = 0.3 }, new WheelSettings { Name = "right", X = -0.03, Y = -0.07, Radius = 0.025, SpinInertia = 1e-5, Tyre = s_grippy },
            new WheelSettings { Name = "skid", X = 0.06, Y = 0.0, Radius = 0.01, SpinInertia = 1e-6, Tyre = s_plain with { Name = "skid", StaticFriction = 0.2, KineticFriction = 0.2 }, IsSkid = true },
        ],
        Drives = [.. Enumerable.Range(0, 2).Select(i => new DriveSettings { Name = $"drive {i}", Wheels = [(i, 1.2)], Motors = [(s_sensorless, 18.0)], GearEfficiency = 0.7, HoldTorque = 0.5 })],
        Controllers = [new ControllerSettings { Name = "both", Motors = [(0, 0), (1, 0)], Side = CommandSide.Left, Wiring = Wiring.Series, OnResistance = 0.08, ZeroCommand = ZeroCommand.Locked, CurrentLimit = 4.0, Regeneration = false, BetweenPulses = BetweenPulses.Diode, PulseFrequency = 4000.0, LimitsEachPulse = true }],
        Battery = s_battery with { InitialCharge = 0.05 },
    };

    private static WheelSettings[] Wheels(TyreSettings tyre, double radius) =>
    [
        .. new[] { ("front left", 0.055, 0.075), ("front right", 0.055, -0.075), ("rear left", -0.055, 0.075), ("rear right", -0.055, -0.075) }
            .Select(p => new WheelSettings { Name = p.Item1, X = p.Item2, Y = p.Item3, Radius = radius, SpinInertia = 1.2e-5, Tyre = tyre }),
    ];

    private static DriveSettings Belt(string side, int front, int rear) => new() { Name = side, Wheels = [(front, 1.0), (rear, 1.05)], Motors = [(s_motor, 20.0), (s_sensorless, 24.0)], GearEfficiency = 0.9, FrictionTorque = 0.01, FrictionWindUp = 0.02 };

    private static ControllerSettings Controller(int drive, CommandSide side, Wiring wiring, ZeroCommand zero) =>
        new() { Name = side.ToString(), Motors = [(drive, 0), (drive, 1)], Side = side, Wiring = wiring, OnResistance = 0.04, ZeroCommand = zero, Regeneration = false, CurrentLimit = 9.0, BetweenPulses = BetweenPulses.Coast };
}
