using PushSim.Analysis.Turning;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Words.Turns;
using Xunit;

namespace PushSim.Tests.Analysis.Turning;

/// <summary>Random robots (2 to 8 wheels, skids, odd drives, slopes, dust) in spot turns and arcs: whatever they are, the review ends with finite numbers.</summary>
public class RandomReviewTests
{
    // reduced count; PUSHSIM_REVIEWS=N reviews N of them
    private static int Count => int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_REVIEWS"), out int n) ? n : 6;

    [Fact]
    public void Any_turn_is_reviewed_with_finite_numbers()
    {
        int reviewed = 0;
        int withModes = 0;
        for (int seed = 1; reviewed < Count; seed++)
        {
            ScenarioSettings scenario = RandomRobots.Scenario(seed);
            if (scenario.Manoeuvre.Traits.Family != ManoeuvreFamily.Turn)
            {
                continue;
            }

            RunResult result = TurnReview.Review(Simulator.Run(scenario));
            if (result.Turning is not TurnResult r)
            {
                Assert.True(result.Status != RunStatus.Finished || scenario.Robot.Battery is null, $"seed {seed}: not reviewed");
                continue;
            }

            reviewed++;
            withModes += r.Modes.Count > 0 ? 1 : 0;
            Assert.True(r.Modes.Count > 0 == (r.NoModes == NoModesCause.None), $"seed {seed}: {r.NoModes}");
            double[] numbers =
            [
                r.Current, r.Power, r.YawRateWithoutSlip, r.LeastCurrentLimit ?? 0.0, r.LeastMotorShare ?? 0.0, .. r.Modes.SelectMany(m => new[] { m.Growth, m.Frequency }),
                .. r.Wheels.SelectMany(w => new[] { w.Load, w.ScrubForce, w.ScrubMoment, w.DriveMoment, w.SlipSpeed, w.Swing }), .. r.Helps.SelectMany(h => new[] { h.From, h.To, h.YawRate, h.ScrubMoment, h.Current }),
                .. r.Rings.Select(c => c.Margin), .. r.SlipSpeeds.Select(p => p.Growth), .. r.Spectra.SelectMany(s => s.Amplitudes),
            ];
            Assert.True(numbers.All(double.IsFinite), $"seed {seed}: a number is not finite");
            Assert.All(TurnExplanation.Of(r, result), l => Assert.DoesNotContain("NaN", l));
        }

        Assert.True(withModes > 0, "no steady turn was found in any");
    }
}
