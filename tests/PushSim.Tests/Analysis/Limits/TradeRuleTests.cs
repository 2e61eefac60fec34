using PushSim.Analysis.Limits;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

/// <summary>Rules of the trade. Common practice, no source.</summary>
public class TradeRuleTests
{
    private static TyreSettings Tyre(double friction) => TestRobots.SoftTyre with { StaticFriction = friction, KineticFriction = 0.95 * friction, RollingRenewal = 100.0 };

    // the pull with motors of so many times the usual one's stall torque, with no controller in the way
    private static double Pull(double friction, double power)
    {
        RobotSettings robot = TestRobots.FourWheels(Tyre(friction), TestRobots.Motor with { Resistance = TestRobots.Motor.Resistance / power }, limit: double.PositiveInfinity);
        return LimitFinder.Pull(TestRobots.Pull(robot), new LimitCondition())!.Force;
    }

    // common practice, no source
    [Theory]
    [InlineData(1.5)]
    [InlineData(2.0)]
    [InlineData(4.0)]
    public void With_hard_tyres_a_stronger_motor_changes_nothing_in_a_pull_test(double power) =>
        Assert.Equal(Pull(0.35, 1.0), Pull(0.35, power), 0.01 * Pull(0.35, 1.0));

    // common practice, no source
    [Fact]
    public void The_gap_between_a_good_and_a_bad_tyre_widens_as_motor_power_rises()
    {
        double[] gaps = [.. new[] { 0.05, 0.1, 0.2, 0.4 }.Select(power => Pull(1.1, power) - Pull(0.4, power))];
        Assert.True(gaps.Zip(gaps.Skip(1)).All(p => p.Second >= p.First - 1e-3), string.Join(" ", gaps));
        Assert.True(gaps[^1] > gaps[0] + 1.0, string.Join(" ", gaps));
        Assert.InRange(gaps[0], -1e-6, 0.1);
    }

    // common practice, no source
    [Fact]
    public void Weight_on_undriven_wheels_is_lost_to_pull()
    {
        double pull = RearDriven(0.0);
        double back = RearDriven(-0.02);
        Assert.True(back > 1.15 * pull, $"{back} {pull}");
        double all = LimitFinder.Pull(TestRobots.Pull(TestRobots.FourWheels(Tyre(0.5))), new LimitCondition())!.Force;
        Assert.True(pull < 0.75 * all, $"{pull} {all}");
        double most = 0.5 * 1.36 * 9.80665;
        Assert.True(back < most, $"{back} {most}");
    }

    private static double RearDriven(double forward)
    {
        RobotSettings four = TestRobots.FourWheels(Tyre(0.5), forward: forward);
        RobotSettings robot = four with
        {
            Drives = [.. four.Drives.Skip(2)], Controllers = [.. four.Controllers.Skip(2).Select((c, n) => c with { Motors = [(n, 0)] })],
        };
        return LimitFinder.Pull(TestRobots.Pull(robot), new LimitCondition())!.Force;
    }

    // common practice, no source: at part throttle the loaded motor stands and takes most of the current while the light one turns
    [Fact]
    public void Two_motors_in_parallel_on_one_controller_let_one_bog_down()
    {
        LimitResult report = LimitFinder.Find(TestRobots.Pull(TestRobots.FourWheels(Tyre(1.0))), throttle: 0.2);
        WiringCase parallel = report.Wirings.Single(w => w.Wiring == Wiring.Parallel && w.Case == WheelLoss.Lifted);
        WiredMotor light = parallel.Motors.Single(m => m.Drive == "front left");
        WiredMotor loaded = parallel.Motors.Single(m => m.Drive == "rear left");
        Assert.True(light.SurfaceSpeed > 0.1);
        Assert.Equal(0.0, loaded.SurfaceSpeed);
        Assert.True(loaded.Current > 3.0 * light.Current);

        // in series the turning motor takes the voltage, and the standing one pushes less
        WiringCase series = report.Wirings.Single(w => w.Wiring == Wiring.Series && w.Case == WheelLoss.Lifted);
        Assert.True(series.Motors.Single(m => m.Drive == "front left").PowerShare > 0.8);
        Assert.True(series.Motors.Single(m => m.Drive == "rear left").Force < 0.5 * loaded.Force);
        Assert.All(report.Wirings.Where(w => w.Motors.Sum(m => m.Power) > 0.0), w => Assert.Equal(1.0, w.Motors.Sum(m => m.PowerShare), 1e-12));
    }
}
