using PushSim.Analysis;
using PushSim.Contact;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>The bump of a shove against runs on ice, where nothing else changes momentum and energy.</summary>
public class BumpReviewTests
{
    // two robots that roll towards each other on floor without grip: speeds before and after tell all three; treads and rotors keep a few per cent out of it
    [Theory]
    [InlineData(0.4)]
    [InlineData(1.0)]
    public void On_ice_the_run_passes_and_loses_what_is_told(double speed)
    {
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalDamping = 8.0 });
        ScenarioSettings s = TestRobots.Shove(robot, robot.WithMass(2.0), end: 0.3, gap: 0.02);
        s = s with
        {
            Floor = s.Floor with { FrictionScale = 1e-3 },
            Manoeuvre = s.Manoeuvre with { Commands = [], InitialSpeed = speed },
            Opponent = s.Opponent! with { Manoeuvre = s.Opponent.Manoeuvre with { Commands = [] } },
            Contact = new ContactSettings { Restitution = 0.4 },
        };
        RunResult run = Simulator.Run(s);
        Bump bump = BumpReview.Of(run)!;
        (double m1, double m2) = (robot.Chassis.Mass, 2.0);
        int after = run.Trace.IndexAt(run.Shove!.FirstContact!.Value + 0.02);
        (double u1, double u2) = (run.Trace.Body.Speed[after], -run.Opponent!.Trace.Body.Speed[after]);

        // rolling resistance takes a little before the touch
        Assert.InRange(bump.ClosingSpeed, 0.95 * speed, speed);
        speed = bump.ClosingSpeed;
        Assert.Equal((u2 - u1) / speed, bump.Restitution, 0.02);
        Assert.Equal(m2 * u2, bump.Momentum, 0.03 * bump.Momentum);
        Assert.Equal(0.5 * ((m1 * speed * speed) - (m1 * u1 * u1) - (m2 * u2 * u2)), bump.EnergyLost, 0.04 * bump.EnergyLost);
    }

    // who starts nose to nose has no bump to gain from
    [Fact]
    public void Robots_that_start_nose_to_nose_do_not_bump()
    {
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalDamping = 8.0 });
        Assert.Null(BumpReview.Of(Simulator.Run(TestRobots.Shove(robot, robot.WithMass(1.2), end: 0.5, gap: 1e-5))));
    }

    // a heavy robot at speed gains ground by it that it does not gain from a stand
    [Fact]
    public void A_run_up_gives_a_share_of_the_ground()
    {
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalDamping = 8.0 });
        ScenarioSettings s = TestRobots.Shove(robot.WithMass(1.5), robot, end: 0.7, gap: 0.2);
        s = s with { Opponent = s.Opponent! with { Manoeuvre = s.Opponent.Manoeuvre with { Commands = [new(0.35, 1.0, 0.0)] } } };
        double share = BumpReview.Of(Simulator.Run(s))!.GroundShare!.Value;
        Assert.InRange(share, 0.1, 1.5);
    }
}
