using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>The force of a tether alone against that of the whole record.</summary>
public class TetherRunTests
{
    [Fact]
    public void The_force_has_the_bits_of_the_whole_record()
    {
        ScenarioSettings pull = TestRobots.Pull();
        RunResult whole = Simulator.Run(pull);
        Assert.Equal(RunStatus.Finished, whole.Status);
        (double[] time, double[] force) = TetherRun.Of([pull], default)[0]!.Value;
        Assert.Equal(whole.Time.Values.ToArray(), time);
        Assert.Equal(whole.Trace.Tether!.Force.Values.ToArray(), force);
        Assert.Contains(force, f => f > 1.0);
    }

    // six with other tyres, one with another structure, one that fails: in lanes as alone
    [Fact]
    public void Several_have_the_bits_of_each_alone()
    {
        ScenarioSettings pull = TestRobots.Pull();
        ScenarioSettings[] all =
        [
            .. Enumerable.Range(0, 6).Select(i => Tyres(pull, t => t with { StaticFriction = t.StaticFriction * (1.0 + (0.05 * i)), BodyStiffness = t.BodyStiffness * (1.0 + (0.2 * i)) })),
            Tyres(pull, t => t with { LateralFrictionRatio = 1.2 }),
            pull with { Numerics = pull.Numerics with { Tolerance = 1e-12, MaxEvaluationsPerSecond = 1.0 }, Manoeuvre = pull.Manoeuvre with { EndTime = 60.0 } },
        ];
        (double[] Time, double[] Force)?[] together = TetherRun.Of(all, default);
        for (int i = 0; i < all.Length; i++)
        {
            (double[] Time, double[] Force)? alone = TetherRun.Of([all[i]], default)[0];
            Assert.Equal(alone?.Time, together[i]?.Time);
            Assert.Equal(alone?.Force, together[i]?.Force);
        }

        Assert.Equal([true, false], [together[0] is not null, together[^1] is not null]);
    }

    private static ScenarioSettings Tyres(ScenarioSettings s, Func<TyreSettings, TyreSettings> change) =>
        s with { Robot = s.Robot with { Wheels = [.. s.Robot.Wheels.Select(w => w with { Tyre = change(w.Tyre) })] } };

    [Fact]
    public void A_run_that_fails_has_none()
    {
        ScenarioSettings pull = TestRobots.Pull();
        pull = pull with { Numerics = pull.Numerics with { Tolerance = 1e-12, MaxEvaluationsPerSecond = 1.0 }, Manoeuvre = pull.Manoeuvre with { EndTime = 1e4 } };
        Assert.Equal(RunStatus.Failed, Simulator.Run(pull).Status);
        Assert.Null(TetherRun.Of([pull], default)[0]);
    }
}
