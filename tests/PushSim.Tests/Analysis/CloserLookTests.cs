using System.Diagnostics;
using System.Globalization;
using PushSim.Analysis;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests.Extremes;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>
/// The closer look keeps to its work, leaves out the same parts on every machine and names them. PUSHSIM_LOOKS=300 looks at that many extreme robots of each kind for three seconds
/// with the usual work and tells the worst time; PUSHSIM_LOOKS_FIRST=1 is the first seed.
/// </summary>
public class CloserLookTests(ITestOutputHelper output)
{
    // Of the usual run: enough for a few parts only [1], and short [s].
    private const long LittleWork = 60_000;
    private const double ShortEnd = 0.3;
    private const double LongEnd = 3.0;

    private static readonly int s_count = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_LOOKS"), CultureInfo.InvariantCulture, out int n) ? n : 0;

    private static readonly int s_first = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_LOOKS_FIRST"), CultureInfo.InvariantCulture, out int n) ? n : 1;

    [Theory]
    [InlineData("spot")]
    [InlineData("shove")]
    [InlineData("drive")]
    public void Extreme_robots_keep_to_the_work(string kind)
    {
        (long most, double end, int count) = s_count > 0 ? (CloserLook.UsualWork, LongEnd, s_count) : (LittleWork, ShortEnd, 4);
        (double answer, double look, int slowest, int cut) = (0.0, 0.0, 0, 0);
        List<string> faults = [];
        for (int seed = s_first; seed < s_first + count; seed++)
        {
            TimeSpan begin = Process.GetCurrentProcess().TotalProcessorTime;
            RunResult run = Simulator.Run(Extreme(kind, seed, end));
            TimeSpan middle = Process.GetCurrentProcess().TotalProcessorTime;
            LookCost report = CloserLook.Review(run, new WorkBudget(most)).Look!;
            (double first, double second) = ((middle - begin).TotalSeconds, (Process.GetCurrentProcess().TotalProcessorTime - middle).TotalSeconds);
            slowest = first + second > answer + look ? seed : slowest;
            (answer, look, cut) = (Math.Max(answer, first), Math.Max(look, second), cut + (report.LeftOut.Count > 0 ? 1 : 0));
            if (report.Evaluations > 1.01 * most || report.LeftOut.Distinct().Count() != report.LeftOut.Count)
            {
                faults.Add($"seed {seed}: {report.Evaluations} of {most}, left out {string.Join(' ', report.LeftOut)}");
            }
        }

        output.WriteLine(FormattableString.Invariant($"{kind}: {count} robots, answer at worst {answer:0.0} s, closer look at worst {look:0.0} s of CPU (seed {slowest}), something left out in {cut}"));
        Assert.Empty(faults);
    }

    // own check: work is counted, so what is left out hangs on no clock and no order of threads
    [Theory]
    [InlineData(10_000)]
    [InlineData(75_000)]
    [InlineData(200_000)]
    public void The_same_work_leaves_out_the_same(long most)
    {
        RunResult run = Simulator.Run(TestRobots.Spot());
        RunResult[] looks = [.. Enumerable.Range(0, 3).Select(_ => CloserLook.Review(run, new WorkBudget(most)))];
        Assert.All(looks, l => Assert.Equal(looks[0].Look!.LeftOut, l.Look!.LeftOut));
        Assert.All(looks, l => Assert.Equal(looks[0].Look!.Evaluations, l.Look!.Evaluations));
        Assert.All(looks, l => Assert.Equal((looks[0].Turning!.LeastCurrentShare, looks[0].Turning!.Range, looks[0].Chatter), (l.Turning!.LeastCurrentShare, l.Turning!.Range, l.Chatter)));
        Assert.NotEmpty(looks[0].Look!.LeftOut);
        Assert.InRange(looks[0].Look!.Evaluations, 1, (long)(1.01 * most));
    }

    // what was not left out is what an endless look finds
    [Fact]
    public void Parts_that_are_done_are_those_of_an_endless_look()
    {
        RunResult run = Simulator.Run(TestRobots.Spot());
        RunResult whole = CloserLook.Review(run, WorkBudget.Endless());
        Assert.Empty(whole.Look!.LeftOut);
        Assert.Null(whole.Look.Allowed);
        RunResult part = CloserLook.Review(run, new WorkBudget(whole.Look.Evaluations));
        Assert.NotEmpty(part.Look!.LeftOut);
        Assert.Equal(part.Look.LeftOut.Contains(LookPart.LeastCurrent) ? null : whole.Turning!.LeastCurrentShare, part.Turning!.LeastCurrentShare);
        Assert.Equal(part.Look.LeftOut.Contains(LookPart.LeastMotor) ? null : whole.Turning!.LeastMotorShare, part.Turning.LeastMotorShare);
        Assert.Equal(part.Look.LeftOut.Contains(LookPart.Helps) ? [] : whole.Turning!.Helps, part.Turning.Helps);
        Assert.Equal(part.Look.LeftOut.Contains(LookPart.Range) ? null : whole.Turning!.Range, part.Turning.Range);
    }

    // a quiet run whose small swings were not looked at is not told as quiet
    [Fact]
    public void Without_work_nothing_is_claimed()
    {
        RunResult run = CloserLook.Review(Simulator.Run(TestRobots.Spot()), new WorkBudget(0));
        Assert.Equal(TurnEase.Unknown, run.Turning!.Ease);
        Assert.Equal(NoModesCause.LeftOut, run.Turning.NoModes);
        Assert.Equal(ChatterVerdict.Unknown(ChatterDoubt.NoSteadyTurn, NoModesCause.LeftOut), run.Chatter);
        RunResult shove = CloserLook.Review(Simulator.Run(TestRobots.Shove(TestRobots.FourWheels(Turning.GrowthTests.Bouncy with { BodyDamping = 0.05, VerticalDamping = 0.2 }), TestRobots.FourWheels(), end: 0.5, gap: 0.002)), new WorkBudget(0));
        Assert.Null(shove.Shove!.TooCloseToCall);
        Assert.Null(shove.Start);
        
        // its tyres chatter, and what would keep them quiet takes runs, too
        Assert.Equal([LookPart.CloseCall, LookPart.Bump, LookPart.Starts, LookPart.Cure], shove.Look!.LeftOut);
    }

    private static ScenarioSettings Extreme(string kind, int seed, double end)
    {
        ScenarioSettings s = kind switch
        {
            "spot" => TestRobots.Spot(ExtremeRobots.Alone(seed).Robot),
            "shove" => ExtremeRobots.Pair(seed),
            _ => ExtremeRobots.Alone(seed),
        };
        return s with { Manoeuvre = s.Manoeuvre with { EndTime = end } };
    }
}
