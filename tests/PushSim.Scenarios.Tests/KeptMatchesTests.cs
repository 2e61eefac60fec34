using PushSim.Analysis.Chance;
using PushSim.Scenarios.Drawing;
using PushSim.Words.Matches;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Drawn matches of a file: kept, gone on with, split and joined without a folder.</summary>
public class KeptMatchesTests
{
    private const long Matches = 12;
    private const string Shove = "question = \"Who?\"\nrobot = \"shrew.toml\"\n[opponent]\nrobot = \"shrew.toml\"\n[manoeuvre]\nkind = \"shove\"\nend = \"0.3 s\"\n";

    [Fact]
    public void Parts_kept_in_memory_join_to_the_whole()
    {
        using var files = new SmallFiles(scenario: Shove);
        KeptMatches whole = Work(files, Plan());
        whole.Run();
        var memory = new MatchMemory();
        MatchState(Work(files, Plan() with { Merge = true }, memory), [], []);
        Work(files, Plan() with { Part = (1, 3) }, memory).Run();
        Work(files, Plan() with { Part = (3, 3) }, memory).Run();
        MatchState(Work(files, Plan() with { Merge = true }, memory), [3], [new(2, 3, 0, 4, PartCondition.Missing)]);
        Work(files, Plan() with { Part = (2, 3) }, memory).Run();
        KeptMatches merged = Work(files, Plan() with { Merge = true }, memory);
        MatchState(merged, [3], []);
        Assert.Equal(whole.Of(0), merged.Of(0));
        Assert.Equal(["part-1-of-3.csv", "part-2-of-3.csv", "part-3-of-3.csv"], memory.Names.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_was_interrupted_goes_on_and_a_campaign_grows()
    {
        using var files = new SmallFiles(scenario: Shove);
        var memory = new MatchMemory();
        using var stop = new CancellationTokenSource();
        KeptMatches first = Work(files, Plan(), memory);
        Assert.Equal(ResumeState.Plain, first.Resume());
        first.Run(done: stop.Cancel, cancel: stop.Token);
        KeptMatches second = Work(files, Plan(), memory);
        Assert.Equal(ResumeState.Plain, second.Resume());
        Assert.Equal(first.Of(0), second.Of(0));
        Assert.InRange(second.Finished, 1, Matches - 1);
        int ran = 0;
        long kept = second.Finished;
        second.Run(done: () => ran++);
        Assert.Equal((Matches, Matches - kept), (second.Finished, (long)ran));

        // more matches: those that are there stay, and only the others are played
        KeptMatches grown = Work(files, Plan() with { Matches = Matches + 5 }, memory);
        grown.Resume();
        ran = 0;
        grown.Run(done: () => ran++);
        Assert.Equal((Matches + 5, 5), (grown.Finished, ran));
        KeptMatches whole = Work(files, Plan() with { Matches = Matches + 5 });
        whole.Run();
        Assert.Equal(whole.Of(0), grown.Of(0));

        // fewer: the first of them
        KeptMatches fewer = Work(files, Plan() with { Matches = 7 }, memory);
        fewer.Resume();
        fewer.Run(done: () => ran++);
        Assert.Equal((7, 5), (fewer.Finished, ran));
        Assert.Equal(whole.Of(0).Take(7), fewer.Of(0));
        Assert.Equal(Tally.Of(whole.Of(0).Take(7)).Wins, fewer.TallyOf(0).Wins);
    }

    [Theory]
    [InlineData("other", 1, "x/y", "it is of another command")]
    [InlineData("odds", 2, "x/y", "it is of another seed")]
    [InlineData("odds", 1, "x/z", "it is of other files, options or contests")]
    public void Matches_of_something_else_are_set_aside(string command, ulong seed, string label, string reason)
    {
        using var files = new SmallFiles(scenario: Shove);
        var memory = new MatchMemory();
        Work(files, Plan(), memory, "x/y").Run();
        string kept = Text(memory, "part-1-of-1.csv");
        KeptMatches other = Work(files, new MatchPlan(command, Matches, seed, 1), memory, label);
        ResumeState state = other.Resume();
        Assert.Equal(("part-1-of-1-aside-1.csv", reason, 0), (state.Aside, JournalWords.Of(state.Misfit), other.Finished));
        Assert.Equal(kept, Text(memory, state.Aside));
        other.Run();
        Assert.Equal(["part-1-of-1-aside-1.csv", "part-1-of-1.csv"], memory.Names.Order(StringComparer.Ordinal));
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

        static string Print(SmallFiles f)
        {
            DrawableResult read = DrawableScenario.Open(f.ScenarioPath);
            return Fingerprint.Of(read, new FileMatchSource(read.Scenario!, new ContestKey(1, "x/y")));
        }
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

    private static KeptMatches Work(SmallFiles files, MatchPlan plan, IMatchStore? store = null, string? label = null)
    {
        DrawableResult read = DrawableScenario.Open(files.ScenarioPath);
        var source = new FileMatchSource(read.Scenario!, new ContestKey(plan.Seed, label ?? read.Scenario!.Label));
        return new KeptMatches(plan, () => [Fingerprint.Of(read, source)], [source], KeptMatchWords.Instance, store);
    }

    private static string Text(MatchMemory memory, string name)
    {
        using var reader = new StreamReader(memory.Open(name)!);
        return reader.ReadToEnd();
    }

    private static void MatchState(KeptMatches work, int[] splits, PartState[] unfinished)
    {
        MergeState state = work.Merge();
        Assert.Equal(splits, state.Splits);
        Assert.Equal(unfinished, state.Unfinished);
        Assert.Equal(splits.Length == 1 && unfinished.Length == 0, state.IsWhole);
    }
}
