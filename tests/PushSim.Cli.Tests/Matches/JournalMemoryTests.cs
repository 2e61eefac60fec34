using System.Diagnostics;
using System.Globalization;
using PushSim.Analysis.Chance;
using PushSim.Binding;
using PushSim.Cli.Matches;
using PushSim.Cli.Odds;
using PushSim.Cli.Shared;
using PushSim.Files;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Scenarios.Drawing;
using PushSim.Words.Matches;
using Xunit;

namespace PushSim.Cli.Tests.Matches;

/// <summary>Very many matches through the journals of a folder and all that `odds` makes of them. PUSHSIM_ROWS=20000000 plays that many (about twelve minutes, 4 GB of disk).</summary>
public class JournalMemoryTests(ITestOutputHelper output)
{
    // more than are kept in memory [1]
    private const long Usual = 450_000;
    private const int Parts = 4;

    // what the program may take in all [byte]
    private const long Most = 300_000_000;

    [Fact]
    public void Memory_does_not_grow_with_the_matches()
    {
        long matches = long.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_ROWS"), NumberStyles.None, CultureInfo.InvariantCulture, out long asked) ? asked : Usual;
        using ScratchFolder scratch = ShortMatches.Files();
        DrawableResult read = DrawableScenario.Open(scratch["short.toml"]);
        var source = new FileMatchSource(read.Scenario!, new ContestKey(1, read.Scenario!.Label));
        using var memory = new PeakMemory();
        List<OutputFolder> folders = [];
        for (int k = 1; k <= Parts; k++)
        {
            KeptMatches part = Work((k, Parts));
            part.Resume();
            part.Run(cancel: TestContext.Current.CancellationToken);
            folders[^1].Dispose();
            Told($"part {k} written");
        }

        KeptMatches merged = Work(null);
        Assert.True(merged.Merge().IsWhole);
        Told("merged");
        var side = new OddsSide("short", read.Scenario!, source.Contest, source, read) { Outcomes = merged.Of(0), Tally = merged.TallyOf(0) };
        var result = new OddsResult(side, [side], 1, [InputEffect.Of("x", side.Outcomes, side.Outcomes)], 0.0, false);
        Assert.Equal(matches, result.Tally.All);
        Assert.Equal(0.0, Assert.Single(result.Comparisons).Difference);
        Told("compared");
        Assert.Equal(0.5, result.Tally.Share(result.Tally.Wins), 5.0 * 0.5 / Math.Sqrt(matches));
        Assert.NotEmpty(OddsJson.Of(result));
        Told("told as JSON");
        long middling = MatchEnd.Middling(side.Outcomes)!.Value;
        Assert.Equal(0.0, Outcomes.End(middling).GroundGained, 5.0 * 0.5 / Math.Sqrt(matches));
        Told("middle found");
        using (FileStream file = File.Create(scratch["matches.csv"]))
        using (var writer = new StreamWriter(file))
        {
            MatchTable.Write(writer, "print", new MatchPlan("odds", matches, 1, 1), KeptMatchWords.Instance, side.Outcomes);
        }

        Assert.Equal(matches + 2, File.ReadLines(scratch["matches.csv"]).LongCount());
        Told("table written");
        result.Plot.WriteSvg(Stream.Null);
        Told("drawn");

        // in the usual run other tests share the process: then the heap's own growth must stay below what the matches alone would take
        if (asked > 0)
        {
            Assert.InRange(memory.Highest, 0, Most);
        }
        else
        {
            Assert.InRange(GC.GetTotalMemory(forceFullCollection: true), 0, Most);
        }

        KeptMatches Work((int K, int N)? part)
        {
            var ask = new LockAsk("parts", "test", _ => { }, TestContext.Current.CancellationToken);
            folders.Add(part is (int k, int) ? OutputFolder.Open(scratch["parts"], force: false, "", ask, $"part-{k}-of-{Parts}") : OutputFolder.See(scratch["parts"]));
            return new KeptMatches(new MatchPlan("odds", matches, 1, 1, part, part is null), () => ["print"], [source], KeptMatchWords.Instance, new FolderStore(folders[^1], isShared: part is not null), _ => new Outcomes());
        }

        void Told(string what) => output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{matches} matches, {what}: {memory.Seconds:0} s, at most {memory.Highest / 1e6:0} MB"));
    }

    // Outcomes out of the number alone, a few out of turn
    private sealed class Outcomes : IMatchRunner
    {
        private const int Window = 32;

        public static MatchEnd End(long number)
        {
            double u = Philox.Uniform(1, number, 1);
            return new MatchEnd(number, u < 0.5 ? 0 : 1, ShoveEnding.Line, 0.5 - u, 3.0 * u, BindingKind.Tyre, BindingKind.Motor);
        }

        public void Run(IMatchSource source, IReadOnlyList<long> numbers, Action<MatchEnd> done, int threads, CancellationToken cancel)
        {
            for (int block = 0; block < numbers.Count && !cancel.IsCancellationRequested; block += Window)
            {
                for (int i = Math.Min(numbers.Count, block + Window) - 1; i >= block; i--)
                {
                    done(End(numbers[i]));
                }
            }
        }
    }

    /// <summary>The most memory that the process had at any time since.</summary>
    private sealed class PeakMemory : IDisposable
    {
        private const int Milliseconds = 100;
        private readonly long _start = Stopwatch.GetTimestamp();
        private readonly Timer _timer;
        private long _highest;

        public PeakMemory() => _timer = new Timer(_ => Look(), null, 0, Milliseconds);

        public long Highest
        {
            get
            {
                Look();
                return Interlocked.Read(ref _highest);
            }
        }

        public double Seconds => Stopwatch.GetElapsedTime(_start).TotalSeconds;

        public void Dispose() => _timer.Dispose();

        private void Look() => Interlocked.Exchange(ref _highest, Math.Max(Interlocked.Read(ref _highest), Environment.WorkingSet));
    }
}
