using PushSim.Analysis.Limits;
using PushSim.Binding;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Words.Limits;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

/// <summary>Motors in series that could give three times what the tyres hold: of each side one wheel spins and the other stands.</summary>
public class SeriesTests(ITestOutputHelper output)
{
    private static RobotSettings InSeries(double forward)
    {
        RobotSettings four = TestRobots.FourWheels(motor: TestRobots.Motor with { Resistance = 0.5 }, limit: double.PositiveInfinity, forward: forward);
        ControllerSettings first = four.Controllers[0];
        return four with
        {
            Controllers =
            [
                first with { Name = "left", Side = CommandSide.Left, Motors = [(0, 0), (2, 0)], Wiring = Wiring.Series },
                first with { Name = "right", Side = CommandSide.Right, Motors = [(1, 0), (3, 0)], Wiring = Wiring.Series },
            ],
        };
    }

    // the front left wheel in the air lets nothing through to the rear left one, and the right side pulls as if nothing had happened
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.008)]
    [InlineData(0.0)]
    [InlineData(-0.008)]
    public void No_wiring_pulls_with_more_than_the_tyres_hold(double forward)
    {
        ScenarioSettings s = TestRobots.Launch(InSeries(forward));
        LimitResult r = LimitFinder.Find(s);
        foreach (WiringCase c in r.Wirings)
        {
            output.WriteLine(FormattableString.Invariant($"{LimitWords.Of(c.Wiring)}, {LimitWords.Of(c.Case)}: {c.Pull:0.000} N"));
        }

        double Pull(Wiring wiring, WheelLoss loss) => r.Wirings.Single(c => c.Wiring == wiring && c.Case == loss).Pull;
        Assert.All(r.Wirings, c => Assert.InRange(c.Pull, 0.0, r.Now.TractionPeak));
        Assert.All(r.Wirings.Where(c => c.Case == WheelLoss.Lifted), c => Assert.True(c.Pull < Pull(c.Wiring, WheelLoss.None)));


        // both wheels of the right side give what the lighter of them holds sliding (0.8 N): N L = m g (L/2 +- f) -+ F h for the front and the rear pair, held at the height of the centre of mass
        double pull = Pull(Wiring.Series, WheelLoss.Lifted);
        double weight = 1.36 * 9.80665;
        double lighter = Math.Min((weight * (0.055 + forward)) - (pull * 0.028), (weight * (0.055 - forward)) + (pull * 0.028)) / 0.11 / 2.0;
        Assert.Equal(2.0 * 0.8 * lighter, pull, 0.02 * pull);
    }

    // the case with the wheel on the floor is that of the file
    [Fact]
    public void Each_row_of_the_wirings_is_there()
    {
        LimitResult r = LimitFinder.Find(TestRobots.Launch(InSeries(0.02)));
        Assert.Equal(9, r.Wirings.Count);
        Assert.Equal(r.Now.Pull!.Value, r.Wirings.Single(c => c is { Wiring: Wiring.Series, Case: WheelLoss.None }).Pull, 1e-6);
        Assert.All(r.Warnings, w => Assert.IsType<LimitWarning.Doubtful>(w));
    }

    // over random robots whose motors may be wired in any way: no wheel holds more than it can, and what is said to bind it is what its numbers say
    [Fact]
    public void What_binds_a_wheel_is_what_its_numbers_say()
    {
        int series = 0;
        List<string> wrong = [];
        for (int seed = 0; seed < 40; seed++)
        {
            LimitResult r = LimitFinder.Find(PullAgreementTests.Pull(PullAgreementTests.Straight(RandomRobots.Scenario(seed).Robot)));
            if (r.Now.Status != PullStatus.Found)
            {
                continue;
            }

            foreach (WheelLimit w in r.Wheels.Where(w => w.IsDriven))
            {
                bool agrees = w.Binding == BindingKind.Lifted ? w.Load == 0.0 : w.Binding == BindingKind.Tyre ? w.SpinSpeed > 0.0 : w.SpinSpeed == 0.0 && w.Force <= w.PeakForce * (1.0 + 1e-6)
                    && (w.Binding == BindingKind.Series) == (w.Force < 0.98 * w.MotorForce);
                series += w.Binding == BindingKind.Series ? 1 : 0;
                if (!agrees)
                {
                    wrong.Add(FormattableString.Invariant($"{seed} {w.Name}: motor {w.MotorForce:0.000}, peak {w.PeakForce:0.000}, gives {w.Force:0.000}, spins {w.SpinSpeed:0.000}, {w.Binding}"));
                }
            }
        }

        output.WriteLine($"{series} wheels held by their wiring");
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
        Assert.True(series > 0);
    }

    [Fact]
    public void The_verdict_names_the_wiring()
    {
        LimitResult r = LimitFinder.Find(TestRobots.Launch(InSeries(0.008)));
        Assert.Equal([BindingKind.Tyre, BindingKind.Tyre, BindingKind.Series, BindingKind.Series], r.Wheels.Select(w => w.Binding!.Value));
        Assert.EndsWith(" Its motors are wired in series: wheels rear left and rear right stand still and get only what the spinning wheels front left and front right let through.", LimitVerdict.Of(r), StringComparison.Ordinal);
        LimitResult separate = LimitFinder.Find(TestRobots.Launch(TestRobots.FourWheels(motor: TestRobots.Motor with { Resistance = 0.5 }, forward: 0.008)));
        Assert.DoesNotContain("series", LimitVerdict.Of(separate), StringComparison.Ordinal);
    }
}
