using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests.Contact;
using Xunit;

namespace PushSim.Tests.Bodies;

/// <summary>Statics of bodies in closed form to a thousandth (any textbook of statics): tilting board, a push that tips, an axle lifted over a wedge, self-locking.</summary>
public class BodyStaticsTests
{
    private const double Share = 1e-3;

    // on tyres that do not give, a robot tips off a board at tan(angle) = b/h, b from the centre of mass to the lower axle
    [Theory]
    [InlineData(0.0, 0.028, 1.0)]
    [InlineData(0.015, 0.05, 1.0)]
    [InlineData(0.015, 0.05, -1.0)]
    public void A_tilting_board_tips_a_robot_at_the_closed_form(double forward, double height, double up)
    {
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalStiffness = 1e8 }, height: height, forward: forward);
        ScenarioSettings s = TestRobots.Launch(robot);
        double stands = 0.0;
        double falls = 1.5;
        for (int i = 0; i < 40; i++)
        {
            double angle = 0.5 * (stands + falls);
            (stands, falls) = Stands(s with { Floor = s.Floor with { SlopeX = up * angle } }) ? (angle, falls) : (stands, angle);
        }

        double arm = up > 0.0 ? forward - robot.Wheels.Min(w => w.X) : robot.Wheels.Max(w => w.X) - forward;
        double expected = Math.Atan2(arm, height);
        Assert.Equal(expected, stands, Share * expected);
    }

    // Two driven wheels in front, casters behind that hang at a height: heavy behind, it stands on them, nose up by t: L sin t - height cos t = their sink - the wheels'.
    [Theory]
    [InlineData(0.004)]
    [InlineData(0.012)]
    public void Raised_casters_carry_at_the_angle_of_their_height(double height)
    {
        RobotSettings four = TestRobots.FourWheels(TestRobots.SoftTyre with { RollingResistance = 0.0 }, forward: -0.02);
        RobotSettings robot = four with
        {
            Outline = OutlineSettings.Box(four.Chassis, 0.03, 0.06),
            Wheels = [.. four.Wheels.Select(w => w.X > 0.0 ? w : w with { Height = height, IsSkid = true })],
            Drives = [.. four.Drives.Take(2)],
            Controllers = [.. four.Controllers.Take(2)],
        };
        RunResult run = Simulator.Run(TestRobots.Scenario(robot, ManoeuvreKind.Launch, 0.0, 0.0, 0.2));
        double[] sink = [.. robot.Wheels.Select((w, i) => run.Trace.Wheels[i].Load[^1] / w.Tyre.VerticalStiffness)];
        Assert.Equal(9.80665 * robot.Chassis.Mass, run.Trace.Wheels.Sum(w => w.Load[^1]), 1e-3);
        double wheelbase = robot.Wheels[0].X - robot.Wheels[2].X;
        double expected = Math.Atan2(height, wheelbase) + Math.Asin((sink[2] - sink[0]) / double.Hypot(wheelbase, height));
        Assert.Equal(expected, -run.Trace.Body.Pitch[^1], 2.0 * Share * expected);
    }

    // a block pushed at height z tips where F z = m g b: the greatest moment the floor can give against it at any small tilt
    [Theory]
    [InlineData(0.04, 0.16)]
    [InlineData(0.1, 0.05)]
    public void A_push_tips_a_block_at_the_closed_form(double length, double height)
    {
        const double Weight = 5.0;
        FaceSettings face = new(0.0, height);
        (double x, double y) = (0.5 * length, 0.05);
        ContactBody block = new([(x, -y), (x, y), (-x, y), (-x, -y)], [face, face, face, face], 0.5 * height);
        var floor = new FloorContact<R1>(block, new UndersideSettings { Stiffness = 1e9 });
        double greatest = 0.0;
        for (double tilt = 0.0; tilt < 1e-3; tilt += 5e-6)
        {
            greatest = Math.Max(greatest, Righting(floor, -tilt, 0.5 * height, Weight));
        }

        double expected = Weight * x;
        Assert.Equal(expected, greatest, Share * expected);
    }

    // An axle lifted over a wedge: the rider's nose carries V at a distance l from its rear axle while the wedge, going under, pushes H = V tan(beta + atan mu) at the nose's height z above it:
    // V l + H z = m g b.
    [Theory]
    [InlineData(20.0, 0.1)]
    [InlineData(30.0, 0.3)]
    [InlineData(45.0, 0.3)]
    public void The_force_that_lifts_an_axle_over_a_wedge(double beta, double mu)
    {
        const double Weight = 10.0;
        const double B = 0.06;
        double angle = beta * Math.PI / 180.0;

        // rear axle's contact with the floor, from the rider's centre of mass: the moment of the wedge about it, as the contact's law gives it, per horizontal force
        const double Back = 0.055;
        WedgeTests.Outcome o = WedgeTests.Slide(angle, mu, 0.0, 0.2);
        double moment = o.Moment + (Back * o.Up) + (o.Centre * o.Along);
        double force = o.Along * Weight * B / moment;

        // the rider's nose stands 0.1 m before its centre of mass, its lower edge, 8 mm below it, on the slope
        double ratio = Math.Tan(angle + Math.Atan(mu));
        double expected = Weight * B / (((0.1 + Back) / ratio) + (o.Centre - 0.008));
        Assert.Equal(expected, force, Share * expected);
    }

    // sliding back from under needs no force at tan(beta - atan mu) = 0: below that angle it holds by itself
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.3)]
    [InlineData(0.6)]
    public void A_wedge_locks_itself_at_the_friction_angle(double mu)
    {
        double low = 0.5 * Math.Atan(mu);
        double high = 2.0 * Math.Atan(mu);
        for (int i = 0; i < 30; i++)
        {
            double angle = 0.5 * (low + high);
            (low, high) = WedgeTests.Ratio(angle, mu, 0.0, -0.2) < 0.0 ? (angle, high) : (low, angle);
        }

        Assert.Equal(Math.Atan(mu), low, Share * Math.Atan(mu));
    }

    private static bool Stands(ScenarioSettings s)
    {
        try
        {
            _ = StaticState.Solve(s);
            return true;
        }
        catch (SimulationException)
        {
            return false;
        }
    }

    // moment of the floor about the corner's side, nose down positive turned into righting, at the height where it carries the weight
    private static double Righting(FloorContact<R1> floor, double pitch, double centre, double weight)
    {
        double low = centre - 1e-3;
        double high = centre + 1e-3;
        Wrench<R1> wrench = default;
        for (int i = 0; i < 80; i++)
        {
            double height = 0.5 * (low + high);
            Attitude<R1> attitude = default;
            attitude.Set(0.0, 2.0 * Math.Sin(0.5 * pitch));
            wrench = default;
            floor.Apply(attitude, default, 0.0, 1.0, height, 0.0, new R1[3], new R1[3], ref wrench);
            (low, high) = wrench.Fz.Value > weight ? (height, high) : (low, height);
        }

        return Math.Abs(wrench.Pitch.Value);
    }
}
