using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using PushSim.Analysis.Fit;
using PushSim.Scenarios.Logs;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Alone, so that the memory that other tests measure is their own.</summary>
[CollectionDefinition(nameof(FuzzTests), DisableParallelization = true)]
public class FuzzAlone;

/// <summary>
/// Damaged files of every kind that is read: right or complained about, never an exception, over 2 s, over 200 MB, or a word from outside the folder.
/// PUSHSIM_FUZZ=500000 tries that many files of each kind; PUSHSIM_FUZZ_SEED starts elsewhere.
/// </summary>
[Collection(nameof(FuzzTests))]
public class FuzzTests(ITestOutputHelper output)
{
    // stands only in files outside the folder
    private const string Secret = "canary7731";

    private static readonly int s_count = Number("PUSHSIM_FUZZ", 2500);
    private static readonly int s_seed = Number("PUSHSIM_FUZZ_SEED", 0);

    [Fact]
    public void Robots_scenarios_and_included_files()
    {
        string shipped = Shipped();
        byte[][] robots = [.. Directory.GetFiles(Path.Combine(shipped, "robots"), "*.toml").Order(StringComparer.Ordinal).Select(File.ReadAllBytes), Bytes(SmallFiles.Robot)];
        byte[][] scenarios = [.. Directory.GetFiles(shipped, "*.toml").Order(StringComparer.Ordinal).Select(File.ReadAllBytes), Bytes(SmallFiles.Scenario)];
        byte[][] parts = [Bytes(SmallFiles.Robot[SmallFiles.Robot.IndexOf("[[tyre]]", StringComparison.Ordinal)..SmallFiles.Robot.IndexOf("[[wheel]]", StringComparison.Ordinal)])];
        Run(() => new Sandbox(shipped), (sandbox, seed) =>
        {
            var random = new Random(seed);
            switch (random.Next(5))
            {
                case 0 or 1:
                    sandbox.Write("m.toml", new Mutations(seed, scenarios).Damaged());
                    Check(ScenarioReader.Read(sandbox["m.toml"], Options(random)), needsScenario: true);
                    break;
                case 2:
                    sandbox.Write("robots/m.toml", new Mutations(seed, robots).Damaged());
                    Check(ScenarioReader.Check(sandbox["robots/m.toml"], Options(random)), needsScenario: false);
                    break;
                case 3:
                    sandbox.Write("robots/m.toml", new Mutations(seed, robots).Damaged());
                    Check(ScenarioReader.Read(sandbox["uses-m.toml"], Options(random)), needsScenario: true);
                    break;
                default:
                    sandbox.Write("parts/tyres.toml", new Mutations(seed, parts).Damaged());
                    Check(ScenarioReader.Check(sandbox["includes.toml"], Options(random)), needsScenario: false);
                    break;
            }
        });
    }

    [Fact]
    public void Logs_of_random_bytes_end_in_complaints_or_readings()
    {
        byte[][] corpus = LogCorpus();
        Run(() => new object(), (_, seed) => OneLog(corpus, seed));
    }

    // Seeds at which a fault was found and mended: a row of blanks; a number so large that its unit made it infinite
    [Theory]
    [InlineData(1266972)]
    [InlineData(27894695)]
    public void Logs_that_once_failed(int seed) => OneLog(LogCorpus(), seed);

    private static byte[][] LogCorpus() =>
        [.. Habits().Select(Bytes), File.ReadAllBytes(Path.Combine(Shipped(), "logs", "readings.csv")), File.ReadAllBytes(Path.Combine(Shipped(), "logs", "soft-tyre.csv")).Take(4000).ToArray()];

    private static void OneLog(byte[][] corpus, int seed)
    {
        var random = new Random(seed);
        var options = new LogOptions
        {
            ForceUnit = random.Next(2) == 0 ? "N" : null, TimeUnit = random.Next(4) == 0 ? "ms" : null, ForcePerMillivolt = random.Next(8) == 0 ? 0.1 : null, IsReversed = random.Next(8) == 0,
            MostSamples = random.Next(4) == 0 ? 16 : 2_000_000,
        };
        using var stream = new MemoryStream(new Mutations(seed, corpus).Damaged());
        LogResult log = LogReader.ReadStream(stream, "log.csv", options);
        Clean(log.Problems.Select(p => p.ToString() + p.Help).Concat(log.Notes));
        foreach (LogTrace trace in log.Traces)
        {
            Require(trace.Trace.Time.All(double.IsFinite) && trace.Trace.Force.All(double.IsFinite), "a sample is not finite");
            Require(trace.Trace.Time.Zip(trace.Trace.Time.Skip(1)).All(p => p.First <= p.Second), "time goes back");
            if (!log.HasErrors)
            {
                FoundTrace found = PullFinder.Find(trace.Trace);
                if (found.Problem is TraceProblem wrong)
                {
                    Clean([TraceWords.Of("log.csv", trace, wrong, LogAdvice.OfFit).ToString()]);
                }
            }
        }

        Require(log.Readings.All(r => r.Force is not double f || double.IsFinite(f)), "a reading is not finite");
        Require(log.HasErrors || log.Traces.Count + log.Readings.Count > 0, "nothing read and nothing said");
    }

    [Fact]
    public async Task A_pipe_in_the_folder_is_no_log()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "no named pipes in folders there");
        using var sandbox = new Sandbox(Shipped());
        sandbox.Write("m.toml", Bytes(File.ReadAllText(sandbox["measured-pull.toml"]).Replace("logs/soft-tyre.csv", "pipe", StringComparison.Ordinal)));
        Task<ReadResult> read = Task.Run(() => ScenarioReader.Read(sandbox["m.toml"]));
        Assert.Same(read, await Task.WhenAny(read, Task.Delay(TimeSpan.FromSeconds(5))));
        Assert.Contains((await read).Problems, p => p.Message.Contains("no regular file", StringComparison.Ordinal));
    }

    // found by the fuzzer: the parser threw
    [Theory]
    [InlineData("\\ud800")]
    [InlineData("\\U00110000")]
    public void An_escape_of_no_character_is_complained_about(string escape)
    {
        using var files = new SmallFiles(SmallFiles.With(SmallFiles.Robot, "\"shrew\"", "\"" + escape + "\""));
        Assert.True(ScenarioReader.Read(files.ScenarioPath).HasErrors);
    }

    private void Run<T>(Func<T> start, Action<T, int> one)
        where T : class
    {
        List<string> faults = [];
        double longest = 0.0;
        long most = 0;
        int next = 0;
        Thread[] workers = [.. Enumerable.Range(0, Math.Min(2, Environment.ProcessorCount)).Select(_ => new Thread(() =>
        {
            T own = start();
            for (int i = Interlocked.Increment(ref next); i <= s_count && faults.Count < 20; i = Interlocked.Increment(ref next))
            {
                int seed = s_seed + i;
                long from = Stopwatch.GetTimestamp();
                long before = GC.GetAllocatedBytesForCurrentThread();
                string? fault = null;
                using (new Timer(_ => Environment.FailFast($"seed {seed} hangs"), null, 60_000, Timeout.Infinite))
                {
                    try
                    {
                        one(own, seed);
                    }
                    catch (Exception e)
                    {
                        fault = e.ToString();
                    }
                }

                double seconds = Stopwatch.GetElapsedTime(from).TotalSeconds;
                long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
                lock (faults)
                {
                    longest = Math.Max(longest, seconds);
                    most = Math.Max(most, bytes);
                    fault ??= seconds > 2.0 ? $"took {seconds:0.0} s" : bytes > 200_000_000 ? $"took {bytes} bytes" : null;
                    if (fault is not null)
                    {
                        faults.Add($"seed {seed}: {fault}");
                    }
                }
            }

            (own as IDisposable)?.Dispose();
        }))];
        Array.ForEach(workers, w => w.Start());
        Array.ForEach(workers, w => w.Join());
        output.WriteLine(FormattableString.Invariant($"{s_count} inputs: longest {longest:0.000} s, most {most >> 20} MB, process at most {Process.GetCurrentProcess().PeakWorkingSet64 >> 20} MB"));
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    private static ReadOptions Options(Random random) => random.Next(6) != 0 ? new ReadOptions() : new ReadOptions
    {
        Set = [(Pick(random, "manoeuvre.turn", "tyre.soft.body_damping", "chassis", "", "a.b.c", "tyre..x", "robot", "wheel.front left.x"), Pick(random, "0.3", "", "nan", "1e999", "\"", "5 m", "]\n[", "../x"))],
        TyreMaterial = random.Next(3) == 0 ? Pick(random, "moulded natural rubber 60A", "none", "") : null,
    };

    private static string Pick(Random random, params string[] of) => of[random.Next(of.Length)];

    private static void Check(ReadResult result, bool needsScenario)
    {
        Require(result.HasErrors ? result.Scenario is null && result.Robot is null : result.Robot is not null && (!needsScenario || result.Scenario is not null), "neither right nor complained about");
        Clean(result.Problems.Select(p => p.ToString() + p.Help + p.SourceLine).Concat(result.Notes).Concat(result.Derived.Select(d => d.Text)));
        Require(result.Inputs.All(i => i.Value is null || double.IsFinite(i.Value.Value)), "an input is not finite");
    }

    private static void Clean(IEnumerable<string> texts)
    {
        foreach (string text in texts)
        {
            Require(!text.Any(char.IsControl), "a control character for the screen: " + text);
            Require(!text.Contains(Secret, StringComparison.Ordinal), "a word from outside the folder: " + text);
        }
    }

    // cheaper than an assertion a million times
    private static void Require(bool holds, string what)
    {
        if (!holds)
        {
            Assert.Fail(what);
        }
    }

    private static IEnumerable<string> Habits() =>
    [
        "time [s],force [N]\n0,0\n0.1,1.5\n0.2,2\n", "Zeit [s];Kraft [N]\n0;0\n0,1;1,5\n0,2;2,0\n", "t\tF (N)\n0\t0\n0.1\t1.5\n0.2\t2\n", "time_s force_n\n0.0   0.0\n0.1   1.5\n",
        "Force/N,Time/ms\n0,0\n1.5,100\n2,200\n", "# a logger\n% rate 10\ntime_s,force_n\n0,0\n// here it slips\n0.1,1.5\n\n0.2,2\n", "Logger 3\nSerial 17\ntime [ms];force [mN]\n0;0\n100;1500\n200;2000\n",
        "no,time_s,temperature,force_n,note\n1,0,20,0,a\n2,0.1,20,1.5,b\n3,0.2,20,2,\"c, d\"\n", "time,force [N]\n12:00:00.0,0\n12:00:00.1,1.5\n12:00:00.2,2\n", "time [s],bridge,cell [mV]\n0,1,0\n0.1,1,0.5\n",
        "tyre,peak [N],force [N],load [N]\nsoft,3,2.5,3.3\nsoft,3.1,2.4,3.3\nhard,2,1.5,3.3\n",
    ];

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private static int Number(string name, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out int n) ? n : otherwise;

    private static string Shipped([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "scenarios"));

    /// <summary>A folder with the shipped files, links out of it and a pipe; a secret lies beside it.</summary>
    private sealed class Sandbox : IDisposable
    {
        private readonly string _whole;

        public Sandbox(string shipped)
        {
            // in memory where that is to be had: a million files
            string parent = Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath();
            _whole = Path.Combine(parent, "pushsim-fuzz-" + Guid.NewGuid().ToString("N"));
            Directory.CreateDirectory(Path.Combine(_whole, "outside"));
            File.WriteAllText(Path.Combine(_whole, "outside", "secret.toml"), SmallFiles.Robot.Replace("shrew", Secret, StringComparison.Ordinal) + "\n[chassis." + Secret + "]\n");
            File.WriteAllText(Path.Combine(_whole, "outside", "secret.csv"), Secret + "\n1,2\n");
            foreach (string folder in new[] { "", "robots", "logs", "parts" })
            {
                Directory.CreateDirectory(this[folder]);
                foreach (string file in Directory.Exists(Path.Combine(shipped, folder)) ? Directory.GetFiles(Path.Combine(shipped, folder)) : [])
                {
                    File.Copy(file, Path.Combine(this[folder], Path.GetFileName(file)));
                }
            }

            Write("uses-m.toml", Bytes(SmallFiles.Scenario.Replace("shrew.toml", "robots/m.toml", StringComparison.Ordinal)));
            Write("includes.toml", Bytes("include = [\"parts/tyres.toml\"]\n" + SmallFiles.Robot));
            Write("shrew.toml", Bytes(SmallFiles.Robot));
            if (!OperatingSystem.IsWindows())
            {
                File.CreateSymbolicLink(this["link.toml"], Path.Combine(_whole, "outside", "secret.toml"));
                File.CreateSymbolicLink(this["link.csv"], Path.Combine(_whole, "outside", "secret.csv"));
                Directory.CreateSymbolicLink(this["folder-link"], Path.Combine(_whole, "outside"));
                using Process made = Process.Start("mkfifo", [this["pipe"]]);
                made.WaitForExit();
            }
        }

        public string this[string name] => Path.Combine(_whole, "inside", name);

        public void Write(string name, byte[] bytes) => File.WriteAllBytes(this[name], bytes);

        public void Dispose() => Directory.Delete(_whole, recursive: true);
    }
}
