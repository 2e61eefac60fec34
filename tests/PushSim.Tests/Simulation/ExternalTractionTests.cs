using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Launch, load transfer and electric braking against textbook numbers.</summary>
public class ExternalTractionTests
{
    private const double CarRadius = 0.3;

    // A vehicle whose driven wheels spin on constant friction; treads and wheels so light that they weigh under 0.05 %, springs so stiff that its pitch does not carry the
    // centre of mass back over the wheels (0.3 % of the acceleration at 200 N/mm)
    private static ScenarioSettings Car(
        double mass, double wheelbase, double height, double forward, double friction, bool front, bool rear, double gravity, double end)
    {
        TyreSettings tyre = ExternalRobots.Coulomb(friction) with
        {
            TreadMass = 0.1, BreakawayDeflection = 3e-3, BodyStiffness = 2e5, BodyDamping = 200.0,
            VerticalStiffness = 2e6, VerticalDamping = 2.0, ReferenceLoad = 4000.0,
        };
        MotorSettings motor = ExternalRobots.WheelMotor(CarRadius, 100.0, 40000.0);
        RobotSettings robot = ExternalRobots.FourCorners(
            ExternalRobots.Body(mass, height, forward, wheelbase), tyre, wheelbase, 1.5, CarRadius, 0.005,
            front ? motor : null, rear ? motor : null, limit: 8000.0 * CarRadius / motor.TorqueConstant);
        return ExternalRobots.Scenario(robot, end, throttle: 1.0, gravity: gravity, tolerance: 1e-5);
    }

    // 1800 kg: problem and formulas of a lecture on vehicle dynamics (slides); 1150 mm behind the front axle: a textbook
    // example 31.7 on a reference site; 1550 kg: Jazar, Vehicle Dynamics, ch. 2, exercise 10. Numbers computed here
    [Theory]
    [InlineData(1800, 2.60, 0.70, 1.300, 0.7, true, false, 2.88903)]
    [InlineData(1800, 2.60, 0.70, 1.300, 0.7, false, true, 4.23085)]
    [InlineData(1800, 2.60, 0.70, 1.300, 0.7, true, true, 6.867)]
    [InlineData(1500, 2.75, 0.85, 1.150, 0.6, true, false, 2.88883)]
    [InlineData(1500, 2.75, 0.85, 1.150, 0.6, false, true, 3.02183)]
    [InlineData(1500, 2.75, 0.85, 1.150, 0.6, true, true, 5.886)]
    [InlineData(1550, 2.62, 0.72, 1.310, 0.8, false, true, 5.02978)]
    [InlineData(1550, 2.62, 0.72, 1.310, 0.8, true, false, 3.21680)]
    [InlineData(1550, 2.62, 0.72, 1.310, 0.8, true, true, 7.848)]
    public void Load_transfer_sets_the_acceleration(
        double mass, double wheelbase, double height, double behindFront, double friction, bool front, bool rear, double expected)
    {
        Assert.Equal(expected, Acceleration(mass, wheelbase, height, behindFront, friction, front, rear), 0.002 * expected);
    }

    /// <summary>Acceleration [m/s^2] over the fourth second of a launch with spinning wheels.</summary>
    internal static double Acceleration(double mass, double wheelbase, double height, double behindFront, double friction, bool front, bool rear)
    {
        RunResult run = ExternalRobots.Run(Car(mass, wheelbase, height, (wheelbase / 2) - behindFront, friction, front, rear, 9.81, 4.0));
        return run.At(t => t.Body.Speed, 4.0) - run.At(t => t.Body.Speed, 3.0);
    }

    // Tutor's answer: 48 % of the weight on driven wheels, no transfer, printed 2.82 m/s^2 and 10.3 s to 105 km/h (10.334
    // computed here, g 9.8)
    [Fact]
    public void Without_height_no_load_is_transferred()
    {
        RunResult run = ExternalRobots.Run(Car(1500, 2.6, 0.0, 0.02 * 2.6, 0.6, false, true, 9.8, 11.0));
        Assert.Equal(2.8224, run.At(t => t.Body.Speed, 9.0) - run.At(t => t.Body.Speed, 8.0), 0.002 * 2.8224);
        int there = run.Trace.Body.Speed.FindIndex(u => u >= 105.0 / 3.6);
        Assert.Equal(10.334, run.Time[there], 0.002 * 10.334);
    }

    // The mass that motors move is M + sum I/R^2 = 1.36 kg; no slip: great friction, hard tyre
    internal static ScenarioSettings Light(double limit, double end, double throttle, double speed)
    {
        const double radius = 0.03;
        const double rolling = 0.04;
        TyreSettings tyre = ExternalRobots.Coulomb(20.0) with
        {
            TreadMass = 1e-3, BreakawayDeflection = 1e-4, BodyStiffness = 2e5, BodyDamping = 10.0,
        };
        MotorSettings motor = ExternalRobots.WheelMotor(radius, 3.0, 5.0);
        RobotSettings robot = ExternalRobots.FourCorners(
            ExternalRobots.Body(1.36 - (4 * rolling), 0.0), tyre, 0.12, 0.15, radius, rolling * radius * radius, motor, motor,
            limit * radius / motor.TorqueConstant);
        return ExternalRobots.Scenario(robot, end, throttle, speed: speed);
    }

    // v = vf (1 - e^(-t/tau)), tau = M vf/F; computed here
    [Fact]
    public void Motor_and_mass_approach_their_speed_exponentially()
    {
        RunResult run = ExternalRobots.Run(Light(double.PositiveInfinity, 0.3, 1.0, 0.0));
        Assert.Equal(1.874508159, run.At(t => t.Body.Speed, 0.2), 0.0005 * 1.8745);
        Assert.Equal(0.217600335, run.At(t => t.Body.X, 0.2), 0.001 * 0.2176);
    }

    // Limit of 8 N in all: constant acceleration to 1.8 m/s, then exponential; computed here
    [Fact]
    public void Current_limit_makes_the_start_a_straight_line()
    {
        RunResult run = ExternalRobots.Run(Light(2.0, 0.6, 1.0, 0.0));
        Assert.Equal(0.9, run.At(t => t.Body.Speed, 0.153), 0.001 * 0.9);
        Assert.Equal(2.536365538, run.At(t => t.Body.Speed, 0.5), 0.0005 * 2.5364);
        Assert.Equal(0.707181430, run.At(t => t.Body.X, 0.5), 0.001 * 0.7072);
    }

    // Shorted motors: v = v0 e^(-t/tau), distance v0 tau, tau = 0.204 s; computed here
    [Fact]
    public void Shorted_motors_brake_exponentially()
    {
        RunResult run = ExternalRobots.Run(Light(double.PositiveInfinity, 3.0, 0.0, 2.0));
        Assert.Equal(2.0 * Math.Exp(-0.2 / 0.204), run.At(t => t.Body.Speed, 0.2), 0.001);
        Assert.Equal(2.0 * 0.204, run.Trace.Body.X[^1], 0.001 * 0.408);
    }
}
