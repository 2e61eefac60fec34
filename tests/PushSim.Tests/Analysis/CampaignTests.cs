using PushSim.Analysis.Chance;
using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Running many matches: order, threads, going on, stopping, failures; by a runner that draws the outcome.</summary>
public class CampaignTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    public void Threads_and_order_change_nothing(int threads)
    {
        IReadOnlyList<MatchEnd> expected = Run(0, 1000, [], 0.0, 1);
        Assert.Equal(expected, Run(0, 1000, [], 0.0, threads));
        Assert.Equal(expected, Run(0, 1000, expected.Where(o => o.Number % 3 == 0).Reverse(), 0.0, threads));
    }

    [Theory]
    [InlineData(3, 1000)]
    [InlineData(16, 1000)]
    [InlineData(7, 5)]
    public void Parts_make_the_whole(int parts, long matches)
    {
        MatchEnd[] joined = [.. Enumerable.Range(1, parts).SelectMany(k =>
        {
            (long from, long to) = Campaign.Part(k, parts, matches);
            return Run(from, to, [], 0.0, 2);
        })];
        Assert.Equal(Run(0, matches, [], 0.0, 1), joined);
    }

    [Theory]
    [InlineData(0.05, 2)]
    [InlineData(0.04, 1)]
    public void It_stops_at_the_first_look_that_is_narrow_enough(double half, int threads)
    {
        IReadOnlyList<MatchEnd> run = Run(0, 100_000, [], half, threads);
        Assert.True(Tally.Of(run).WinInterval.HalfWidth <= half);
        Assert.Equal(0, run.Count % Campaign.Look);
        Assert.True(Tally.Of(run.Take(run.Count - Campaign.Look)).WinInterval.HalfWidth > half);
    }

    // optional stopping costs a little coverage; of 400 seeds "93 to 97 %" is met with probability 0.950 by a true 95 % interval (computed here), so the bound below is a third lower
    [Fact]
    public void Looking_again_and_again_costs_little()
    {
        int held = 0;
        for (ulong seed = 1; seed <= 400; seed++)
        {
            var tally = Tally.Of(Campaign.Run(new DrawnRunner(seed), new NoSource(), (0, 100_000), [], 0.04, 1, _ => { }, default));
            held += tally.WinInterval.Holds(DrawnRunner.Win) ? 1 : 0;
        }

        Assert.InRange(held, 368, 392);
    }

    [Fact]
    public void An_interrupt_keeps_what_is_finished()
    {
        using var stop = new CancellationTokenSource();
        int done = 0;
        IReadOnlyList<MatchEnd> kept = Campaign.Run(new DrawnRunner(5), new NoSource(), (0, 100_000), [], 0.0, 2, _ =>
        {
            if (++done == 300)
            {
                stop.Cancel();
            }
        }, stop.Token);
        Assert.Equal(done, kept.Count);
        Assert.InRange(kept.Count, 300, 310);
    }

    [Fact]
    public void Failed_matches_are_counted_and_left_out_of_the_shares()
    {
        var tally = Tally.Of([Won(0), MatchEnd.Failed(1, MatchFailure.Step), Lost(2), Lost(3) with { Winner = -1, Ending = ShoveEnding.Stalemate }]);
        Assert.Equal((3, 1, 1, 1, 1), (tally.Matches, tally.Failed, tally.Wins, tally.Losses, tally.Stalemates));
        Assert.Equal(1.0 / 3.0, tally.Share(tally.Wins), 1e-15);
    }

    [Fact]
    public void What_decided_names_what_held_the_loser_back()
    {
        Tally tally = Tally.Of([Won(0), Won(1) with { Limit = BindingKind.Battery }, Lost(2), Lost(3) with { Ending = ShoveEnding.Tips }, Won(4) with { Winner = -1, Ending = ShoveEnding.Stalemate }]);
        Assert.Equal(
            [
                (new Decision(0, ShoveEnding.Line, null, BindingKind.Motor), 2),
                (new Decision(-1, ShoveEnding.Stalemate, BindingKind.Tyre, BindingKind.Motor), 1),
                (new Decision(1, ShoveEnding.Line, BindingKind.Tyre, null), 1),
                (new Decision(1, ShoveEnding.Tips, null, null), 1),
            ],
            tally.Decisions.Select(d => (d.Decision, (int)d.Count)));
    }

    [Fact]
    public void Comparing_counts_only_where_the_two_differ()
    {
        MatchEnd[] first = [Won(0), Won(1), Lost(2), MatchEnd.Failed(3, MatchFailure.Step), Won(4)];
        MatchEnd[] second = [Won(0), Lost(1), Won(2), Won(3)];
        Assert.Equal(new OddsDifference(3, 1, 1), OddsDifference.Of(first, second));
    }

    private static MatchEnd Won(long n) => new(n, 0, ShoveEnding.Line, 0.5, 1.0, BindingKind.Tyre, BindingKind.Motor);

    private static MatchEnd Lost(long n) => new(n, 1, ShoveEnding.Line, -0.5, 1.0, BindingKind.Tyre, BindingKind.Motor);

    private static IReadOnlyList<MatchEnd> Run(long from, long to, IEnumerable<MatchEnd> finished, double half, int threads) =>
        Campaign.Run(new DrawnRunner(5), new NoSource(), (from, to), finished, half, threads, _ => { }, default);

    private sealed class NoSource : IMatchSource
    {
        public ScenarioSettings? Match(long number, out string cause) => throw new NotSupportedException();
    }

    /// <summary>Takes numbers on several threads and makes the outcome of each out of seed and number.</summary>
    private sealed class DrawnRunner(ulong seed) : IMatchRunner
    {
        public const double Win = 0.55;

        public void Run(IMatchSource source, IReadOnlyList<long> numbers, Action<MatchEnd> done, int threads, CancellationToken cancel)
        {
            int next = -1;
            Thread[] workers = [.. Enumerable.Range(0, threads).Select(_ => new Thread(Work))];
            Array.ForEach(workers, w => w.Start());
            Array.ForEach(workers, w => w.Join());

            void Work()
            {
                while (!cancel.IsCancellationRequested && Interlocked.Increment(ref next) is int i && i < numbers.Count)
                {
                    long number = numbers[i];
                    bool isWon = Philox.Uniform(seed, number, 1) < Win;
                    done(new MatchEnd(number, isWon ? 0 : 1, ShoveEnding.Line, isWon ? 0.5 : -0.5, 1.0, BindingKind.Tyre, BindingKind.Motor));
                }
            }
        }
    }
}
