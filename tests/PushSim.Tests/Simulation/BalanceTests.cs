using PushSim.Contact;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Where a robot falls over by itself: its centre of mass straight above what it tips on. Statics of a tipped box, any textbook; computed here.</summary>
public class BalanceTests
{
    private const double Degree = Math.PI / 180.0;

    // search step of a quarter of a degree
    private const double Tolerance = 0.26 * Degree;

    // the tail's lower edge stands b behind and h - c below the centre of mass: tan t = b/(h - c)
    [Theory]
    [InlineData(0.0, 0.002)]
    [InlineData(0.01, 0.006)]
    [InlineData(-0.015, 0.004)]
    public void A_box_balances_on_its_lower_edge(double forward, double clearance)
    {
        RobotSettings robot = TestRobots.FourWheels();
        PushSim.Chassis.ChassisSettings c = robot.Chassis with { CentreOfMassX = forward };
        robot = robot with { Chassis = c, Outline = OutlineSettings.Box(c with { Length = 0.4 }, clearance, 0.06) };
        var balance = new Balance(robot);
        double below = c.CentreOfMassHeight - clearance;
        Assert.Equal(Math.Atan2(0.2 + forward, below), balance.Angle(4), Tolerance);
        Assert.Equal(Math.Atan2(0.2 - forward, below), balance.Angle(0), Tolerance);
    }

    // a short body: it tips on its rear wheels, whose hub stands b behind and h - R below the centre of mass
    [Fact]
    public void A_short_body_balances_on_its_wheels()
    {
        RobotSettings robot = TestRobots.FourWheels();
        robot = robot with { Outline = OutlineSettings.Box(robot.Chassis with { Length = 0.03, Width = 0.03 }, 0.01, 0.03) };
        double rear = robot.Wheels.Min(w => w.X) - robot.Chassis.CentreOfMassX;
        double radius = robot.Wheels[0].Radius;
        Assert.Equal(Math.Atan2(-rear, robot.Chassis.CentreOfMassHeight - radius), new Balance(robot).Angle(4), Tolerance);
    }
}
