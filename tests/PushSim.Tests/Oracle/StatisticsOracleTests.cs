using System.Globalization;
using PushSim.Contact;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Oracle;

/// <summary>
/// Where a path cannot be followed twice, in chatter and in shoves that a hair decides, engine and oracle must agree in statistics over perturbed runs.
/// PUSHSIM_FULL=1 takes 200 runs of each instead of a few.
/// </summary>
public class StatisticsOracleTests(ITestOutputHelper output)
{
    private const double OracleStep = 20e-6;

    private static readonly int Runs = Environment.GetEnvironmentVariable("PUSHSIM_FULL") == "1" ? 200 : 3;

    // Two-sided 95 % of Student's distribution with the degrees of freedom of two samples of so many runs: few runs know their scatter badly [1].
    private static readonly double Z = MathNet.Numerics.Distributions.StudentT.InvCDF(0.0, 1.0, 2.0 * (Runs - 1), 0.975);

    [Fact]
    public void A_chattering_turn_has_the_same_yaw_rate_and_the_same_swing_of_its_forces()
    {
        var random = new Random(20);
        double[][] engine = [new double[Runs], new double[Runs]];
        double[][] oracle = [new double[Runs], new double[Runs]];
        for (int i = 0; i < Runs; i++)
        {
            ScenarioSettings s = Buzzing(0.1 * Around(random, 0.1), 0.6 * Around(random, 0.02));
            RunResult run = Simulator.Run(s);
            OracleRecord record = OracleRun.One(s, OracleStep);
            int wheel = s.Robot.Wheels.ToList().FindIndex(w => w.Name == run.Scenario.Robot.Wheels[0].Name);
            (engine[0][i], engine[1][i]) = (Settled(run.Trace.Body.YawRate).Average(), Swing(run.Trace.Wheels[0].LateralForce));
            (oracle[0][i], oracle[1][i]) = (Settled(record["r"]).Average(), Swing(record[$"fy {wheel}"]));
        }

        Assert.True(engine[1].Average() > 0.05, "this tyre was meant to chatter");
        Agree("yaw rate", engine[0], oracle[0]);
        Agree("swing of the sideways force", engine[1], oracle[1]);
    }

    [Fact]
    public void A_shove_that_a_hair_decides_is_decided_as_often_either_way()
    {
        var random = new Random(21);
        int[] engine = new int[3];
        int[] oracle = new int[3];
        for (int i = 0; i < Runs; i++)
        {
            ScenarioSettings s = Level(0.002 * (random.NextDouble() - 0.5), 0.01 * (random.NextDouble() - 0.5), 1.0 + (0.02 * (random.NextDouble() - 0.5)));
            RunResult run = Simulator.Run(s);
            OracleRecord[] records = OracleRun.All(s, OracleStep);
            engine[Side(run.Trace.Body.Heading[^1])]++;
            oracle[Side(records[0]["psi"][records[0].Count - 1])]++;
        }

        output.WriteLine($"turned right, straight, left: engine {string.Join(", ", engine)}, oracle {string.Join(", ", oracle)} of {Runs}");
        for (int k = 0; k < 3; k++)
        {
            double p = (engine[k] + oracle[k]) / (2.0 * Runs);
            Assert.InRange(Math.Abs(engine[k] - oracle[k]) / (double)Runs, 0.0, (Z * Math.Sqrt(2.0 * p * (1.0 - p) / Runs)) + 1e-12);
        }
    }

    // Turned aside by more than three degrees to the right, not, to the left.
    private static int Side(double heading) => heading < -0.05 ? 0 : heading > 0.05 ? 2 : 1;

    private void Agree(string what, double[] a, double[] b)
    {
        double half = Z * Math.Sqrt((Variance(a) + Variance(b)) / a.Length);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: engine {a.Average():G5}, oracle {b.Average():G5}, 95 % of the difference {half:G3}"));
        Assert.InRange(Math.Abs(a.Average() - b.Average()), 0.0, half);
    }

    private static double Variance(double[] x) => x.Sum(v => (v - x.Average()) * (v - x.Average())) / (x.Length - 1);

    private static double[] Settled(IReadOnlyList<double> x) => [.. x.Skip(x.Count / 2)];

    private static double Swing(IReadOnlyList<double> x) => Math.Sqrt(Variance(Settled(x)));

    private static double Around(Random random, double share) => 1.0 + (share * ((2.0 * random.NextDouble()) - 1.0));

    private static ScenarioSettings Buzzing(double damping, double turn)
    {
        var tyre = new TyreSettings
        {
            Name = "bouncy", StaticFriction = 1.0, KineticFriction = 0.6, SlipSpeed = 0.5, BreakawayDeflection = 0.4e-3, BodyStiffness = 1500.0,
            BodyDamping = damping, TreadMass = 0.004, VerticalStiffness = 9000.0, VerticalDamping = 8.0, RollingRenewal = 100.0, RollingResistance = 0.0,
        };
        RobotSettings robot = TestRobots.FourWheels(tyre).WithMass(0.45);
        return OracleScenarios.Fine(TestRobots.Scenario(robot, ManoeuvreKind.Spot, 0.0, turn, 1.0));
    }

    private static ScenarioSettings Level(double offset, double heading, double mass)
    {
        TyreSettings tyre = TestRobots.SoftTyre with { RollingResistance = 0.0, VerticalDamping = 8.0 };
        ScenarioSettings s = TestRobots.Shove(TestRobots.FourWheels(tyre).WithMass(1.36 * mass), TestRobots.FourWheels(tyre), end: 1.5, gap: 0.02, offset: offset);
        return OracleScenarios.Fine(s with
        {
            Manoeuvre = s.Manoeuvre with { InitialHeading = heading },
            Contact = new ContactSettings { Stiffness = 1e5, Restitution = PushSim.Contact.Restitution.Share(20.0, 1.0) },
        });
    }
}
