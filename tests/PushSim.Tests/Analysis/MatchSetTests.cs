using PushSim.Analysis;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>A few matches in lanes against the same one at a time: builds that are compiled ahead do the one, the JIT the other.</summary>
public class MatchSetTests
{
    private const double End = 0.25;

    [Theory]
    [InlineData(Precision.Double)]
    [InlineData(Precision.Single)]
    public void Lanes_give_the_bits_and_the_work_of_matches_alone(Precision precision)
    {
        ScenarioSettings[] matches = Matches(precision);
        var ofLanes = WorkBudget.Endless();
        var ofSingle = WorkBudget.Endless();
        MatchOutcome[] lanes = MatchSet.Play(matches, ofLanes, inLanes: true);
        Assert.Equal(MatchSet.Play(matches, ofSingle, inLanes: false), lanes);
        Assert.Equal(ofSingle.Done, ofLanes.Done);
        Assert.Contains(lanes, o => o.FirstContact > 0.0);
    }

    // a share that is too small for the longest of them, and one that all keep to
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_match_that_needs_more_than_its_share_ends_all(bool inLanes)
    {
        ScenarioSettings[] matches = Matches(Precision.Double);
        long most = MatchSet.Play(matches, WorkBudget.Endless(), inLanes).Max(o => o.Evaluations);
        Assert.Throws<OutOfWorkException>(() => MatchSet.Play(matches, new WorkBudget(matches.Length * (most - 1)), inLanes));
        Assert.Equal(matches.Length, MatchSet.Play(matches, new WorkBudget(matches.Length * (most + 10)), inLanes).Length);
    }

    private static ScenarioSettings[] Matches(Precision precision)
    {
        ScenarioSettings s = RandomMatches.Of(3, end: End);
        s = s with { Numerics = s.Numerics with { Tolerance = 1e-3, Precision = precision } };
        return [.. Enumerable.Range(0, 7).Select(i => RandomMatches.Draw(s, i))];
    }
}
