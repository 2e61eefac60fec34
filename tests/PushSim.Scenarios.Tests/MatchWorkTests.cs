using PushSim.Analysis.Chance;
using PushSim.Scenarios.Drawing;
using PushSim.Words.Matches;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Drawn matches of a file: kept, gone on with, split and joined without a folder.</summary>
public class MatchWorkTests
{
    private const long Matches = 12;
    private const string Shove = "question = \"Who?\"\nrobot = \"shrew.toml\"\n[opponent]\nrobot = \"shrew.toml\"\n[manoeuvre]\nkind = \"shove\"\nend = \"0.3 s\"\n";

    [Fact]
    public void Parts_kept_in_memory_join_to_the_whole()
    {
        using var files = new SmallFiles(scenario: Shove);
        MatchWork whole = Work(files, Plan());
        whole.Run();
        var memory = new MatchMemory();
        MatchState(Work(files, Plan() with { Merge = true }, memory), [], []);
        Work(files, Plan() with { Part = (1, 3) }, memory).Run();
        Work(files, Plan() with { Part = (3, 3) }, memory).Run();
        MatchState(Work(files, Plan() with { Merge = true }, memory), [3], [new(2, 3, 0, 4)]);
        Work(files, Plan() with { Part = (2, 3) }, memory).Run();
        MatchWork merged = Work(files, Plan() with { Merge = true }, memory);
        MatchState(merged, [3], []);
        Assert.Equal(whole.Of(0), merged.Of(0));
        merged.Forget();
        Assert.Equal(["part-1-of-3.csv", "part-2-of-3.csv", "part-3-of-3.csv"], memory.Names.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_was_interrupted_goes_on_and_is_forgotten_at_its_end()
    {
        using var files = new SmallFiles(scenario: Shove);
        var memory = new MatchMemory();
        using var stop = new CancellationTokenSource();
        MatchWork first = Work(files, Plan(), memory);
        Assert.True(first.Resume());
        first.Run(done: stop.Cancel, cancel: stop.Token);
        MatchWork second = Work(files, Plan(), memory);
        Assert.True(second.Resume());
        Assert.Equal(first.Of(0), second.Of(0));
        Assert.InRange(second.Finished, 1, Matches - 1);
        int ran = 0;
        long kept = second.Finished;
        second.Run(done: () => ran++);
        Assert.Equal((Matches, Matches - kept), (second.Finished, (long)ran));
        second.Forget();
        Assert.Empty(memory.Names);
    }

    [Theory]
    [InlineData("other", Matches, 1)]
    [InlineData("odds", Matches + 1, 1)]
    [InlineData("odds", Matches, 2)]
    public void Matches_of_something_else_are_not_taken(string command, long matches, ulong seed)
    {
        using var files = new SmallFiles(scenario: Shove);
        var memory = new MatchMemory();
        Work(files, Plan(), memory).Run();
        MatchWork other = Work(files, new MatchPlan(command, matches, seed, 1), memory);
        Assert.False(other.Resume());
        Assert.Equal(0, other.Finished);
    }

    // the folder of the files does not matter, what stands in them does
    [Fact]
    public void A_fingerprint_is_of_the_content()
    {
        using var files = new SmallFiles(scenario: Shove);
        using var copy = new SmallFiles(scenario: Shove);
        using var other = new SmallFiles(SmallFiles.With(SmallFiles.Robot, "1.0 ± 0.1", "1.0 ± 0.2"), Shove);
        Assert.Equal(Print(files), Print(copy));
        Assert.NotEqual(Print(files), Print(other));

        static string Print(SmallFiles f) => Fingerprint.Of(DrawableScenario.Open(f.ScenarioPath));
    }

    // the file's word counts, else the accuracy of many matches; a match that differs in one input differs in nothing else
    [Theory]
    [InlineData("", 3e-3, "ARK3(2)")]
    [InlineData("[numerics]\ntolerance = 0.0002\n", 2e-4, "ARK4(3)")]
    [InlineData("[numerics]\nmethod = \"ARK3(2)\"\n", 1e-4, "ARK3(2)")]
    public void Matches_are_as_accurate_as_the_file_asks(string more, double tolerance, string method)
    {
        using var files = new SmallFiles(scenario: Shove + more);
        DrawableScenario scenario = DrawableScenario.Open(files.ScenarioPath).Scenario!;
        var source = new FileMatchSource(scenario, new ContestKey(1, scenario.Label));
        Assert.Equal((tolerance, method), (source.Middle.Numerics.Tolerance, source.Middle.Numerics.Method));
        Assert.Equal(source.Middle.Numerics, source.Match(3, out _)!.Numerics);
        Assert.Equal("move-match-3", source.Replay(3, out _)!.Name);
        string key = scenario.Values[2].Key;
        double[] redrawn = new FileMatchSource(scenario, new ContestKey(1, scenario.Label), key).Values(3);
        Assert.Equal(scenario.Values.Select(v => v.Key == key), source.Values(3).Zip(redrawn, (a, b) => a != b));
    }

    private static MatchPlan Plan() => new("odds", Matches, 1, 1);

    private static MatchWork Work(SmallFiles files, MatchPlan plan, IMatchStore? store = null)
    {
        DrawableResult read = DrawableScenario.Open(files.ScenarioPath);
        return new MatchWork(plan, Fingerprint.Of(read), [new FileMatchSource(read.Scenario!, new ContestKey(plan.Seed, read.Scenario!.Label))], KeptMatchWords.Instance, store);
    }

    private static void MatchState(MatchWork work, int[] splits, PartState[] unfinished)
    {
        MergeState state = work.Merge();
        Assert.Equal(splits, state.Splits);
        Assert.Equal(unfinished, state.Unfinished);
        Assert.Equal(splits.Length == 1 && unfinished.Length == 0, state.IsWhole);
    }
}
