using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests.Bodies;
using PushSim.Words.Turns;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>An arc that takes up more than a fifth of the grip sideways says that height of the mass and grip decide it; others say nothing of that.</summary>
public class SidewaysWordsTests
{
    // sideways acceleration is speed times yaw rate (any textbook of dynamics), its grip mu_k g on a level floor
    [Theory]
    [InlineData("arc", "0.9", "0.2", true)]
    [InlineData("arc", "0.9", "0.1", false)]
    [InlineData("spot-turn", "1", "1", false)]
    public void Height_and_grip_decide_where_the_arc_takes_up_a_fifth_of_it(string scenario, string throttle, string turn, bool isTold)
    {
        ScenarioSettings s = scenario == "arc" ? Shipped.Read(scenario, ("manoeuvre.throttle", throttle), ("manoeuvre.turn", turn)) : Shipped.Read(scenario);
        RunResult run = Simulator.Run(s);
        int settled = run.Time.Length * 2 / 5;
        double sideways = run.Trace.Body.Speed.TakeLast(settled).Average() * run.Trace.Body.YawRate.TakeLast(settled).Average();
        double grip = 9.80665 * s.Robot.Wheels[0].Tyre.KineticFriction * s.Floor.FrictionScale;
        string? words = TurnWords.Sideways(run);
        Assert.Equal(isTold, words is not null);
        if (isTold)
        {
            Assert.True(sideways > 0.2 * grip);
            Assert.Equal(FormattableString.Invariant($"{sideways:0.0} m/s² sideways are {100.0 * sideways / grip:0} % of its grip, so height of the mass and grip decide how it turns"), words);
        }
    }
}
