using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Stopping by sliding, and sliding that turns into rolling, against textbook numbers.</summary>
public class ExternalSlidingTests
{
    // treads whose own momentum does not count
    private static TyreSettings Light(double friction) => ExternalRobots.Coulomb(friction) with
    {
        TreadMass = 1e-4, BodyStiffness = 1e4, BodyDamping = 1.0, BreakawayDeflection = 0.2e-3,
    };

    // Locked wheels: a published exercise prints 51.7 m for 0.8 and 28.5 m/s (51.7489 computed here, g 9.81); HyperPhysics,
    // Georgia State, for 24.6 m/s, g 9.8 (3.13776 s and 38.5944 m computed here)
    [Theory]
    [InlineData(28.5, 9.81, 51.7489, 3.63150)]
    [InlineData(24.6, 9.80, 38.5944, 3.13776)]
    public void Locked_wheels_slide_the_textbook_distance(double speed, double gravity, double distance, double time)
    {
        (double runDistance, double runTime) = LockedSlide(speed, gravity, time + 1.0);
        Assert.Equal(distance, runDistance, 0.0005 * distance);
        Assert.Equal(time, runTime, 0.001 * time);
    }

    /// <summary>Way [m] and time [s] of a stop on locked wheels of friction 0.8.</summary>
    internal static (double Distance, double Time) LockedSlide(double speed, double gravity, double end)
    {
        TyreSettings tyre = Light(0.8);
        RobotSettings robot = ExternalRobots.FourCorners(ExternalRobots.Body(2.0, 0.02), tyre, 0.12, 0.15, 0.03, 1e-5, null, null, isSkid: true);
        RunResult run = ExternalRobots.Run(ExternalRobots.Scenario(robot, end, speed: speed, gravity: gravity, tolerance: 1e-6));
        int stop = run.Trace.Body.Speed.FindIndex(u => u <= 0.0);
        return (run.Trace.Body.X[^1], run.Time[stop]);
    }

    // A ball thrown without spin, as a robot on free wheels that together have the ball's inertia 2/5 m r^2. Halliday and
    // Resnick, from memory (1.2 s, 8.6 m, 6.1 m/s); the other from a forum's homework thread (deceleration 1.86 printed).
    // More digits computed here, g 9.8
    [Theory]
    [InlineData(8.1, 0.19, 1.24290, 8.62930, 5.78571)]
    [InlineData(8.5, 0.21, 1.18006, 8.59761, 6.07143)]
    public void Sliding_turns_into_rolling_where_the_textbook_says(double speed, double friction, double time, double distance, double rolling)
    {
        (List<(double T, double[] Y)> run, int grip) = SlideToRoll(speed, friction);
        Assert.Equal(rolling, run[^1].Y[StateLayout.U], 0.0005 * rolling);
        Assert.Equal(time, run[grip].T, 0.002 * time);
        Assert.Equal(distance, run[grip].Y[StateLayout.X], 0.002 * distance);
        double early = (speed - run[500].Y[StateLayout.U]) / 0.5;
        Assert.Equal(friction * 9.8, early, 0.002 * friction * 9.8);
    }

    /// <summary>Samples of a ball's slide until it rolls, g 9.8 m/s^2, and the sample at which it grips.</summary>
    internal static (List<(double T, double[] Y)> Run, int Grip) SlideToRoll(double speed, double friction)
    {
        const double mass = 4.0;
        const double radius = 0.11;
        TyreSettings tyre = Light(friction);
        RobotSettings robot = ExternalRobots.FourCorners(
            ExternalRobots.Body(mass, 0.0), tyre, 0.3, 0.3, radius, 0.4 * mass * radius * radius / 4.0, null, null);
        ScenarioSettings scenario = ExternalRobots.Scenario(robot, 2.0, speed: speed, gravity: 9.8, tolerance: 1e-6);
        List<(double T, double[] Y)> run = ExternalRobots.RunFrom(
            scenario,
            (system, y) =>
            {
                for (int i = 0; i < 4; i++)
                {
                    y[system.Layout.FirstDrive + i] = 0.0;
                    y[system.Layout.Tread(i)] = speed;
                }
            },
            0.001);
        int tread = new StateLayout(scenario with { Robot = ModelBuilder.InCanonicalOrder(scenario.Robot) }).Tread(0);
        return (run, run.FindIndex(s => s.Y[tread] < 0.001));
    }
}
