using System.Globalization;
using System.Text.Json;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Oracle;

/// <summary>
/// Engine and plain implementation against solutions by SciPy's solve_ivp (reference/make_reference.py, relative tolerances
/// 1e-8 and 1e-9; its version stands in reference/reference.json). Each bound is a share of the largest value of the series.
/// Engine at relative tolerance 1e-8; plain implementation at 5 microseconds, first order, hence its wider bound.
/// </summary>
public class ReferenceTests(ITestOutputHelper output)
{
    private const double EngineBound = 5e-5;
    private const double OracleBound = 1e-3;

    private static readonly JsonElement s_root = Read();
    private static readonly TyreSettings s_tyre = TestRobots.SoftTyre with { RollingResistance = 0.0 };

    [Fact]
    public void Skid_under_a_constant_speed()
    {
        const double Mass = 100.0;
        ScenarioSettings scenario = Fine(Skids(s_tyre with { RollingRenewal = 0.0 }, Mass), 0.2, 0.05) with
        {
            Floor = new FloorSettings { Gravity = 4.0 * 3.0 / Mass },
        };
        RunResult engine = Simulator.Run(scenario);
        OracleRecord oracle = OracleRun.One(scenario, 5e-6);
        Check("skid_step", "force_n", engine.Trace.Wheel("front left").LongitudinalForce, EngineBound, 1);
        Check("skid_step", "force_n", oracle["fx 0"], OracleBound, 1);
        Check("skid_step", "speed_m_per_s", engine.Trace.Body.Speed, EngineBound, 1);
    }

    [Fact]
    public void Motors_spin_free_wheels_up()
    {
        // Almost no friction under the wheels: they turn freely.
        RobotSettings robot = Undamped(TestRobots.FourWheels(Slippery, limit: 3.0));
        robot = robot with { Chassis = robot.Chassis with { PitchInertia = 1e3 } };
        ScenarioSettings scenario = Fine(robot, 0.0, 0.2, new CommandPoint(0.0, 1.0, 0.0));
        RunResult engine = Simulator.Run(scenario);
        OracleRecord oracle = OracleRun.One(scenario, 5e-6);
        double[] omega = [.. engine.Trace.Wheel("front left").SurfaceSpeed.Select(v => v / 0.028)];
        Check("spin_up", "omega_rad_per_s", omega, EngineBound, 2);
        Check("spin_up", "omega_rad_per_s", oracle["omega 0"], OracleBound, 2);
        Check("spin_up", "bus_v", engine.Trace.Battery!.Voltage, EngineBound, 2);
        Check("spin_up", "bus_v", oracle["bus_v"], OracleBound, 2);
        Check("spin_up", "battery_a", engine.Trace.Battery!.Current, EngineBound, 2);
        Check("spin_up", "motor_a", engine.Trace.Motors[0].Current, EngineBound, 2);
    }

    [Fact]
    public void Tether_catches_a_mass()
    {
        ScenarioSettings scenario = Fine(Skids(Slippery, 1.36), 0.5, 0.12) with
        {
            Tether = new TetherSettings
            {
                HookX = 0.0, HookHeight = Low, AnchorX = -0.5, AnchorHeight = Low, Slack = 0.01, Stiffness = 4000.0, Damping = 0.5,
            },
        };
        RunResult engine = Simulator.Run(scenario);
        OracleRecord oracle = OracleRun.One(scenario, 5e-6);
        Check("tether_catch", "x_m", engine.Trace.Body.X, EngineBound, 1);
        Check("tether_catch", "speed_m_per_s", engine.Trace.Body.Speed, EngineBound, 1);
        Check("tether_catch", "force_n", engine.Trace.Tether!.Force, EngineBound, 1);
        Check("tether_catch", "speed_m_per_s", oracle["u"], OracleBound, 1);
        Check("tether_catch", "force_n", oracle["tether"], OracleBound, 1);
    }

    [Fact]
    public void Wall_throws_a_mass_back()
    {
        RunResult engine = Simulator.Run(Bounce());
        OracleRecord oracle = OracleRun.One(Bounce(), 5e-6);
        Check("wall_bounce", "x_m", engine.Trace.Body.X, EngineBound, 1);
        Check("wall_bounce", "speed_m_per_s", engine.Trace.Body.Speed, EngineBound, 1);
        Check("wall_bounce", "x_m", oracle["x"], OracleBound, 1);
        Check("wall_bounce", "speed_m_per_s", oracle["u"], OracleBound, 1);
    }

    [Fact]
    public void Whole_robot_drives_off()
    {
        ScenarioSettings scenario = Fine(Undamped(TestRobots.FourWheels(s_tyre)), 0.0, 0.5, new CommandPoint(0.0, 1.0, 0.1));
        RunResult engine = Simulator.Run(scenario);
        OracleRecord oracle = OracleRun.One(scenario, 5e-6);
        BodyTrace body = engine.Trace.Body;
        foreach ((Series series, string column) in new[] { (body.X, "x"), (body.Y, "y"), (body.Heading, "psi"), (body.Speed, "u"), (body.YawRate, "r") })
        {
            Check("launch", series.Key, series, EngineBound, 5);
            Check("launch", series.Key, oracle[column], OracleBound, 5);
        }
        Check("launch", "bus_v", engine.Trace.Battery!.Voltage, EngineBound, 5);
        Check("launch", "pitch_rad", engine.Trace.Body.Pitch, EngineBound, 5);
        Check("launch", "roll_rad", engine.Trace.Body.Roll, EngineBound, 5);
        string[] names = ["front left", "front right", "rear left", "rear right"];
        for (int i = 0; i < 4; i++)
        {
            WheelTrace wheel = engine.Trace.Wheel(names[i]);
            Check("launch", $"load_{i}_n", wheel.Load, EngineBound, 5);
            Check("launch", $"longitudinal_force_{i}_n", wheel.LongitudinalForce, EngineBound, 5);
            Check("launch", $"lateral_force_{i}_n", wheel.LateralForce, EngineBound, 5);
            Check("launch", $"load_{i}_n", oracle["load " + i], OracleBound, 5);
        }
    }

    /// <summary>Height of the centre of mass and of the hook in the parts without pitch; the wall pushes higher up, hence their great pitch inertia [m].</summary>
    private const double Low = 1e-6;

    private static TyreSettings Slippery { get; } = s_tyre with { StaticFriction = 1e-6, KineticFriction = 1e-6, TreadDamping = 0.0 };

    private static ScenarioSettings Bounce() => Fine(Skids(Slippery, 1.36), 0.5, 0.08) with
    {
        Walls = [new PushSim.Contact.WallSettings(0.1, -0.5, 0.1, 0.5)],
        Contact = new PushSim.Contact.ContactSettings { Stiffness = 1e5, Restitution = PushSim.Contact.Restitution.Share(0.8, 1.0), Friction = 0.0 },
    };

    private static ScenarioSettings Fine(RobotSettings robot, double speed, double end, params CommandPoint[] commands)
    {
        ScenarioSettings fine = OracleScenarios.Timeline(ManoeuvreKind.Timeline, robot, end, speed, commands);
        return fine with { Numerics = fine.Numerics with { Tolerance = 1e-8 } };
    }

    private static RobotSettings Undamped(RobotSettings robot) => robot with
    {
        Drives = [.. robot.Drives.Select(d => d with { FrictionDamping = 0.0 })],
    };

    private static RobotSettings Skids(TyreSettings tyre, double mass)
    {
        RobotSettings robot = TestRobots.FourWheels(tyre);
        return robot with
        {
            Chassis = robot.Chassis with { Mass = mass, CentreOfMassHeight = Low, PitchInertia = 1e3 },
            Wheels = [.. robot.Wheels.Select(w => w with { IsSkid = true })],
            Drives = [],
            Controllers = [],
            Battery = null,
        };
    }

    private void Check(string part, string key, IReadOnlyList<double> values, double bound, int stride)
    {
        double[] reference = [.. s_root.GetProperty("cases").GetProperty(part).GetProperty(key).EnumerateArray().Select(v => v.GetDouble())];
        double scale = reference.Max(Math.Abs);
        double worst = 0.0;
        int at = 0;
        for (int k = 1; k < reference.Length; k++)
        {
            double off = Math.Abs(values[k * stride] - reference[k]);
            if (!(off <= worst))
            {
                worst = off;
                at = k;
            }
        }
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{part} {key}: {worst / scale:e2} of {scale:g5} (sample {at}), bound {bound:e1}"));
        Assert.True(worst <= bound * scale, $"{part} {key}: off by {worst} at sample {at}, {values[at * stride]} against {reference[at]}");
    }

    private static JsonElement Read()
    {
        using Stream stream = typeof(ReferenceTests).Assembly.GetManifestResourceStream("reference.json")!;
        return JsonDocument.Parse(stream).RootElement.Clone();
    }
}
