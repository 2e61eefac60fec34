using System.Diagnostics;
using System.Globalization;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Tests.Extremes;

/// <summary>
/// 50 g to 500 kg, friction 0.01 to 3, stiffness over six decades, 2 to 8 wheels, ratio 1 to 1000, commands at any time, impacts at any angle up to 10 m/s: every
/// run ends, is finite, and balances its energy or is refused in plain words. PUSHSIM_EXTREMES=5000 runs that many of each kind, PUSHSIM_EXTREMES_FIRST=2001 begins with another seed.
/// </summary>
public class ExtremeTests(ITestOutputHelper output)
{
    private static readonly int s_count = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_EXTREMES"), CultureInfo.InvariantCulture, out int n) ? n : 60;

    private static readonly int s_first = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_EXTREMES_FIRST"), CultureInfo.InvariantCulture, out int n) ? n : 1;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_run_ends_and_balances_or_is_refused(bool isPair)
    {
        List<string> faults = [];
        int finished = 0, tipped = 0, refused = 0, capped = 0;
        double worst = 0.0, longest = 0.0;
        Parallel.For(s_first, s_first + s_count, new ParallelOptions { MaxDegreeOfParallelism = 2 }, seed =>
        {
            ScenarioSettings s = isPair ? ExtremeRobots.Pair(seed) : ExtremeRobots.Alone(seed);
            long start = Stopwatch.GetTimestamp();
            RunResult? run = null;
            string? fault;
            try
            {
                run = Simulator.Run(s);
                fault = Fault(run);
            }
            catch (Exception e)
            {
                fault = e.ToString();
            }

            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            lock (faults)
            {
                longest = Math.Max(longest, seconds);
                worst = Math.Max(worst, run is null || run.Status == RunStatus.Failed ? 0.0 : run.EnergyResidualRatio);
                finished += run?.Status == RunStatus.Finished ? 1 : 0;
                tipped += run?.Status == RunStatus.Tips ? 1 : 0;
                refused += run?.Status == RunStatus.Failed && run.Time.Length == 0 ? 1 : 0;
                capped += run?.Status == RunStatus.Failed && run.Time.Length > 0 ? 1 : 0;
                if (fault is not null)
                {
                    faults.Add($"seed {seed}: {fault}");
                }
                else if (run!.Status == RunStatus.Failed)
                {
                    output.WriteLine($"seed {seed}: {RunWords.Cause(run.Stop)}");
                }
            }
        });
        output.WriteLine(FormattableString.Invariant(
            $"{s_count} runs: {finished} finished, {tipped} tipped, {refused} refused, {capped} stopped; worst residual {worst:e1}, longest {longest:0.0} s"));
        Assert.True(faults.Count == 0, $"{faults.Count} of {s_count}\n" + string.Join("\n", faults.Take(40)));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.05)]
    public void Wheels_on_one_line_are_refused(double turned)
    {
        RobotSettings four = TestRobots.FourWheels();
        (double sine, double cosine) = Math.SinCos(turned);
        RobotSettings robot = four with { Wheels = [.. four.Wheels.Select((w, i) => w with { X = sine * (i - 1.5) * 0.05, Y = cosine * (i - 1.5) * 0.05 })] };
        RunResult run = Simulator.Run(TestRobots.Launch(robot));
        Assert.Equal(RunStatus.Failed, run.Status);
        Assert.Contains("over the wheels", RunWords.Cause(run.Stop));
        Assert.Empty(run.Time);
    }

    [Fact]
    public void Friction_that_falls_with_speed_never_drives_the_robot()
    {
        TyreSettings tyre = TestRobots.SoftTyre with { StaticFriction = 0.02, KineticFriction = 0.015, FrictionRise = -0.03, FrictionRiseSpeed = 0.1, RollingResistance = 0.0 };
        ScenarioSettings s = TestRobots.Launch(TestRobots.FourWheels(tyre));
        RunResult run = Simulator.Run(s with { Manoeuvre = s.Manoeuvre with { InitialSpeed = 2.0, InitialHeading = 1.0 } });
        Assert.Equal(RunStatus.Finished, run.Status);
        Assert.InRange(run.EnergyResidualRatio, 0.0, 1e-3);
        Assert.True(run.Ledger.Single(e => e.Key == "tread_j").Joule > 0.0);
        Assert.All(run.Trace.Wheel("front left").Friction, mu => Assert.True(mu > 0.0));
    }

    [Fact]
    public void The_cap_on_work_is_stated_and_names_the_part()
    {
        // no body or tread is too stiff, but the springs that carry the robot are explicit
        ScenarioSettings s = TestRobots.Launch(TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalStiffness = 1e11 }));
        RunResult run = Simulator.Run(s with { Numerics = s.Numerics with { MaxEvaluationsPerSecond = 1e5 } });
        Assert.Equal(RunStatus.Failed, run.Status);
        Assert.InRange(run.RhsEvaluations, 2.9e5, 3e5);
        Assert.Contains("100000 per simulated second", RunWords.Cause(run.Stop));
        Assert.Contains("Testmole on its tyres", RunWords.Cause(run.Stop));
        Assert.Contains("vertical_stiffness", RunWords.Cause(run.Stop));
    }

    private static string? Fault(RunResult run)
    {
        if (run.Status == RunStatus.Failed)
        {
            // a refusal or a stop names the part to change
            bool isPlain = run.Time.Length == 0 || RunWords.Cause(run.Stop).Contains("the fastest part is", StringComparison.Ordinal) || RunWords.Cause(run.Stop).Contains("battery", StringComparison.Ordinal);
            return isPlain && RunWords.Verdict(run).Length > 0 ? null : RunWords.Cause(run.Stop);
        }

        foreach (Series s in run.Trace.All.Concat(run.Opponent?.Trace.All ?? []))
        {
            int at = s.FindIndex(v => !double.IsFinite(v));
            if (at >= 0)
            {
                return FormattableString.Invariant($"{s.Key} is {s[at]} at {run.Time[at]} s");
            }
        }

        return run.EnergyResidualRatio <= 1e-2 ? null : FormattableString.Invariant(
            $"{run.Status}, residual {run.EnergyResidualRatio:e1} after {run.Steps} steps: {string.Join(", ", run.Ledger.Select(e => $"{e.Key} {e.Joule:g4}"))}");
    }
}
