using PushSim.Analysis.Limits;
using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests.Simulation;
using PushSim.Tyres;
using PushSim.Words.Limits;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

/// <summary>
/// Charge and heat of a dash in the limits' match against a simulated launch of a second. Windings are given a second node that hardly takes any heat away
/// and so much heat capacity that they stay as they are, so that their rise is the copper loss.
/// </summary>
public class DashTests(ITestOutputHelper output)
{
    // The estimate leaves out pitch and hop, which move the loads, wind-up of tyres and gears, which takes current before anything turns, and the creep of tyres
    // that grip, which lets wheels turn a percent or two faster than the robot: 1 % each in charge, and twice that in heat, which goes by the current's square.
    private const double ChargeTolerance = 0.02;
    private const double HeatTolerance = 0.04;

    // Of random robots some shake, lift wheels or share a current unevenly as they start; their motors' resistance, if measured, would be known to a tenth, and so would the heat.
    private const double RandomChargeTolerance = 0.05;
    private const double RandomHeatTolerance = 0.12;

    private const double Capacity = 100.0;

    private static RobotSettings Heated(RobotSettings robot, Func<MotorSettings, MotorSettings> change) => robot with
    {
        Drives = [.. robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (change(m.Motor) with
        {
            WindingToCaseThermalResistance = 1e3, CaseToAirThermalResistance = 1e3, WindingHeatCapacity = Capacity, CaseHeatCapacity = 1e3,
        }, m.Ratio))] })],
    };

    // 15 kg on motors that could give six times what its tyres hold, which spin up to nearly their free speed at once
    private static RobotSettings Heavy()
    {
        var motor = new MotorSettings { Name = "strong", TorqueConstant = 0.0159, Resistance = 0.05, FrictionTorque = 0.02, RotorInertia = 0.9e-5 };
        TyreSettings tyre = TestRobots.SoftTyre with
        {
            StaticFriction = 0.55, KineticFriction = 0.4, VerticalStiffness = 60000.0, VerticalDamping = 2.0, BodyStiffness = 30000.0, BodyDamping = 15.0, TreadMass = 0.05,
        };
        RobotSettings four = TestRobots.FourWheels(tyre, motor, efficiency: 0.82, limit: 40.0, wheelbase: 0.32, track: 0.37, height: 0.06, ratio: 16.0, radius: 0.065, forward: -0.02);
        return four with
        {
            Chassis = four.Chassis with { Mass = 15.0, Length = 0.5, Width = 0.42, Height = 0.14 },
            Wheels = [.. four.Wheels.Select(w => w with { SpinInertia = 1e-3 })],
            Battery = new BatterySettings { Cells = 6, CellVoltage = TestRobots.Battery.CellVoltage, Resistance = 0.02, Capacity = 5.0 * 3600.0 },
        };
    }

    private static RobotSettings Robot(string kind) => kind switch
    {
        "weak" => TestRobots.FourWheels(limit: 0.5),
        "strong" => TestRobots.FourWheels(motor: TestRobots.Motor with { Resistance = 0.5 }, limit: double.PositiveInfinity),
        "strong, limited" => TestRobots.FourWheels(motor: TestRobots.Motor with { Resistance = 0.5 }, limit: 4.0),
        "slippery" => TestRobots.FourWheels(TestRobots.SoftTyre with { StaticFriction = 0.35, KineticFriction = 0.25 }),
        "heavy" => Heavy(),
        _ => TestRobots.FourWheels(),
    };

    // own check: Coulomb's tyres of motors a little too weak to spin them let go and catch on again and again; such a match took 14 s of processor time
    [Theory]
    [InlineData(3.0)]
    [InlineData(5.0)]
    public void A_dash_that_catches_on_again_and_again_costs_little(double stallPerWheel)
    {
        MotorSettings motor = ExternalRobots.WheelMotor(0.03, 3.0, stallPerWheel);
        RobotSettings robot = ExternalRobots.FourCorners(ExternalRobots.Body(1.36, 0.03), ExternalRobots.Coulomb(1.2), 0.12, 0.15, 0.03, 1e-6, motor, motor);
        var model = new LimitModel<R1>(SceneBuilder.InCanonicalOrder(ExternalRobots.Scenario(robot, 1.0, 1.0)), new LimitCondition(), null, 1.0);
        var dash = new DashEstimate(model);
        dash.Run(1.0);
        output.WriteLine($"{dash.Trials} steps tried");
        Assert.InRange(dash.Trials, 1, 10_000);
        Assert.InRange(dash.Speed, 0.5, 3.0);
    }

    private static (double Charge, double Heat) Dash(ScenarioSettings s)
    {
        DutyHeat match = LimitFinder.Find(s, 1.0, new DutyPattern { Length = 1.0, Dash = 1.0, Push = 0.0, Turn = 0.0, Rest = 0.0 }).Match;
        return (match.ChargeUsed, Capacity * (match.PeakWinding!.Value - s.Floor.AirTemperature));
    }

    private static (double Charge, double Heat) Launch(RunResult run)
    {
        double hottest = run.Trace.Motors.Max(m => m.WindingTemperature![^1]);
        return (run.Trace.Battery!.ChargeUsed[^1], Capacity * (hottest - run.Scenario.Floor.AirTemperature));
    }

    // wheels of next to no inertia and rotors of none, as a file may give: a dash at the limit of the tyres costs about what it costs the heavier ones once those have spun up
    [Fact]
    public void A_drive_without_inertia_neither_takes_for_ever_nor_melts()
    {
        RobotSettings robot = Robot("slippery");
        RobotSettings light = robot with { Wheels = [.. robot.Wheels.Select(w => w with { SpinInertia = 1e-10 })] };
        (double charge, double heat) = Dash(TestRobots.Launch(Heated(light, m => m with { RotorInertia = 0.0 })));
        (double expected, double warmth) = Dash(TestRobots.Launch(Heated(robot, m => m)));
        Assert.InRange(charge, 0.5 * expected, 1.05 * expected);
        Assert.InRange(heat, 0.3 * warmth, 1.05 * warmth);
    }

    [Theory]
    [InlineData("weak")]
    [InlineData("usual")]
    [InlineData("strong")]
    [InlineData("strong, limited")]
    [InlineData("slippery")]
    [InlineData("heavy")]
    public void A_dash_takes_the_charge_and_gives_the_heat_of_a_launch(string kind)
    {
        ScenarioSettings s = TestRobots.Scenario(Heated(Robot(kind), m => m), ManoeuvreKind.Launch, 1.0, 0.0, 1.0, start: 0.0);
        (double charge, double heat) = Dash(s);
        (double used, double lost) = Launch(Simulator.Run(s));
        output.WriteLine(FormattableString.Invariant($"{kind}: charge {charge:0.0000} against {used:0.0000} A s, heat of the hottest motor {heat:0.000} against {lost:0.000} J"));
        Assert.Equal(used, charge, ChargeTolerance * used);
        Assert.Equal(lost, heat, HeatTolerance * lost);
    }

    // other wirings, drives without motors, dry gears, worn and clean tyres: as they come
    [Fact]
    public void Random_robots_dash_as_they_launch()
    {
        int compared = 0;
        List<string> wrong = [];
        for (int seed = 0; compared < 30; seed++)
        {
            RobotSettings robot = PullAgreementTests.Straight(RandomRobots.Scenario(seed).Robot);
            ScenarioSettings s = TestRobots.Scenario(Heated(robot, m => m), ManoeuvreKind.Launch, 1.0, 0.0, 1.0, start: 0.0);
            RunResult run = Simulator.Run(s);
            if (run.Status != RunStatus.Finished || run.Answers.Chatter is not null)
            {
                continue;
            }

            compared++;
            (double charge, double heat) = Dash(s);
            (double used, double lost) = Launch(run);
            string line = FormattableString.Invariant($"{seed}: charge {(charge / used) - 1.0:P2}, heat {(heat / lost) - 1.0:P2} of {lost:0.00} J");
            output.WriteLine(line);
            if (!(Math.Abs(charge - used) <= RandomChargeTolerance * used && Math.Abs(heat - lost) <= RandomHeatTolerance * lost))
            {
                wrong.Add(line);
            }
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    // a tenth of a second's pushing in ten seconds of dashes is a hundredth of the match, whatever moment of a second it begins at
    [Fact]
    public void Phases_shorter_than_a_second_last_as_long_as_they_say()
    {
        ScenarioSettings s = TestRobots.Launch();
        double Used(double length, double push, double rest) =>
            LimitFinder.Find(s, 1.0, new DutyPattern { Length = length, Dash = 0.0, Push = push, Turn = 0.0, Rest = rest }).Match.ChargeUsed;
        double second = Used(1.0, 1.0, 0.0);
        Assert.Equal(1.0 * second, Used(20.0, 0.1, 1.9), 0.01 * second);
        Assert.Equal(1.0 * second, Used(10.0, 0.25, 2.25), 0.01 * second);
        Assert.Throws<SimulationException>(() => Used(10.0, 0.1, 0.1));
    }

    [Theory]
    [InlineData(25.0, true)]
    [InlineData(400.0, false)]
    public void A_winding_that_passes_its_limit_is_warned_of(double limit, bool isWarned)
    {
        RobotSettings robot = TestRobots.FourWheels();
        ScenarioSettings s = TestRobots.Launch(robot with
        {
            Drives = [.. robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (m.Motor with
            {
                WindingToCaseThermalResistance = 10.0, CaseToAirThermalResistance = 30.0, WindingHeatCapacity = 3.0, CaseHeatCapacity = 12.0, WindingLimitTemperature = limit,
            }, m.Ratio))] })],
        });
        LimitResult report = LimitFinder.Find(s);
        Assert.Equal(isWarned, report.Match.PeakWinding > limit);
        Assert.Equal(isWarned, LimitWarnings.Of(report).Any(w => w.Contains(" s of the match motor gearmotor passes the 25 °C that its winding bears", StringComparison.Ordinal)));
        Assert.DoesNotContain(LimitWarnings.Of(report), w => !isWarned && w.Contains("winding", StringComparison.Ordinal));
    }
}
