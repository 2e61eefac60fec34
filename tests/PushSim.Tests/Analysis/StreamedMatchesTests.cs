using PushSim.Analysis.Chance;
using PushSim.Binding;
using PushSim.Runs;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Sets of numbers, parts and statistics that go through matches instead of keeping them, against plain ones that keep all.</summary>
public class StreamedMatchesTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_set_of_numbers_is_a_set(int seed)
    {
        var random = new Random(seed);
        var set = new NumberSet();
        var plain = new SortedSet<long>();
        for (int i = 0; i < 2000; i++)
        {
            long n = random.Next(seed == 1 ? 300 : 3000);
            Assert.Equal(plain.Add(n), set.Add(n));
        }

        Assert.Equal(plain.Count, set.Count);
        Assert.Equal(plain, set.Below(long.MaxValue));
        Assert.Equal(plain.Where(n => n < 150), set.Copy().Below(150));
        Assert.Equal(plain.Count(n => n < 150), set.CountBelow(150));
        Assert.Equal(Enumerable.Range(0, 3000).Select(n => plain.Contains(n)), Enumerable.Range(0, 3000).Select(n => set.Contains(n)));
        Assert.Equal(Enumerable.Range(20, 2000).Select(n => (long)n).Where(n => !plain.Contains(n)).Take(77), set.Missing(20, 2020, 77));
    }

    [Theory]
    [InlineData(1, 10)]
    [InlineData(3, 10)]
    [InlineData(16, 5)]
    [InlineData(7, 100)]
    public void Every_number_is_of_one_part(int parts, int matches)
    {
        PartNumbers[] all = [.. Enumerable.Range(1, parts).Select(k => new PartNumbers(k, parts))];
        Assert.Equal(Enumerable.Range(0, matches), all.SelectMany(p => Enumerable.Range(0, (int)p.Count(matches)).Select(i => (int)p.NumberAt(i))).Order());
        Assert.All(all, p => Assert.All(Enumerable.Range(0, 20), i => Assert.True(p.Holds(p.NumberAt(i)) && p.PlaceOf(p.NumberAt(i)) == i)));
    }

    [Theory]
    [InlineData(1, 1000)]
    [InlineData(2, 7)]
    [InlineData(3, 1)]
    [InlineData(4, 2)]
    public void The_middling_match_is_that_of_a_sorted_list(int seed, int count)
    {
        var random = new Random(seed);
        MatchEnd[] ends = [.. Enumerable.Range(0, count).Select(n => random.NextDouble() < 0.1 && count > 2
            ? MatchEnd.Failed(n, MatchFailure.Step)
            : new MatchEnd(n, 0, ShoveEnding.Line, random.Next(4) switch { 0 => 0.0, 1 => -0.0, 2 => Math.Round(random.NextDouble() - 0.5, 1), _ => random.NextDouble() - 0.5 }, 1.0, BindingKind.Tyre, BindingKind.Tyre))];
        MatchEnd[] sorted = [.. ends.Where(e => !e.HasFailed).OrderBy(e => e.GroundGained)];
        Assert.Equal(sorted[sorted.Length / 2].Number, MatchEnd.Middling(ends));
        Assert.Null(MatchEnd.Middling([MatchEnd.Failed(0, MatchFailure.Step)]));
    }

    [Fact]
    public void Failed_matches_are_told_by_the_lowest_numbers()
    {
        var tally = Tally.Of(Enumerable.Range(0, 100).Reverse().Select(n => MatchEnd.Failed(n, MatchFailure.Step)));
        Assert.Equal((100, 0), (tally.Failed, tally.Matches));
        Assert.Equal(Enumerable.Range(0, 20).Select(n => (long)n), tally.FirstFailed.Select(f => f.Number));
    }
}
