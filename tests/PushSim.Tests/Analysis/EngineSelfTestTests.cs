using PushSim.Analysis.Chance;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>The scenes whose results stand for the engine in the head of a journal. That a change of the engine changes the hash is tried by tests/engine-mutations.sh.</summary>
public class EngineSelfTestTests
{
    // computed here by full runs of the same scenes: what is not played says nothing of the engine
    [Fact]
    public void The_scenes_end_in_every_way_and_none_fails()
    {
        MatchOutcome[] ends = [.. SelfTestScenes.Matches.Select((m, i) => MatchBatch.RunAlone(i, m))];
        Assert.All(ends, e => Assert.Equal(MatchFailure.None, e.Failure));
        Assert.Equal([ShoveEnding.Line, ShoveEnding.Ground, ShoveEnding.Stalemate, ShoveEnding.Tips], ends.Select(e => e.Ending).Distinct().Order());
        Assert.All(ends, e => Assert.True(double.IsFinite(e.FirstContact)));
        Assert.NotEqual(RunStatus.Failed, Simulator.Run(SelfTestScenes.Pull).Status);
    }

    // every `odds` asks for the hash before it plays: computed here, less than six drawn matches of shove-equals; a scene at a tolerance that floats hardly reach took forty
    [Theory]
    [InlineData(Precision.Double)]
    [InlineData(Precision.Single)]
    public void The_scenes_cost_little(Precision precision) =>
        Assert.InRange(SelfTestScenes.Matches.Sum(m => MatchBatch.RunAlone(0, m with { Numerics = m.Numerics with { Precision = precision } }).Evaluations), 1, 20_000);

    [Theory]
    [InlineData(1, Precision.Double)]
    [InlineData(4, Precision.Double)]
    [InlineData(1, Precision.Single)]
    [InlineData(8, Precision.Single)]
    public void Every_width_gives_the_same_scenes(int lanes, Precision precision)
    {
        ScenarioSettings[] scenes = [.. SelfTestScenes.Matches.Select(m => m with { Numerics = m.Numerics with { Precision = precision } })];
        var found = new MatchOutcome[scenes.Length];
        new MatchBatch(threads: 1, lanes, precision).Run(0, scenes.Length, n => scenes[n], (in MatchOutcome o) => found[o.Number] = o);
        Assert.Equal(scenes.Select((m, i) => MatchBatch.RunAlone(i, m)), found);
    }

    [Fact]
    public void The_hash_is_sixteen_digits_and_tells_the_precision()
    {
        Assert.Matches("^[0-9a-f]{16}$", EngineSelfTest.Hash(Precision.Double));
        Assert.Matches("^[0-9a-f]{16}$", EngineSelfTest.Hash(Precision.Single));
        Assert.NotEqual(EngineSelfTest.Hash(Precision.Double), EngineSelfTest.Hash(Precision.Single));
    }
}
