using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using PushSim.Analysis.Fit;
using PushSim.Scenarios.Bench;
using PushSim.Scenarios.Logs;
using Xunit;

namespace PushSim.Scenarios.Tests.Bench;

/// <summary>A cell that is listened to, line by line, against the same lines read as one log, and against forces that are known. Alone, since what it holds in memory is measured.</summary>
[CollectionDefinition(nameof(BenchSessionTests), DisableParallelization = true)]
[Collection(nameof(BenchSessionTests))]
public class BenchSessionTests
{
    private const double Gram = 9.80665e-3;
    private const double Noon = 43200.0;

    // The pulls of a log, heard or read, are the same ones: the finder is the same, only the span of the whole log is not known beforehand
    [Theory]
    [InlineData("mole-pulls.csv")]
    [InlineData("soft-tyre.csv")]
    public void Pulls_are_those_of_fit(string file)
    {
        string path = Path.Combine(Path.GetDirectoryName(Here())!, "..", "..", "..", "scenarios", "logs", file);
        FoundTrace[] read = [.. LogReader.Read(path).Traces.Select(t => PullFinder.Find(t.Trace))];
        List<FoundPull> heard = [];
        foreach (LogTrace trace in LogReader.Read(path).Traces)
        {
            var watch = new PullWatch(p => heard.Add(p.Pull!));
            for (int i = 0; i < trace.Trace.Time.Length; i++)
            {
                watch.Add(trace.Trace.Time[i], trace.Trace.Force[i]);
            }

            watch.Finish();
        }

        FoundPull[] all = [.. read.SelectMany(t => t.Pulls)];
        Assert.Equal(all.Length, heard.Count);
        foreach ((FoundPull one, FoundPull other) in all.Zip(heard))
        {
            Near(one.Plateau!.Value.Value, other.Plateau!.Value.Value, 0.005);
            Near(one.HighestReading, other.HighestReading, 0.005);
            Near(one.Breakaway.Value, other.Breakaway.Value, 0.01);
            Assert.Equal(one.Quality, other.Quality);
        }
    }

    [Theory]
    [InlineData("{0:0.00} g", 80)]
    [InlineData("{0:0.00} g", 320)]
    [InlineData("Weight: {0:0.00} g", 80)]
    [InlineData("{2:0},{0:0.00}", 80)]
    [InlineData("{{\"t_ms\":{2:0.0},\"f_g\":{0:0.00}}}", 80)]
    public void Three_pulls_are_heard_with_their_forces(string line, double rate)
    {
        var heard = new Heard(new BenchSettings { Log = new LogOptions { ForceUnit = line.Contains('g') ? null : "gf" } });
        heard.Play(line, rate, Pulls(3, rate));
        WatchedPull[] pulls = heard.Pulls;
        Assert.Equal(3, pulls.Length);
        Assert.All(pulls, p => Assert.Equal(PullFlaw.None, p.Flaw));
        Assert.All(pulls, p => Near(520.0 * Gram, p.Pull!.Plateau!.Value.Value, 0.005));
        Assert.All(pulls, p => Near(620.0 * Gram, p.Pull!.HighestReading, 0.03));
        Assert.Equal(0, heard.Session.Gaps);
        Assert.Equal(0, heard.Session.Strays);

        // what is kept on the disk reads as what was heard
        LogResult read = LogReader.ReadStream(new MemoryStream(Encoding.UTF8.GetBytes(heard.Kept.ToString())), "kept", new LogOptions { ForceUnit = line.Contains('g') ? null : "gf" });
        Assert.Empty(read.Problems);
        FoundTrace found = PullFinder.Find(Assert.Single(read.Traces).Trace);
        Assert.Equal(3, found.Pulls.Count);
        foreach ((FoundPull one, WatchedPull other) in found.Pulls.Zip(pulls))
        {
            Near(one.Plateau!.Value.Value, other.Pull!.Plateau!.Value.Value, 0.005);
        }
    }

    [Fact]
    public void A_known_mass_gives_the_scale_and_the_sign()
    {
        const double perGram = -21.3;
        var heard = new Heard(new BenchSettings { Known = 200.0 * Gram });
        double[] put = [.. Hold(0.0, 3.0, 80), .. Hold(200.0, 3.0, 80), .. Hold(0.0, 3.0, 80), .. Pulls(2, 80.0)];
        heard.Play("{0:0}", 80.0, [.. put.Select(f => (perGram * f) + 8123.0)]);
        Assert.Equal([BenchAsk.Slack, BenchAsk.PutOn, BenchAsk.TakeOff, BenchAsk.Pulls], heard.Of<BenchEvent.Waits>().Select(w => w.For));
        Assert.All(heard.Pulls, p => Near(520.0 * Gram, p.Pull!.Plateau!.Value.Value, 0.01));
        Assert.Equal(2, heard.Pulls.Length);
    }

    // a cell that drifts down behind the known mass is tared anew, and the mass that stood on it is no pull
    [Fact]
    public void A_known_mass_is_no_pull_when_the_cell_is_tared_anew()
    {
        var heard = new Heard(new BenchSettings { Known = 200.0 * Gram });
        heard.Play("{0:0.00} gf", 80.0, [.. Hold(0.0, 3.0, 80), .. Hold(200.0, 3.0, 80), .. Hold(0.0, 3.0, 80), .. Hold(-60.0, 3.0, 80)]);
        Assert.True(heard.Of<BenchEvent.Tared>().Last().Below > 0.5);
        Assert.Empty(heard.Pulls);
    }

    // a display that stands still: every reading is the same, and no sum of them is exact
    [Fact]
    public void A_known_mass_is_seen_by_a_cell_without_noise()
    {
        var heard = new Heard(new BenchSettings { Known = 200.0 * Gram });
        heard.Play("{0:0.00} gf", 80.0, [.. Enumerable.Repeat(0.0, 240), .. Enumerable.Repeat(400.1, 240), .. Enumerable.Repeat(0.0, 240)]);
        Assert.Equal([BenchAsk.Slack, BenchAsk.PutOn, BenchAsk.TakeOff, BenchAsk.Pulls], heard.Of<BenchEvent.Waits>().Select(w => w.For));
    }

    // who pulls before the cell has rested a second is tared on the plateau: the slack behind it shows that, and no pull is lost
    [Fact]
    public void A_pull_that_was_taken_for_the_tare_is_counted_once_the_cell_rests()
    {
        var heard = new Heard(new BenchSettings());
        double[] pulls = Pulls(2, 80.0);
        int rest = Array.FindIndex(pulls, f => f > 50.0) - 40;
        heard.Play("{0:0.00} gf", 80.0, pulls[rest..]);
        BenchEvent.Tared[] tared = [.. heard.Of<BenchEvent.Tared>()];
        Assert.Equal(2, tared.Length);
        Assert.Equal((0.0, true), (tared[0].Below, tared[1].IsWhole));
        Near(520.0 * Gram, tared[1].Below, 0.01);
        Assert.InRange(tared[1].Zero, -0.01, 0.01);
        Assert.Equal(2, heard.Pulls.Length);
        Assert.All(heard.Pulls, p => Near(520.0 * Gram, p.Pull!.Plateau!.Value.Value, 0.005));
    }

    [Theory]
    [InlineData(PullFlaw.NoPlateau)]
    [InlineData(PullFlaw.Clipped)]
    [InlineData(PullFlaw.Sideways)]
    [InlineData(PullFlaw.Gap)]
    public void What_makes_a_pull_worth_doing_again(PullFlaw flaw)
    {
        var heard = new Heard(new BenchSettings());
        double[] pull = flaw == PullFlaw.NoPlateau ? [.. Hold(0.0, 2.0, 80), 200.0, 400.0, 600.0, 550.0, 300.0, .. Hold(0.0, 2.0, 80)] : Pulls(1, 80.0);
        for (int i = 0; i < pull.Length; i++)
        {
            pull[i] = flaw == PullFlaw.Clipped ? Math.Min(pull[i], 500.0) : flaw == PullFlaw.Sideways && i > 320 && pull[i] > 450.0 ? pull[i] * (1.0 - (0.8 * i / pull.Length)) : pull[i];
        }

        heard.Play("{0:0.00} g", 80.0, pull, flaw == PullFlaw.Gap ? 80 * 4 : -1);
        Assert.Equal(flaw, Assert.Single(heard.Pulls).Flaw);
        Assert.Equal(flaw == PullFlaw.Gap ? 1 : 0, heard.Session.Gaps);
    }

    [Fact]
    public void A_cable_that_was_out_is_a_gap_and_the_next_pull_is_heard()
    {
        var heard = new Heard(new BenchSettings());
        heard.Play("{0:0.00} g", 80.0, Pulls(1, 80.0));
        heard.Wait(30.0);
        heard.Play("{0:0.00} g", 80.0, Pulls(1, 80.0));
        BenchEvent.Gap gap = Assert.Single(heard.Of<BenchEvent.Gap>());
        Assert.Equal(30.0, gap.Time - gap.From, 0.1);
        Assert.Equal(2, heard.Pulls.Length);
    }

    [Fact]
    public void Hostile_lines_are_strays_and_nothing_more()
    {
        var heard = new Heard(new BenchSettings());
        heard.Play("{0:0.00} g", 80.0, Hold(0.0, 3.0, 80));
        string[] hostile = ["NaN", "nan g", "Infinity", "1e999 g", "\u001b[2J\u001b]0;x\u0007", "\0\0\0", "=cmd()", "-", "g", "1,2,3,4", new string('7', 3000), "{\"a\":", "[ ] ->", "\u202e12.5 g"];
        foreach (string line in hostile)
        {
            heard.Line(line);
        }

        heard.Play("{0:0.00} g", 80.0, Pulls(1, 80.0));
        Assert.Single(heard.Pulls);
        Assert.InRange(heard.Session.Strays, hostile.Length - 2, hostile.Length);
        Assert.All(heard.Of<BenchEvent.Stray>(), s => Assert.DoesNotContain(s.Text, char.IsControl));
        Assert.All(heard.Of<BenchEvent.Sample>(), s => Assert.True(double.IsFinite(s.Force)));
    }

    // a kitchen scale that prints once a second has no gaps, but for those before that is known
    [Fact]
    public void A_slow_cell_has_no_gaps()
    {
        var heard = new Heard(new BenchSettings());
        heard.Play("{0:0.00} g", 1.0, Hold(100.0, 30.0, 1.0));
        Assert.InRange(heard.Session.Gaps, 0, 2);
        Assert.Equal(30, heard.Session.Readings);
    }

    [Fact]
    public void Ten_megabytes_without_a_line_end_cost_one_line()
    {
        var heard = new Heard(new BenchSettings());
        var lines = new LineAssembler((line, _, isCut) => heard.Line(line, isCut));
        long before = GC.GetAllocatedBytesForCurrentThread();
        string junk = new('x', 4096);
        for (int i = 0; i < 2560; i++)
        {
            lines.Push(junk);
        }

        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 100_000);
        lines.Push("\n1 g\n");
        Assert.Equal(1, heard.Session.Strays);
    }

    // Half an hour at 320 a second; PUSHSIM_BENCH_HOURS=8 listens so long
    [Fact]
    public void A_long_stream_takes_no_memory()
    {
        double hours = double.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_BENCH_HOURS"), CultureInfo.InvariantCulture, out double h) ? h : 0.2;
        int pulls = 0;
        var session = new BenchSession(new BenchSettings(), e => pulls += e is BenchEvent.PullEnded ? 1 : 0);
        double[] one = Pulls(1, 320.0);
        long most = 0, atFirst = 0;
        int n = 0;
        for (int repeat = 0; n < hours * 3600.0 * 320.0; repeat++)
        {
            foreach (double f in one)
            {
                double arrival = Noon + (n++ / 320.0);
                session.Take(BenchSession.Stamped(string.Create(CultureInfo.InvariantCulture, $"{f:0.00} g"), arrival), n, arrival);
            }

            if (repeat % 10 == 5)
            {
                long now = GC.GetTotalMemory(true);
                atFirst = atFirst == 0 ? now : atFirst;
                most = Math.Max(most, now);
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{n} readings, {pulls} pulls, memory {atFirst / 1e6:0.0} MB at first and {most / 1e6:0.0} MB at most"));
        Assert.Equal(n / one.Length, pulls);
        Assert.True(most - atFirst < 2_000_000, $"{atFirst} to {most} bytes");
    }

    [Fact]
    public void Lines_without_a_unit_are_asked_for_it()
    {
        var heard = new Heard(new BenchSettings());
        heard.Play("{0:0.00}", 80.0, Hold(0.0, 1.0, 80));
        BenchEvent.Wrong wrong = Assert.Single(heard.Of<BenchEvent.Wrong>());
        Assert.Contains("unit", wrong.Problem.Message, StringComparison.Ordinal);
        Assert.Contains("--unit", wrong.Problem.Help, StringComparison.Ordinal);
    }

    // Slack, ramp, peak of 620, plateau of 520, slack, in gram
    private static double[] Pulls(int count, double rate)
    {
        var random = new Random(5);
        List<double> all = [.. Hold(0.0, 1.5, rate)];
        for (int k = 0; k < count; k++)
        {
            int n = (int)(7.0 * rate);
            for (int i = 0; i < n; i++)
            {
                double t = i / rate;
                double f = t < 1.5 || t > 5.0 ? 0.0 : t < 2.0 ? 620.0 * (t - 1.5) / 0.5 : 520.0 + (100.0 * Math.Exp(-(t - 2.0) / 0.05));
                all.Add(f + (random.NextDouble() * 4.0) - 2.0 + (f > 0.0 ? (random.NextDouble() * 12.0) - 6.0 : 0.0));
            }
        }

        return [.. all];
    }

    private static double[] Hold(double grams, double seconds, double rate)
    {
        var random = new Random(6);
        return [.. Enumerable.Range(0, (int)(seconds * rate)).Select(_ => grams + (random.NextDouble() * 2.0) - 1.0)];
    }

    private static void Near(double expected, double actual, double share) => Assert.True(Math.Abs(actual - expected) <= share * Math.Abs(expected), $"{actual} for {expected}");

    private static string Here([CallerFilePath] string path = "") => path;

    private sealed class Heard
    {
        private readonly List<BenchEvent> _events = [];
        private int _number;
        private double _now = Noon;

        public Heard(BenchSettings settings) => Session = new BenchSession(settings, _events.Add);

        public BenchSession Session { get; }

        public StringBuilder Kept { get; } = new();

        public WatchedPull[] Pulls => [.. Of<BenchEvent.PullEnded>().Select(p => p.Pull)];

        public IEnumerable<T> Of<T>() => _events.OfType<T>();

        public void Wait(double seconds) => _now += seconds;

        public void Line(string line, bool isCut = false)
        {
            string stamped = BenchSession.Stamped(line, _now);
            Kept.Append(stamped).Append('\n');
            Session.Take(stamped, ++_number, _now, isCut);
        }

        public void Play(string format, double rate, double[] grams, int gapAt = -1)
        {
            for (int i = 0; i < grams.Length; i++)
            {
                // over the cable come four at once
                double at = _now;
                _now += i % 4 == 0 ? 3.0 / rate : 0.0;
                _now += i == gapAt ? 2.0 : 0.0;
                Line(string.Format(CultureInfo.InvariantCulture, format, grams[i], i / rate, 1e3 * _number / rate));
                _now = i % 4 == 3 ? _now + (1.0 / rate) : _now;
                _ = at;
            }

            Session.Finish();
        }
    }
}
