using System.Text;
using PushSim.Analysis.Fit;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Sources;
using PushSim.Surroundings;
using Xunit;

namespace PushSim.Scenarios.Tests;

public class LogReaderTests
{
    private const double Gram = 9.80665e-3;

    // One log of 0 N, 1.5 N, 2 N at 0, 0.1, 0.2 s, as loggers of many habits write it
    [Theory]
    [InlineData("comma", "time [s],force [N]\n0,0\n0.1,1.5\n0.2,2\n")]
    [InlineData("semicolon and decimal comma", "Zeit [s];Kraft [N]\n0;0\n0,1;1,5\n0,2;2,0\n")]
    [InlineData("tab", "t\tF (N)\n0\t0\n0.1\t1.5\n0.2\t2\n")]
    [InlineData("blanks", "time_s force_n\n0.0   0.0\n0.1   1.5\n0.2   2.0\n")]
    [InlineData("bar", "time_s|force_n\n0|0\n0.1|1.5\n0.2|2\n")]
    [InlineData("force first", "Force/N,Time/ms\n0,0\n1.5,100\n2,200\n")]
    [InlineData("quoted decimal comma", "time [s],force [N]\n\"0,0\",\"0,0\"\n\"0,1\",\"1,5\"\n\"0,2\",\"2,0\"\n")]
    [InlineData("carriage returns and a mark", "\uFEFFtime_s,force_n\r\n0,0\r\n0.1,1.5\r\n0.2,2\r\n")]
    [InlineData("remarks", "# a logger\n% rate 10\ntime_s,force_n\n0,0\n// here it slips\n0.1,1.5\n\n0.2,2\n")]
    [InlineData("preamble", "Logger 3\nSerial 17\ntime [ms];force [mN]\n0;0\n100;1500\n200;2000\n")]
    [InlineData("row of units", "time,force\ns,N\n0,0\n0.1,1.5\n0.2,2\n")]
    [InlineData("other columns", "no,time_s,temperature,force_n,note\n1,0,20,0,a\n2,0.1,20,1.5,b\n3,0.2,20,2,\"c, d\"\n")]
    [InlineData("gram-force", "ms,gf\n0,0\n100,152.957\n200,203.943\n")]
    [InlineData("a word of another language", "Temps [s],Effort de traction [N]\n0,0\n0.1,1.5\n0.2,2\n")]
    [InlineData("clock", "time,force [N]\n12:00:00.0,0\n12:00:00.1,1.5\n12:00:00.2,2\n")]
    [InlineData("clock past midnight", "time,force [N]\n23:59:59.8,0\n23:59:59.9,1.5\n00:00:00.0,2\n")]
    [InlineData("exponents", "time_s,force_n\n0e0,0\n1e-1,1.5E0\n2E-1,+2\n")]
    public void Habits_of_loggers(string habit, string text)
    {
        LogResult result = Read(text);
        Assert.True(result.Problems.Count == 0, habit + ": " + string.Join("; ", result.Problems));
        ForceTrace trace = Assert.Single(result.Traces).Trace;
        Close([0.0, 0.1, 0.2], [.. trace.Time.Select(t => t - trace.Time[0])]);
        Close([0.0, 1.5, 2.0], trace.Force);
    }

    [Theory]
    [InlineData("N", 1.0)]
    [InlineData("gf", Gram)]
    [InlineData("g", Gram)]
    [InlineData("kgf", 1000 * Gram)]
    [InlineData("lbf", 4.4482216152605)]
    [InlineData("ozf", 0.27801385095378125)]
    public void Units_of_the_header_and_of_the_option_are_alike(string unit, double newton)
    {
        Assert.Equal(2 * newton, Read($"time [s],force [{unit}]\n0,0\n0.1,2\n").Traces[0].Trace.Force[1], 1e-12);
        Assert.Equal(2 * newton, Read("time [s],force\n0,0\n0.1,2\n", new LogOptions { ForceUnit = unit }).Traces[0].Trace.Force[1], 1e-12);
        Assert.Equal(2 * newton, Read("0,0\n0.1,2\n0.2,1\n", new LogOptions { ForceUnit = unit }).Traces[0].Trace.Force[1], 1e-12);
    }

    // A row of nothing but blanks, in the head, amid the data and at the end, under every way of keeping cells apart
    [Theory]
    [InlineData(",")]
    [InlineData(";")]
    [InlineData("\t")]
    [InlineData("|")]
    [InlineData("   ")]
    public void A_row_of_blanks_is_no_row(string between)
    {
        string[] rows = ["time_s,force_n", "0,0", "0.1,1.5", "0.2,2"];
        foreach (string blank in new[] { " ", "   ", "\t", " \t ", "\u00A0\u00A0", "\u00A0 \u00A0", "\u2003 \u2003 \u2003" })
        {
            for (int at = 0; at <= rows.Length; at++)
            {
                string[] all = [.. rows[..at].Select(r => r.Replace(",", between)), blank, .. rows[at..].Select(r => r.Replace(",", between))];
                LogResult result = Read(string.Join('\n', all) + "\n");
                Assert.True(result.Problems.Count == 0, $"{between} {at} {(int)blank[0]:X}: {string.Join("; ", result.Problems)}");
                Close([0.0, 1.5, 2.0], Assert.Single(result.Traces).Trace.Force);
            }
        }
    }

    [Fact]
    public void A_log_without_any_force_is_complained_about() =>
        Assert.Contains("no row has a force", Assert.Single(Read("time [s],force [N]\n0,\n0.1,\n0.2,\n").Problems).Message);

    [Fact]
    public void Millivolt_needs_a_calibration()
    {
        const string Text = "time [s],bridge,cell [mV]\n0,1,0\n0.1,1,0.5\n";
        Assert.Contains("calibration", Assert.Single(Read(Text).Problems).Message);
        Assert.True(FitArguments.TryCalibration("25 gf/mV", out double per, out _));
        Assert.Equal(12.5 * Gram, Read(Text, new LogOptions { ForcePerMillivolt = per }).Traces[0].Trace.Force[1], 1e-12);
    }

    [Fact]
    public void Columns_of_tyre_and_pull_and_a_new_clock_start_a_new_log()
    {
        string rows = string.Concat(Enumerable.Range(0, 40).Select(i => FormattableString.Invariant($"{(i < 20 ? "soft" : "hard")},{i / 10},{(i % 20) * 0.1},{i}\n")));
        LogResult result = Read("tyre,pull,time_s,force_n\n" + rows);
        Assert.Equal(["soft", "soft", "hard", "hard"], result.Traces.Select(t => t.Tyre));
        Assert.All(result.Traces, t => Assert.Equal(10, t.Trace.Time.Length));
        string again = string.Concat(Enumerable.Range(0, 40).Select(i => FormattableString.Invariant($"{(i % 20) * 0.1},{i}\n")));
        Assert.Equal(2, Read("time_s,force_n\n" + again).Traces.Count);
    }

    [Fact]
    public void A_table_of_readings()
    {
        LogResult result = Read("tyre;force [gf];breakaway [gf];load [gf]\nsoft;110,5;130;200\nfoam;;141;200\nhard;26 gf;;200\n");
        Assert.Empty(result.Problems);
        Assert.Equal(["soft", "foam", "hard"], result.Readings.Select(r => r.Tyre));
        Assert.Equal(110.5 * Gram, result.Readings[0].Force!.Value, 1e-12);
        Assert.Null(result.Readings[1].Force);
        Assert.Equal(141 * Gram, result.Readings[1].Peak!.Value, 1e-12);
        Assert.Equal(26 * Gram, result.Readings[2].Force!.Value, 1e-12);
        Assert.Equal(200 * Gram, result.Readings[2].Load!.Value, 1e-12);
    }

    // each with what and where
    [Theory]
    [InlineData("", 0, 0, "empty")]
    [InlineData("  \n\n", 0, 0, "empty")]
    [InlineData("# nothing\n", 0, 0, "only remarks")]
    [InlineData("time_s,force_n\n", 1, 1, "no rows of data")]
    [InlineData("time_s,force_n\n0,1\n", 2, 1, "one row")]
    [InlineData("time_s,force_n\n0,1\n0.1,abc\n0.2,3\n", 3, 5, "\"abc\" in the force column is no number")]
    [InlineData("time_s,force_n\n0,1\nlater,2\n0.2,3\n", 3, 1, "\"later\" in the time column is no number")]
    [InlineData("time_s,force_n\n0,1\n0.1,NaN\n0.2,3\n", 3, 5, "no number")]
    [InlineData("time_s,force_n\n0,1\n0.1,1e999\n0.2,3\n", 3, 5, "no number")]
    [InlineData("time_s,force_n\n0,1\n0.1,=A1*2\n0.2,3\n", 3, 5, "a formula")]
    [InlineData("time_s,force_n\n0,1\n0.1,@SUM(A1)\n0.2,3\n", 3, 5, "a formula")]
    [InlineData("time_s,force_n\n0,1\n0.1,+cmd|' /C calc'!A0\n0.2,3\n", 3, 5, "a formula")]
    [InlineData("time_s,temperature\n0,1\n0.1,2\n", 1, 1, "no force column")]
    [InlineData("time_s,force\n0,1\n0.1,2\n", 1, 8, "unit of the force is missing")]
    [InlineData("time_s,force [smoots]\n0,1\n0.1,2\n", 1, 8, "no unit of force")]
    [InlineData("time_s,force_n\n0,012,1,35\n0,112,1,45\n0,212,1,55\n", 2, 1, "decimal commas")]
    [InlineData("time_s,force_n\n3,1\n2,1\n1,1\n0,1\n", 3, 1, "backwards")]
    [InlineData("tyre,force [gf]\nsoft,=1+1\n", 2, 6, "a formula")]
    public void What_is_wrong_and_where(string text, int line, int column, string what)
    {
        Problem problem = Read(text).Problems[0];
        Assert.Contains(what, problem.Message);
        Assert.Equal((line, column), (problem.Line, problem.Column));
    }

    [Fact]
    public void A_file_of_faults_is_not_read_to_its_end() =>
        Assert.Equal(10, Read("time_s,force_n\n0,1\n" + string.Concat(Enumerable.Repeat("1,x\n", 1000))).Problems.Count);

    [Fact]
    public void Any_bytes_are_answered_in_words()
    {
        var random = new Random(17);
        for (int k = 0; k < 300; k++)
        {
            byte[] bytes = new byte[random.Next(2000)];
            random.NextBytes(bytes);
            string text = k % 2 == 0 ? Encoding.Latin1.GetString(bytes) : string.Concat(bytes.Select(b => "0123456789,;.\n\t\"-e #=tforce[N]"[b % 30]));
            Assert.NotNull(Read(text));
        }
    }

    // with zeros and without; a picture's first bytes; a readable head before them
    [Theory]
    [InlineData("time [s],force [N]\n0,0\n", 0)]
    [InlineData("\u0089PNG\r\n\u001A\n", 1)]
    [InlineData("time [s],force [N]\n0,0\n", 1)]
    public void Bytes_that_are_no_text_are_told_as_such(string head, byte least)
    {
        byte[] bytes = [.. Encoding.Latin1.GetBytes(head), .. Enumerable.Range(0, 1000).Select(i => (byte)Math.Max(least, (i * 151) % 256))];
        using var stream = new MemoryStream(bytes);
        Assert.Equal("this is not text", Assert.Single(LogReader.ReadStream(stream, "log.csv", new LogOptions(), TestContext.Current.CancellationToken).Problems).Message);
    }

    [Fact]
    public void A_log_in_an_old_encoding_is_text()
    {
        using var stream = new MemoryStream(Encoding.Latin1.GetBytes("Größe [N];Zeit [µs]\n0;0\n1,5;100000\n2,0;200000\n"));
        Assert.DoesNotContain(LogReader.ReadStream(stream, "log.csv", new LogOptions(), TestContext.Current.CancellationToken).Problems, p => p.Message == "this is not text");
    }

    [Fact]
    public void A_robot_file_is_no_log()
    {
        using var files = new SmallFiles();
        Problem problem = Assert.Single(LogReader.Read(files.RobotPath, cancel: TestContext.Current.CancellationToken).Problems);
        Assert.Equal("this is a robot or scenario file, not a log", problem.Message);
        Assert.Contains("--robot", problem.Help);
    }

    [Fact]
    public void A_missing_file_cannot_be_read()
    {
        LogResult result = LogReader.Read("no such file.csv");
        Assert.True(result.CannotRead);
        Assert.Contains("it is not there", Assert.Single(result.Problems).Message);
    }

    // A tenth of the ten million rows that were measured once: what is kept stays below a bound, however long the file
    [Fact]
    public void A_long_log_is_kept_short()
    {
        const int Rows = 1_000_000;
        using var stream = new RowStream(Rows);
        long before = GC.GetTotalMemory(forceFullCollection: true);
        LogResult result = LogReader.ReadStream(stream, "long.csv", new LogOptions { MostSamples = 100_000 });
        long after = GC.GetTotalMemory(forceFullCollection: true);
        Assert.Equal(Rows, result.Rows);
        LogTrace trace = Assert.Single(result.Traces);
        Assert.InRange(trace.Trace.Time.Length, 50_000, 100_000);
        Assert.Equal(16, trace.PerSample);
        Assert.True(after - before < 30_000_000, $"{after - before} bytes more");
        Assert.Equal(0.5 * ((Rows / 16 * 16) - 1) * 1e-3, trace.Trace.Time.Average(), 1e-6 * Rows);
        Assert.Equal(5.0, trace.Trace.Force.Average(), 0.01);
        GC.KeepAlive(result);
    }

    [Fact]
    public void A_row_that_ends_early_does_not_keep_the_row_before()
    {
        string rows = string.Concat(Enumerable.Range(0, 20).Select(i => FormattableString.Invariant($"{0.1 * i},{i},5\n")));
        double[] current = Read("time [s],force [N],current [A]\n" + rows + "2.0,3\n").Traces[0].Trace.Current!;
        Assert.Equal(5.0, current[^2]);
        Assert.Equal(double.NaN, current[^1]);
    }

    [Fact]
    public void A_force_in_the_fortieth_column_is_read()
    {
        string others = string.Concat(Enumerable.Range(1, 38).Select(i => $"c{i},"));
        string blanks = new(',', 38);
        Close([0.0, 1.5], Read($"time [s],{others}force [N]\n0,{blanks}0\n0.1,{blanks}1.5\n").Traces[0].Trace.Force);
    }

    [Theory]
    [InlineData("min")]
    [InlineData("mins")]
    [InlineData("minute")]
    public void Minutes_are_minutes(string unit) =>
        Close([0.0, 6.0, 12.0], Read($"time [{unit}],force [N]\n0,0\n0.1,1\n0.2,2\n").Traces[0].Trace.Time);

    [Fact]
    public void A_unit_of_time_that_is_not_known_is_named_in_the_note() =>
        Assert.Contains("\"fortnights\" is no unit of time known here: taken as s (--time-unit ms if not)", Read("time [fortnights],force [N]\n0,0\n0.1,1\n").Notes);

    [Theory]
    [InlineData("normal force [N]")]
    [InlineData("wheel load [N]")]
    public void A_normal_force_is_the_load_and_not_the_pull(string head)
    {
        PullReading reading = Assert.Single(Read($"tyre,{head},pull force [N]\nsoft,10,7\n").Readings);
        Assert.Equal((7.0, 10.0), (reading.Force, reading.Load));
    }

    // what a builder calls the force once it is steady, wherever its unit stands
    [Theory]
    [InlineData("sliding [gf]")]
    [InlineData("slide_gf")]
    [InlineData("plateau gf")]
    [InlineData("Kinetic (gf)")]
    [InlineData("steady/gf")]
    [InlineData("running (gf)")]
    [InlineData("mean [gf]")]
    [InlineData("dynamic friction [gf]")]
    public void The_force_of_sliding_goes_by_many_names(string head)
    {
        LogResult log = Read($"tyre,pull,peak [gf],{head}\nsilicone,1,1339,1121\n");
        PullReading reading = Assert.Single(log.Readings);
        Assert.Equal(1121 * Gram, reading.Force!.Value, 1e-9);
        Assert.Equal(1339 * Gram, reading.Peak!.Value, 1e-9);
        Assert.Empty(log.Notes);
    }

    // a distance, a yes or no and a speed beside the force are not the force; nor is a title above the header
    [Theory]
    [InlineData("sliding [mm],force [N]\n3,7\n")]
    [InlineData("sliding,force [N]\nyes,7\n")]
    [InlineData("sliding,plateau [N]\nyes,7\n")]
    [InlineData("mean speed [mm/s],sliding [N]\n3,7\n")]
    [InlineData("Steady pulls\ntyre,force [N]\nsoft,7\n")]
    public void A_word_of_sliding_that_is_no_force_stays_out_of_the_way(string text) =>
        Assert.Equal(7.0, Assert.Single(Read(text).Readings).Force);

    [Theory]
    [InlineData("tyre,force [N],gauge\nsoft,7,3\n", "column \"gauge\" is not used")]
    [InlineData("tyre,force [N],gauge,angle [deg]\nsoft,7,3,4\n", "columns \"gauge\" and \"angle [deg]\" are not used")]
    [InlineData("tyre,force [N],sliding [N]\nsoft,7,3\n", "column \"sliding [N]\" is not used")]
    [InlineData("tyre,force [N],speed [mm/s]\nsoft,7,3\n", "column \"speed [mm/s]\" is not used")]
    [InlineData("time [s],force [N],peak [N]\n0,0,0\n0.1,7,7\n", "column \"peak [N]\" is not used")]
    [InlineData("tyre,force [N],a1,a2,a3,a4,a5,a6,a7\nsoft,7,1,1,1,1,1,1,1\n", "columns \"a1\", \"a2\", \"a3\", \"a4\", \"a5\" and 2 more are not used")]
    public void A_column_that_is_not_used_is_told(string text, string note) => Assert.Contains(note, Read(text).Notes);

    [Theory]
    [InlineData("pull,block,tyre,load [gf],force [gf],peak [gf],battery [V],temperature [degC],cleaned,remarks\n1,1,soft,200,100,110,12,20,yes,fine\n")]
    [InlineData("no,time [s],force [N],speed [mm/s],rpm,current [A],battery [V],Notes\n1,0,0,0,0,0,12,a\n2,0.1,7,1,1,1,12,b\n")]
    public void What_is_used_or_written_down_beside_a_pull_is_not_told(string text) => Assert.DoesNotContain(Read(text).Notes, n => n.Contains("not used", StringComparison.Ordinal));

    [Fact]
    public void A_plan_that_was_not_filled_in_says_so()
    {
        Problem problem = Assert.Single(Read("block,tyre,force [N]\n1,soft,\n1,foam,\n").Problems);
        Assert.Equal(("2 rows, but none has a force", "fill in the column of force"), (problem.Message, problem.Help));
    }

    [Fact]
    public void An_empty_cell_of_the_tyre_names_no_tyre() =>
        Assert.Null(Assert.Single(Read("tyre,time [s],force [N]\n,0,0\n,0.1,1\n").Traces).Tyre);

    [Fact]
    public void A_calibration_of_zero_is_complained_about()
    {
        Assert.False(FitArguments.TryCalibration("0 gf/mV", out _, out string message));
        Assert.NotEqual("", message);
    }

    private static LogResult Read(string text, LogOptions? options = null)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text));
        return LogReader.ReadStream(stream, "log.csv", options ?? new LogOptions());
    }

    private static void Close(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        Assert.All(expected.Zip(actual), p => Assert.Equal(p.First, p.Second, 1e-5));
    }

    // Rows made as they are asked for: the file itself takes no memory.
    private sealed class RowStream(int rows) : Stream
    {
        private byte[] _ready = Encoding.ASCII.GetBytes("time_s,force_n\n");
        private int _at;
        private int _next;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            if (_at == _ready.Length)
            {
                var text = new StringBuilder();
                int end = Math.Min(rows, _next + 1000);
                for (; _next < end; _next++)
                {
                    text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{_next * 1e-3:0.000},{_next % 11}\n");
                }

                (_ready, _at) = (Encoding.ASCII.GetBytes(text.ToString()), 0);
            }

            int n = Math.Min(count, _ready.Length - _at);
            Array.Copy(_ready, _at, buffer, offset, n);
            _at += n;
            return n;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
