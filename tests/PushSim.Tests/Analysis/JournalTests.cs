using System.Text;
using PushSim.Analysis.Chance;
using PushSim.Words.Matches;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Journals of matches: what is taken from them, what is refused and why, what is set aside.</summary>
public class JournalTests
{
    private const string Name = "part-1-of-1.csv";
    private const int Head = 2;

    [Fact]
    public void A_row_brings_a_match_back_to_the_bit()
    {
        MatchMemory memory = Played(200);
        var drawn = new DrawnOutcomes(1);
        KeptMatches again = Work(memory, 200);
        again.Resume();
        Assert.Equal(200, again.Finished);
        Assert.Equal(Enumerable.Range(0, 200).Select(n => drawn.End(n)), again.Of(0));
        Assert.Contains(again.Of(0), o => o is { HasFailed: true, Fault: "a cause, with \"quotes\"" });
    }

    // what a kill leaves: rows without a closing line, or half a row
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(40)]
    [InlineData(300)]
    public void What_was_cut_off_is_played_again(int bytes)
    {
        MatchMemory memory = Played(50);
        string whole = Text(memory, Name);
        int end = whole.IndexOf("# end", StringComparison.Ordinal);
        Put(memory, Name, whole[..(end - bytes)]);
        KeptMatches again = Work(memory, 50);
        Assert.Equal(ResumeState.Plain, again.Resume());
        Assert.Equal(50 - whole[(end - bytes)..end].Count(c => c == '\n'), again.Finished);
        again.Run();
        Same(memory, 50);
        Assert.Equal([Name], memory.Names);
    }

    // of the first lines nothing was there
    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(130)]
    public void A_journal_cut_off_at_its_start_begins_anew(int bytes)
    {
        MatchMemory memory = Played(50);
        Put(memory, Name, Text(memory, Name)[..bytes]);
        KeptMatches again = Work(memory, 50);
        Assert.Equal(ResumeState.Plain, again.Resume());
        again.Run();
        Same(memory, 50);
    }

    // line 3 is the row of the last match of the first window, 63
    [Theory]
    [InlineData("robot", "opponent", "the row does not fit its checksum")]
    [InlineData(",tyres,", ",motors,", "the row does not fit its checksum")]
    [InlineData("63,", "64,", "the row does not fit its checksum")]
    [InlineData("3", "NaN", "finite")]
    [InlineData("4", "Infinity", "finite")]
    [InlineData("4", "-Infinity", "finite")]
    [InlineData("4", "1e999", "finite")]
    [InlineData("4", "1,5", "this is no row of a match")]
    [InlineData("2", "won", "this is no row of a match")]
    [InlineData("", "", "this is no row of a match")]
    public void A_changed_row_is_refused_with_its_place_and_played_again(string from, string to, string reason)
    {
        MatchMemory memory = Played(200);
        string[] lines = Text(memory, Name).Split('\n');
        int row = Array.FindIndex(lines, l => l.Contains(",robot,line,", StringComparison.Ordinal));
        string[] cells = lines[row].Split(',');
        if (int.TryParse(from, out int cell))
        {
            cells[cell + 1] = to;
            lines[row] = string.Join(',', cells);
        }
        else
        {
            lines[row] = from.Length == 0 ? "" : from == "63," ? string.Join(',', cells.Select((c, i) => i == 1 ? "777" : c)) : lines[row].Replace(from, to, StringComparison.Ordinal);
        }

        string changed = string.Join('\n', lines);
        Put(memory, Name, changed);
        KeptMatches again = Work(memory, 200);
        ResumeState state = again.Resume();
        JournalProblem problem = state.Problems[0];
        Assert.Equal((Name, row + 1), (problem.File, problem.Line));
        Assert.Contains(reason, JournalWords.Of(problem));
        Assert.Equal(199, again.Finished);
        Assert.Equal(changed, Text(memory, state.Aside));
        again.Run();
        Same(memory, 200);
    }

    // rows of other campaigns that are sound in themselves
    [Theory]
    [InlineData(2, "print", 1, "the row is of another contest: another scenario, seed or label")]
    [InlineData(1, "other", 1, "the row is of another contest: another scenario, seed or label")]
    [InlineData(1, "print", 2, "match 1 is not of this part")]
    public void A_foreign_row_is_refused(ulong seed, string print, int part, string reason)
    {
        MatchMemory memory = Played(50);
        var other = new MatchMemory();
        Work(other, 400, seed, print, part == 1 ? null : (2, 2)).Run();
        string foreign = Text(other, part == 1 ? Name : "part-2-of-2.csv").Split('\n').First(l => l.StartsWith(part == 1 ? "0,300," : "0,1,", StringComparison.Ordinal));
        string whole = Text(memory, Name);
        int end = whole.IndexOf("# end", StringComparison.Ordinal);
        Put(memory, Name, whole[..end] + foreign + "\n");
        KeptMatches again = Work(memory, 50);
        ResumeState state = again.Resume();
        Assert.Equal(part == 1 ? [$"{Name}:{Head + 50 + 1}: {reason}"] : [], state.Problems.Select(JournalWords.Of));
        Assert.Equal(50, again.Finished);
        if (part == 2)
        {
            // in the whole's own part it is a match like any other; in another part it is not
            MatchMemory first = new();
            Work(first, 50, part: (1, 2)).Run();
            Put(first, "part-1-of-2.csv", Text(first, "part-1-of-2.csv") + foreign + "\n");
            Assert.Contains("match 1 is not of this part", JournalWords.Of(Work(first, 50, part: (1, 2)).Resume().Problems[0]));
        }
    }

    [Fact]
    public void Of_two_results_of_a_match_neither_is_taken()
    {
        MatchMemory memory = Played(50);
        string whole = Text(memory, Name);
        string row = JournalRow.Text(0, new DrawnOutcomes(1).End(7) with { GroundGained = 0.25 }, KeptMatchWords.Instance, Key());
        Put(memory, Name, whole + row + "\n");
        KeptMatches again = Work(memory, 50);
        ResumeState state = again.Resume();
        int line = whole.Split('\n').ToList().FindIndex(l => l.StartsWith("0,7,", StringComparison.Ordinal)) + 1;
        Assert.Equal([$"{Name}:54: match 7 has another result than in line {line}"], state.Problems.Select(JournalWords.Of));
        Assert.Equal(49, again.Finished);
        Assert.Equal(whole + row + "\n", Text(memory, state.Aside));
        again.Run();
        Same(memory, 50);
    }

    // the same twice says the same
    [Fact]
    public void A_row_that_stands_twice_counts_once()
    {
        MatchMemory memory = Played(50);
        string whole = Text(memory, Name);
        Put(memory, Name, whole + whole.Split('\n')[10] + "\n");
        KeptMatches again = Work(memory, 50);
        Assert.Equal(ResumeState.Plain, again.Resume());
        Assert.Equal((50, 50), (again.Finished, again.TallyOf(0).All));
    }

    // rows are sound, but some are gone or changed places: the closing line tells
    [Theory]
    [InlineData(true, "this line closes 50 rows, and there are 49")]
    [InlineData(false, "the lines above are not those that this line closed")]
    public void The_closing_line_tells_what_rows_cannot(bool isGone, string reason)
    {
        MatchMemory memory = Played(50);
        List<string> lines = [.. Text(memory, Name).Split('\n')];
        string row = lines[20];
        lines.RemoveAt(20);
        if (!isGone)
        {
            lines.Insert(5, row);
        }

        Put(memory, Name, string.Join('\n', lines));
        KeptMatches again = Work(memory, 50);
        Assert.Equal([$"{Name}:{(isGone ? 52 : 53)}: {reason}"], again.Resume().Problems.Select(JournalWords.Of));
        again.Run();
        Same(memory, 50);
    }

    [Theory]
    [InlineData("# finished matches 3 of odds; fingerprint 0123; seed 1; matches 10; part 1 of 1\n", "it is of another format than 4, which this version reads")]
    [InlineData("my own notes\n", "it does not begin like a journal of matches")]
    [InlineData("\0\0\0\0\0\0", "it does not begin like a journal of matches")]
    public void What_is_no_journal_of_ours_is_set_aside_as_it_is(string text, string reason)
    {
        var memory = new MatchMemory();
        Put(memory, Name, text);
        KeptMatches work = Work(memory, 50);
        ResumeState state = work.Resume();
        Assert.Equal(("part-1-of-1-aside-1.csv", reason), (state.Aside, JournalWords.Of(state.Misfit)));
        work.Run();
        Same(memory, 50);
        Assert.Equal(text, Text(memory, state.Aside));
    }

    [Theory]
    [InlineData("engine ", "an engine with other results")]
    [InlineData("precision ", "another precision")]
    [InlineData("draws ", "another scheme of draws")]
    public void The_head_tells_what_made_the_matches(string field, string reason)
    {
        MatchMemory memory = Played(10);
        Put(memory, Name, Text(memory, Name).Replace("; " + field, "; " + field + "9", StringComparison.Ordinal));
        Assert.Equal("it is of " + reason, JournalWords.Of(Work(memory, 10).Resume().Misfit));
    }

    [Fact]
    public void Line_ends_of_another_system_are_read()
    {
        MatchMemory memory = Played(50);
        Put(memory, Name, Text(memory, Name).Replace("\n", "\r\n", StringComparison.Ordinal));
        KeptMatches again = Work(memory, 60);
        Assert.Equal(ResumeState.Plain, again.Resume());
        again.Run();
        Same(memory, 60);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 1)]
    [InlineData(16, 2)]
    public void Parts_of_a_campaign_that_grows_play_only_what_is_missing(int parts, int contests)
    {
        var memory = new MatchMemory();
        foreach (long matches in new[] { 5L, 100, 1000, 30 })
        {
            int ran = 0;
            long before = matches == 30 ? 1000 : matches == 1000 ? 100 : matches == 100 ? 5 : 0;
            for (int k = 1; k <= parts; k++)
            {
                KeptMatches part = Work(memory, matches, part: (k, parts), contests: contests);
                part.Resume();
                part.Run(rounds: 3, done: () => ran++);
                Assert.Equal(part.All, part.Finished);
            }

            Assert.Equal(Math.Max(0, matches - before) * contests, ran);
            KeptMatches merged = Work(memory, matches, contests: contests);
            Assert.True(merged.Merge().IsWhole);
            for (int c = 0; c < contests; c++)
            {
                var drawn = new DrawnOutcomes((ulong)c + 1);
                Assert.Equal(Enumerable.Range(0, (int)matches).Select(n => drawn.End(n)), merged.Of(c));
                Assert.Equal(Tally.Of(merged.Of(c)).Wins, merged.TallyOf(c).Wins);
            }
        }
    }

    // stops where the interval is narrow enough, gone on with or not, and takes no more than that from a longer journal
    [Theory]
    [InlineData(0)]
    [InlineData(150)]
    [InlineData(5000)]
    public void Stopping_early_hangs_on_the_numbers_alone(int kept)
    {
        KeptMatches plain = Work(null, 100_000, contests: 2);
        plain.Run(within: 0.03);
        MatchMemory memory = kept > 0 ? Played(kept, contests: 2) : new MatchMemory();
        KeptMatches work = Work(memory, 100_000, contests: 2);
        work.Resume();
        work.Run(within: 0.03);
        Assert.Equal(plain.Of(0), work.Of(0));
        Assert.Equal(plain.Of(1), work.Of(1));
        Assert.Equal((plain.TallyOf(0).All, plain.TallyOf(1).All), (work.TallyOf(0).All, work.TallyOf(1).All));
        Assert.InRange(work.TallyOf(0).All, 200, 4000);
        Assert.Equal(0, work.TallyOf(0).All % Campaign.Look);
    }

    [Fact]
    public void Parts_tell_their_state()
    {
        var memory = new MatchMemory();
        for (int k = 1; k <= 4; k++)
        {
            Work(memory, k == 2 ? 10 : 100, k == 4 ? 7UL : 1UL, part: (k, 6)).Run();
        }

        Work(memory, 100, part: (6, 6)).Run();
        Put(memory, "part-3-of-6.csv", Text(memory, "part-3-of-6.csv").Replace(",robot,", ",none,", StringComparison.Ordinal));
        MergeState state = Work(memory, 100).Merge();
        Assert.Equal(
            [PartCondition.Whole, PartCondition.Unfinished, PartCondition.Damaged, PartCondition.Foreign, PartCondition.Missing, PartCondition.Whole], state.Parts.Select(p => p.Condition));
        Assert.Equal([17, 2, 0, 16], state.Parts.Where((_, i) => i is 0 or 1 or 3 or 5).Select(p => p.Finished));
        Assert.Equal(("part-3-of-6.csv", JournalFault.Checksum), (state.Parts[2].Problem!.File, state.Parts[2].Problem!.Fault));
        Assert.Equal(JournalMisfit.Seed, state.Parts[3].Misfit);
    }

    [Theory]
    [InlineData("part-3-of-16.csv", 16)]
    [InlineData("part-1-of-1.csv", 1)]
    [InlineData("part-17-of-16.csv", 0)]
    [InlineData("part-3-of-x.csv", 0)]
    [InlineData("part-3-of-16.csv.new", 0)]
    [InlineData("part-3-of-16-aside-1.csv", 0)]
    [InlineData("matches.csv", 0)]
    public void A_name_tells_the_count_of_parts(string name, int parts) => Assert.Equal(parts, JournalHead.PartsOf(name));

    // a hundred million: begins at once, goes on, and neither time nor memory hangs on the count
    [Fact]
    public void A_very_long_campaign_begins_and_goes_on()
    {
        var memory = new MatchMemory();
        for (int session = 1; session <= 3; session++)
        {
            using var stop = new CancellationTokenSource();
            int ran = 0;
            KeptMatches work = Work(memory, 100_000_000, part: (3, 7), contests: 3);
            work.Resume();
            long before = GC.GetAllocatedBytesForCurrentThread();
            work.Run(done: () =>
            {
                if (++ran == 1000)
                {
                    stop.Cancel();
                }
            }, cancel: stop.Token);
            Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 20_000_000);
            Assert.Equal((1000L * session, 3L * 14_285_714), (work.Finished, work.All));
        }
    }

    // half of the last row arrives
    [Theory]
    [InlineData(300)]
    [InlineData(1000)]
    [InlineData(5000)]
    public void A_full_disk_keeps_what_is_finished(int room)
    {
        var memory = new MatchMemory();
        Assert.Equal("no space left", Assert.Throws<IOException>(() => Work(new FullStore(memory, room), 200).Run()).Message);
        KeptMatches again = Work(memory, 200);
        Assert.Equal(ResumeState.Plain, again.Resume());
        Assert.Equal(Text(memory, Name).Split('\n').Skip(Head).SkipLast(1).Count(), again.Finished);
        again.Run();
        Same(memory, 200);
    }

    private static MatchMemory Played(int matches, int contests = 1)
    {
        var memory = new MatchMemory();
        Work(memory, matches, contests: contests).Run();
        return memory;
    }

    private static KeptMatches Work(IMatchStore? store, long matches, ulong seed = 1, string print = "print", (int K, int N)? part = null, int contests = 1)
    {
        DrawnOutcomes[] drawn = [.. Enumerable.Range(0, contests).Select(c => new DrawnOutcomes((ulong)c + 1))];
        return new KeptMatches(
            new MatchPlan("odds", matches, seed, 1, part), () => [.. drawn.Select((_, c) => print + c)], drawn, KeptMatchWords.Instance, store, d => (DrawnOutcomes)d);
    }

    private static uint Key() => KeptMatches.Key("print0", 1);

    private static void Same(MatchMemory memory, int matches)
    {
        var drawn = new DrawnOutcomes(1);
        KeptMatches read = Work(memory, matches);
        Assert.Equal(ResumeState.Plain, read.Resume());
        Assert.Equal(Enumerable.Range(0, matches).Select(n => drawn.End(n)), read.Of(0));
        Assert.StartsWith($"# end; matches {matches}; rows ", Text(memory, Name).TrimEnd().Split('\n')[^1], StringComparison.Ordinal);
    }

    private static string Text(MatchMemory memory, string name)
    {
        using var reader = new StreamReader(memory.Open(name)!);
        return reader.ReadToEnd();
    }

    private static void Put(MatchMemory memory, string name, string text)
    {
        using Stream stream = memory.Append(name, 0);
        stream.Write(Encoding.UTF8.GetBytes(text));
    }

    /// <summary>A store with little room.</summary>
    private sealed class FullStore(MatchMemory inner, int room) : IMatchStore
    {
        public IEnumerable<string> Names => inner.Names;

        public Stream? Open(string name) => inner.Open(name);

        public Stream Append(string name, long length) => new FullStream(inner.Append(name, length), room);

        public void Rename(string from, string to) => inner.Rename(from, to);

        public void Remove(string name) => inner.Remove(name);

        public bool IsHeld(string name) => false;
    }

    private sealed class FullStream(Stream inner, int room) : Stream
    {
        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => inner.Length;

        public override long Position { get => inner.Position; set => throw new NotSupportedException(); }

        public override void Flush() => inner.Flush();

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count)
        {
            int fits = (int)Math.Min(count, room - inner.Length);
            inner.Write(buffer, offset, fits);
            if (fits < count)
            {
                throw new IOException("no space left");
            }
        }
    }
}
