using PushSim.Analysis.Limits;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Words.Terms;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

public class PlausibilityTests
{
    private static readonly Plausibility s_sound = new()
    {
        Robot = "m", Throttle = 1.0, TopSpeed = 2.0, MotorForce = 30.0, TyreForce = 13.0, Pull = 11.0, Binding = null, RearsUpAt = null, Weight = 13.3, FirstMetre = 0.6, Current = 10.0,
    };

    // each bound from both sides: 0.1 and 15 m/s, ten times the 13 N of the tyres and a tenth, 10 s, 200 A
    public static TheoryData<string, double, string> Bounds => new()
    {
        { "speed", 0.101, "" }, { "speed", 0.099, "Slow" }, { "speed", 14.9, "" }, { "speed", 15.1, "Fast" },
        { "force", 129.0, "" }, { "force", 131.0, "Strong" }, { "force", 1.31, "" }, { "force", 1.29, "Weak" },
        { "metre", 9.9, "" }, { "metre", 10.1, "Late" }, { "metre", double.NaN, "Late" }, { "current", 199.0, "" }, { "current", 201.0, "Hungry" },
    };

    [Theory]
    [MemberData(nameof(Bounds))]
    public void What_no_such_robot_has_is_doubted(string what, double value, string doubt)
    {
        Plausibility p = what switch
        {
            "speed" => s_sound with { TopSpeed = value },
            "force" => s_sound with { MotorForce = value },
            "metre" => s_sound with { FirstMetre = double.IsNaN(value) ? null : value },
            _ => s_sound with { Current = value },
        };
        Assert.Equal(doubt.Length == 0 ? [] : [doubt], p.Doubts.Select(d => d.GetType().Name));
    }

    // without a current limit the battery current is greatest at standstill, where limits tell it; with one, where the limit ends: the run knows
    [Theory]
    [InlineData(double.PositiveInfinity)]
    [InlineData(2.0)]
    public void It_is_the_robot_of_limits_and_run(double limit)
    {
        ScenarioSettings launch = TestRobots.Launch(TestRobots.FourWheels(limit: limit));
        Plausibility p = Assert.Single(PlausibilityFinder.All(launch));
        LimitResult limits = LimitFinder.Find(launch);
        Assert.Equal((limits.Now.TopSpeed, limits.Now.MotorForce, limits.Now.TractionPeak, limits.Now.Pull), (p.TopSpeed, p.MotorForce, p.TyreForce, p.Pull));
        Assert.Equal(limits.Outputs[LimitOutput.LaunchTime], p.FirstMetre);
        Assert.Equal(1.36 * 9.80665, p.Weight, 1e-9);
        RunResult run = Simulator.Run(launch);
        Assert.Equal(run.Answers.TimeToOneMetre!.Value, p.FirstMetre!.Value, 0.02 * p.FirstMetre.Value);

        // in the run front and rear wheels do not pass the greatest current at one time
        Assert.InRange(run.Answers.PeakBatteryCurrent!.Value, 0.9 * p.Current, 1.001 * p.Current);
        Assert.True(p.Current >= limits.Now.StallCurrent * (1.0 - 1e-9));
    }

    [Fact]
    public void Robots_that_nothing_drives_have_none()
    {
        ScenarioSettings launch = TestRobots.Launch();
        Assert.Empty(PlausibilityFinder.All(launch with { Robot = launch.Robot with { Battery = null } }));
        Assert.Empty(PlausibilityFinder.Of(launch.Robot with { Drives = [.. launch.Robot.Drives.Select(d => d with { Motors = [] })] }));
    }

    // a robot geared a hundred times slower: 20 000 N at the floor, 2 cm/s
    [Fact]
    public void A_run_warns_of_each_robot_that_cannot_be_meant()
    {
        RobotSettings slow = TestRobots.FourWheels(ratio: 2000.0);
        RunResult run = Simulator.Run(TestRobots.Shove(TestRobots.FourWheels(), slow, end: 0.05));
        Assert.DoesNotContain(run.Warnings, w => w is RunWarning.Doubtful);
        RunWarning[] doubts = [.. PlausibilityFinder.Review(run).Warnings.Where(w => w is RunWarning.Doubtful)];
        Assert.All(doubts, d => Assert.Equal(1, d.Robot));
        Assert.Equal(["Slow", "Strong", "Late"], doubts.Select(d => ((RunWarning.Doubtful)d).Why.GetType().Name));
        Assert.Equal(["Slow", "Strong", "Late"], LimitFinder.Find(LimitFinder.Standing(slow, "slow")).Warnings.OfType<LimitWarning.Doubtful>().Select(d => d.Why.GetType().Name));
    }

    [Fact]
    public void It_is_told_in_one_line()
    {
        Assert.Equal("m: top speed about 2.0 m/s, pulls 11 N of its 13.3 N weight, first metre about 0.60 s, up to 10 A", PlausibilityWords.Line(s_sound));
        Assert.Equal(
            "m at 60 % throttle: top speed about 9.9 m/s, rears up at 9.6 N of its 13.3 N weight, first metre never, up to 120 A",
            PlausibilityWords.Line(s_sound with { Throttle = 0.6, TopSpeed = 9.94, Pull = null, RearsUpAt = 9.57, FirstMetre = null, Current = 123.0 }));
        Assert.Equal("m: its motors give 2400 N at the floor, 180 times the 13 N that its tyres hold; check torques, currents, gear ratios and frictions", Assert.Single(PlausibilityWords.Warnings(s_sound with { MotorForce = 2400.0 })));
    }
}
