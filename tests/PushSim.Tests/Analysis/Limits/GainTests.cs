using PushSim.Analysis.Limits;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

/// <summary>Slopes by dual numbers against central differences, and the gains' own logic.</summary>
public class GainTests
{
    private const double Step = 1e-5;
    private const double Tolerance = 1e-4;

    private static GainFinder Finder(int seed)
    {
        ScenarioSettings scenario = SceneBuilder.InCanonicalOrder(seed < 0 ? TestRobots.Pull() : PullAgreementTests.Pull(PullAgreementTests.Straight(RandomRobots.Scenario(seed).Robot)));
        return new GainFinder(scenario, new LimitCondition(), LimitFinder.Hook(scenario));
    }

    public static TheoryData<int, LimitInput> Cases()
    {
        TheoryData<int, LimitInput> rows = [];
        foreach (int seed in new[] { -1, 0, 1, 3, 5, 6, 7, 8 })
        {
            foreach (LimitInput input in Enum.GetValues<LimitInput>())
            {
                rows.Add(seed, input);
            }
        }

        return rows;
    }

    // no outside source: the same function by differences
    [Theory]
    [MemberData(nameof(Cases))]
    public void A_slope_is_the_central_difference(int seed, LimitInput input)
    {
        GainFinder finder = Finder(seed);
        double[] now = finder.Values(null, 1.0);
        double[] above = finder.Values(input, 1.0 + Step);
        double[] below = finder.Values(input, 1.0 - Step);
        double[] slopes = finder.Slopes(input);
        foreach (LimitOutput output in Enum.GetValues<LimitOutput>())
        {
            int i = (int)output;
            // all of these robots pull, start and turn
            Assert.True(double.IsFinite(now[i]), FormattableString.Invariant($"{output}, seed {seed}"));

            double expected = (above[i] - below[i]) / (2.0 * Step);
            double measure = Math.Max(Math.Abs(now[i]), output == LimitOutput.ShoveMargin ? finder.OwnPush!.Value : 0.0);
            Assert.True(
                Math.Abs(expected - slopes[i]) <= Tolerance * Math.Max(Math.Abs(expected), measure),
                FormattableString.Invariant($"{output} by {input}, seed {seed}: expected {expected}, slope {slopes[i]}, difference {slopes[i] - expected}"));
        }
    }

    [Fact]
    public void Gains_are_sorted_and_say_what_is_known_by_hand()
    {
        ScenarioSettings scenario = SceneBuilder.InCanonicalOrder(TestRobots.Pull());
        GainFinder finder = new(scenario, new LimitCondition(), LimitFinder.Hook(scenario));
        List<Gain> gains = finder.All(finder.Values(null, 1.0));
        foreach (IGrouping<LimitOutput, Gain> g in gains.GroupBy(g => g.Output))
        {
            Assert.Equal(g.OrderByDescending(x => Math.Abs(x.ChangePercent)).Select(x => x.ChangePercent), g.Select(x => x.ChangePercent));
            Assert.Equal(Enum.GetValues<LimitInput>().Length, g.Count());
        }

        Gain Find(LimitInput input) => gains.Single(g => g.Input == input && g.Output == LimitOutput.Pull);

        // with all wheels spinning the pull follows friction and load, and a lower motor constant cannot help
        Assert.InRange(Find(LimitInput.Friction).ChangePercent, 8.0, 12.0);
        Assert.InRange(Find(LimitInput.DrivenLoad).ChangePercent, 8.0, 12.0);
        Assert.InRange(Math.Abs(Find(LimitInput.CurrentLimit).ChangePercent), 0.0, 1.0);

        // a twin: no margin as it is, and the same change as the pull at the contact's height
        Assert.Equal(0.0, gains.First(g => g.Output == LimitOutput.ShoveMargin).Base, 1e-9);
    }
}
