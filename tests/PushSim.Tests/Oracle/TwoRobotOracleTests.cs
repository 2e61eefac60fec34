using System.Globalization;
using PushSim.Contact;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Oracle;

/// <summary>
/// What the plain implementation of two robots must show by itself before anything is held against it. All values computed
/// here; no outside source but the closed forms named.
/// </summary>
public class TwoRobotOracleTests(ITestOutputHelper output)
{
    /// <summary>Two steps: the scenarios do not bounce, so that methods can agree on them at all.</summary>
    [Theory]
    [MemberData(nameof(TwoRobotTests.Names), MemberType = typeof(TwoRobotTests))]
    public void Has_converged(string name)
    {
        ScenarioSettings scenario = TwoRobotTests.Named(name);
        (OracleRecord[] coarse, OracleRecord[] fine) = OracleRuns.Both(scenario, TwoRobotTests.StepOf(name));
        for (int i = 0; i < fine.Length; i++)
        {
            RobotSettings robot = i == 0 ? scenario.Robot : scenario.Opponent!.Robot;
            OracleComparison c = OracleComparison.Of(coarse[i], fine[i], robot);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"robot {i}: forces {c.Forces:p3} ({c.WorstForce}), places {c.Places:p3}, headings {c.Headings:p3}, times {c.Times:p3}"));
            Assert.InRange(c.Forces, 0.0, 0.002);
            Assert.InRange(c.Places, 0.0, 0.002);
        }
    }

    [Fact]
    public void Equal_robots_do_the_same()
    {
        OracleRecord[] both = OracleRuns.At(TwoRobotScenarios.EqualShove, OracleRuns.Wide);
        Assert.InRange(Largest(both[0]["x"], both[1]["x"]), 0.0, 1e-9);
        Assert.InRange(Largest(both[0]["load 0"], both[1]["load 0"]), 0.0, 1e-4);
    }

    [Fact]
    public void Swapped_robots_do_the_swapped()
    {
        OracleRecord[] both = OracleRuns.At(TwoRobotScenarios.OffCentre, OracleRuns.Wide);
        OracleRecord[] swapped = OracleRun.All(TwoRobotScenarios.Swapped(TwoRobotScenarios.OffCentre), OracleRuns.Wide);
        OracleRecord[] ramp = OracleRuns.At(TwoRobotScenarios.Ramp, OracleRuns.Wide);
        OracleRecord[] rampSwapped = OracleRun.All(TwoRobotScenarios.Swapped(TwoRobotScenarios.Ramp), OracleRuns.Wide);
        Assert.InRange(Largest(both[0]["psi"], swapped[1]["psi"]), 0.0, 1e-9);
        Assert.InRange(Largest(both[1]["x"], swapped[0]["x"]), 0.0, 1e-9);
        Assert.InRange(Largest(ramp[0]["x"], rampSwapped[1]["x"]), 0.0, 1e-7);
        Assert.InRange(Largest(ramp[1]["theta"], rampSwapped[0]["theta"]), 0.0, 1e-6);
    }

    /// <summary>Stalled at a wall the contact carries what the tyres push with, on average: the robot rocks a little.</summary>
    [Fact]
    public void Wall_carries_the_push_of_the_tyres()
    {
        OracleRecord run = OracleRuns.At(TwoRobotScenarios.WallPush, OracleRuns.Wide)[0];
        double wall = 0.0;
        double tyres = 0.0;
        for (int k = run.Count - 200; k < run.Count; k++)
        {
            wall += run["contact"][k] / 200.0;
            tyres += Enumerable.Range(0, 4).Sum(w => run["fx " + w][k]) / 200.0;
        }
        output.WriteLine(FormattableString.Invariant($"wall {wall} N, tyres {tyres} N"));
        Assert.InRange(wall / tyres, 0.99, 1.01);
    }

    /// <summary>While sliding up: vertical / horizontal = cot(beta + atan mu), the closed form of the wedge.</summary>
    [Fact]
    public void Ramp_lifts_with_the_wedge_s_ratio()
    {
        // all wheels stand beside the bodies and in tracks of their own, so that the front alone rides on the ramp
        static RobotSettings Wide(RobotSettings r, double by) => r with { Wheels = [.. r.Wheels.Select(w => w with { Y = by * w.Y })] };
        ScenarioSettings scenario = TwoRobotScenarios.LiftedWheel;
        scenario = scenario with { Robot = Wide(scenario.Robot, 1.4), Opponent = scenario.Opponent! with { Robot = Wide(scenario.Opponent.Robot, 2.0) } };
        OracleRecord[] both = OracleRun.All(scenario, OracleRuns.Wide);
        int last = both[1].Count - 1;
        double ratio = both[1]["lift"][last] / both[1]["contact"][last];
        double wedge = 1.0 / Math.Tan(TwoRobotScenarios.FlatAngle + Math.Atan(scenario.Contact.Friction));
        output.WriteLine(FormattableString.Invariant($"vertical / horizontal {ratio}, wedge {wedge}"));
        Assert.InRange(ratio / wedge, 0.99, 1.01);
        Assert.Equal(0.0, both[1]["load 0"][last]);
        Assert.Equal(0.0, both[1]["load 1"][last]);
        Assert.True(both[0]["load 0"][last] > 1.3 * both[0]["load 0"][0], "the ramp's own front wheels must carry what it lifts");
    }

    /// <summary>The force of two equal faces nose to nose turns without a jump, in yaw and in offset: the greatest change in a step falls with the step.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Contact_is_continuous(bool yaw)
    {
        const int Finer = 8;
        double coarse = GreatestChange(yaw, 20_000);
        double fine = GreatestChange(yaw, 20_000 * Finer);
        output.WriteLine(FormattableString.Invariant($"greatest change in a step {coarse} N, in one {Finer} times as short {fine} N"));
        Assert.InRange(coarse / fine, 0.8 * Finer, 1.2 * Finer);
    }

    private static double GreatestChange(bool yaw, int steps)
    {
        ScenarioSettings scenario = TwoRobotScenarios.EqualShove;
        var one = new OracleRobot(scenario.Robot, scenario.Manoeuvre, scenario.Floor);
        var two = new OracleRobot(scenario.Opponent!.Robot, scenario.Opponent.Manoeuvre, scenario.Floor, true);
        var first = new OracleBody(one, false);
        var second = new OracleBody(two, true);
        var contact = new OracleContact(new ContactSettings { Friction = 0.0 }, first, second);
        one.X = -0.0895;
        two.X = -0.0895;
        double before = double.NaN;
        double greatest = 0.0;
        for (int k = 0; k <= steps; k++)
        {
            double share = ((2.0 * k) / steps) - 1.0;
            one.Psi = yaw ? 0.02 * share : 0.003;
            one.Y = yaw ? 0.01 : 0.2 * share;
            first.Place();
            second.Place();
            contact.Push(1e-6);
            greatest = double.IsNaN(before) ? 0.0 : Math.Max(greatest, Math.Abs(contact.ForceX - before));
            before = contact.ForceX;
        }
        return greatest;
    }

    private static double Largest(double[] one, double[] two)
    {
        double worst = 0.0;
        for (int k = 0; k < one.Length; k++)
        {
            worst = Math.Max(worst, Math.Abs(one[k] - two[k]));
        }
        return worst;
    }
}
