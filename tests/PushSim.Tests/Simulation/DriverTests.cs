using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>The driver by himself, in closed form, and what he does to runs. Sizes of the settings are common practice, no source.</summary>
public class DriverTests
{
    private static readonly DriverSettings s_keen = new() { Steering = 2.0, SteeringLimit = 0.4, SteeringRate = 5.0, DeadTime = 0.1 };

    // 2 tan(a/2), from geometry: up to 154 degrees; 0 right behind
    [Theory]
    [InlineData(0.0)]
    [InlineData(0.3)]
    [InlineData(1.5)]
    [InlineData(2.6)]
    public void The_seen_angle_is_twice_the_tangent_of_its_half(double angle)
    {
        double seen = Seen(angle, 0.4, 0.2);
        Assert.Equal(2.0 * Math.Tan(0.5 * angle), seen, 1e-4 + (1e-4 * seen));
        Assert.Equal(-seen, Seen(-angle, 0.4, 0.2), 1e-9);
        Assert.Equal(0.0, Seen(Math.PI, 0.4, 0.2), 1e-9);
    }

    // Steps through half a turn and behind: the greatest change falls with the step, so nothing jumps
    [Fact]
    public void The_seen_angle_has_no_jump_anywhere()
    {
        Assert.InRange(Greatest(4000) / Greatest(16_000), 3.5, 4.5);

        static double Greatest(int steps) => Enumerable.Range(0, steps).Max(i => Math.Abs(Seen(Math.Tau * (i + 1) / steps, 0.3, 0.1) - Seen(Math.Tau * i / steps, 0.3, 0.1)));
    }

    // Three equal lags of T/3 after a step: 1 - e^-x (1 + x + x^2/2), x = 3t/T, the distribution of Erlang of shape 3 (Erlang 1909; from memory)
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.1)]
    [InlineData(0.2)]
    public void The_dead_time_is_a_chain_of_three_lags(double time)
    {
        double[] y = After(s_keen with { Steering = 1e-3 }, time, out double seen);
        double x = 3.0 * time / s_keen.DeadTime;
        Assert.Equal(1.0 - (Math.Exp(-x) * (1.0 + x + (0.5 * x * x))), y[2] / seen, 1e-3);
    }

    [Fact]
    public void The_stick_keeps_its_rate_and_its_limit()
    {
        Assert.Equal(0.4, Math.Abs(After(s_keen, 2.0, out _)[3]), 1e-9);
        DriverSettings slow = s_keen with { SteeringRate = 0.5 };
        double before = After(slow, 0.3, out _)[3];
        double after = After(slow, 0.4, out _)[3];
        Assert.Equal(0.05, Math.Abs(after - before), 1e-5);
    }

    [Fact]
    public void A_driver_who_steers_meets_the_opponent_straight()
    {
        ScenarioSettings free = Meeting(new DriverSettings());
        double without = OffSight(free);
        double with = OffSight(free with { Manoeuvre = free.Manoeuvre with { Driver = s_keen } });
        Assert.InRange(without, 0.2, 1.0);
        Assert.InRange(with, 0.0, 0.4 * without);
    }

    // a robot alone has nobody to steer to: to the bit the run without
    [Fact]
    public void Alone_nobody_is_steered_to()
    {
        ScenarioSettings wall = Wall(new DriverSettings());
        Assert.Equal(Simulator.Run(wall).Trace.Body.X, Simulator.Run(Wall(s_keen)).Trace.Body.X);
    }

    // against a wall: 0.5 s after the robot stands the throttle goes down by 1 a second, to 60 %, and stays
    [Fact]
    public void A_driver_who_gains_no_ground_eases_off()
    {
        RunResult run = Simulator.Run(Wall(new DriverSettings { EaseTo = 0.6 }));
        List<double> command = [.. run.Trace.Controllers[0].Command];
        int full = command.FindLastIndex(c => c > 0.999);
        // it meets the wall at speed and stands or comes back from then on, but for a bounce or two
        double stands = run.Trace.Time[run.Trace.Body.Speed.ToList().FindIndex(150, v => v < 0.02)];
        Assert.InRange(run.Trace.Time[full] - stands, 0.495, 0.6);
        Assert.Equal(0.6, command[^1], 1e-3);
        int mid = command.FindIndex(full, c => c < 0.8);
        Assert.Equal(-1.0, (command[mid + 50] - command[mid - 50]) / (run.Trace.Time[mid + 50] - run.Trace.Time[mid - 50]), 0.02);
    }

    [Fact]
    public void Equal_drivers_do_the_same_to_the_bit()
    {
        ScenarioSettings s = Meeting(s_keen with { EaseTo = 0.5, EaseAfter = 0.1 });
        // equal robots, the one's driver the other's: each does what the other did
        ScenarioSettings pair = s with { Manoeuvre = s.Manoeuvre with { InitialHeading = 0.1 }, Opponent = s.Opponent! with { Manoeuvre = s.Manoeuvre with { InitialHeading = 0.1 } } };
        RunResult both = Simulator.Run(pair);
        Assert.Equal(both.Trace.Body.X, both.Opponent!.Trace.Body.X);
        Assert.Equal(both.Trace.Body.Heading, both.Opponent.Trace.Body.Heading);
        Assert.Equal(both.Trace.Controllers[0].Command, both.Opponent.Trace.Controllers[0].Command);
        Assert.True(both.Trace.Controllers[0].Command.Min() < 0.9);
    }

    private static ScenarioSettings Meeting(DriverSettings driver)
    {
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalDamping = 8.0 });
        ScenarioSettings s = TestRobots.Shove(robot, robot, end: 2.0, gap: 0.4, offset: 0.02);
        return s with
        {
            Manoeuvre = s.Manoeuvre with { InitialHeading = 0.35, Commands = [new(0.05, 0.3, 0.0)], Driver = driver },
            Opponent = s.Opponent! with { Manoeuvre = s.Opponent.Manoeuvre with { Commands = [], Driver = new() } },
        };
    }

    // angle between nose and line of sight when they touch [rad]
    private static double OffSight(ScenarioSettings s)
    {
        RunResult run = Simulator.Run(s);
        int i = Math.Max(1, run.Trace.Contact!.Force.ToList().FindIndex(f => f > 0.0));
        (BodyTrace a, BodyTrace b) = (run.Trace.Body, run.Opponent!.Trace.Body);
        return Math.Abs(Math.Atan2(-b.Y[i] - a.Y[i], -b.X[i] - a.X[i]) - a.Heading[i]);
    }

    private static ScenarioSettings Wall(DriverSettings driver)
    {
        ScenarioSettings s = TestRobots.Launch();
        return s with
        {
            Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.WallPush, EndTime = 2.0, Commands = [new(0.1, 1.0, 0.0)], Driver = driver },
            Walls = [new(0.12, -0.5, 0.12, 0.5)],
        };
    }

    private static double Seen(double angle, double distance, double heading)
    {
        DriverEquations<R1> driver = Equations(new DriverSettings());
        driver.SightX = distance * Math.Cos(heading + angle);
        driver.SightY = distance * Math.Sin(heading + angle);
        return driver.Seen(Math.Sin(heading), Math.Cos(heading)).Value;
    }

    private static DriverEquations<R1> Equations(DriverSettings driver) => new(new ManoeuvreSettings { Kind = ManoeuvreKind.Shove, Commands = [], EndTime = 1.0, Driver = driver });

    // States of steering some time after an opponent appeared to the left, by small Euler steps, the robot held
    private static double[] After(DriverSettings settings, double time, out double seen)
    {
        ScenarioSettings s = Meeting(settings);
        StateLayout layout = new(SceneBuilder.InCanonicalOrder(s) with { Opponent = null });
        DriverEquations<R1> driver = Equations(settings);
        (driver.SightX, driver.SightY) = (0.3, 0.3);
        R1[] y = new R1[layout.Count];
        R1[] dy = new R1[layout.Count];
        var work = new ControllerWork<R1>[2];
        const int Steps = 20_000;
        for (int i = 0; i < Steps; i++)
        {
            work[0].Duty = work[1].Duty = 1.0;
            driver.Apply(layout, y, dy, 0.0, 1.0, work, [new() { SideSign = -1.0 }, new() { SideSign = 1.0 }]);
            for (int k = layout.Steering; k < layout.Steering + 4; k++)
            {
                y[k] = y[k] + (time / Steps * dy[k]);
            }
        }

        seen = driver.Seen(0.0, 1.0).Value;
        return [.. Enumerable.Range(layout.Steering, 4).Select(k => y[k].Value)];
    }
}
