using System.Diagnostics;
using System.Globalization;
using PushSim.Cli.Shared;
using PushSim.Scenarios.Shelf;
using Xunit;

namespace PushSim.Cli.Tests.Run;

/// <summary>
/// What an answer costs in processor seconds, over all threads: up to the first line on the screen, and to the end. `PUSHSIM_BUDGETS=300` tries that many random legal robots (seeds from 1, fixed beforehand) for each
/// command, or for those that `PUSHSIM_BUDGET_KINDS` names with commas between; `PUSHSIM_BUDGETS_FIRST` sets the first seed; `PUSHSIM_BUDGET_ANSWERS=1` interrupts each
/// as soon as it has answered. All run in this process: the program's start is not in it. `PUSHSIM_BUDGET_APP` names a
/// published program, which then answers for every shipped file, its start in it. The tables stand in src/docs/measurements.md.
/// </summary>
public class AnswerBudgetTests(ITestOutputHelper output)
{
    // Common practice, no source: an answer within a second feels direct, ten hold a person's attention [s].
    private const double OfShipped = 1.0, OfAny = 10.0;

    // what a fit by simulation tells first, beside its progress
    private const string Beside = "from the pulls alone";

    private static readonly int s_robots = Given("PUSHSIM_BUDGETS", 1), s_first = Given("PUSHSIM_BUDGETS_FIRST", 1);
    private static readonly bool s_isAnswerOnly = Given("PUSHSIM_BUDGET_ANSWERS", 0) == 1;
    private static readonly string? s_app = Environment.GetEnvironmentVariable("PUSHSIM_BUDGET_APP");

    private static readonly string[] s_kinds = Environment.GetEnvironmentVariable("PUSHSIM_BUDGET_KINDS")?.Split(',')
        ?? (s_robots == 1 ? ["run shove", "limits", "fit"] : ["run shove", "run pull", "run spot", "run launch", "limits", "fit", "fit --simulate", "sweep", "run --map"]);

    [Fact]
    public void Random_legal_robots()
    {
        List<(string Kind, string What, double Answer, double All)> costs = [];
        List<string> wrong = [];
        using var scratch = new ScratchFolder();
        for (int seed = s_first; seed < s_first + s_robots; seed++)
        {
            string folder = scratch[seed.ToString(CultureInfo.InvariantCulture)];
            foreach (string kind in Make(folder, seed) ? s_kinds : [])
            {
                using var stop = new CancellationTokenSource();
                using var first = new FirstLine(_ => Stop());
                using var error = new FirstLine(text => Stop(text.StartsWith(Beside, StringComparison.Ordinal)));
                string[] words = Words(kind, folder, new Random(seed));
                double start = FirstLine.Now;
                int code = CommandLineApp.Invoke(words, first, error, stop.Token);
                double all = FirstLine.Now - start;

                // a robot that cannot turn, or a tyre that never slides, is an answer too
                string said = error.ToString();
                if ((code > ExitCode.CannotReadOrWrite && !stop.IsCancellationRequested) || said.Contains("more work than allowed", StringComparison.Ordinal) || said.Contains("internal fault", StringComparison.Ordinal))
                {
                    wrong.Add($"seed {seed}, {kind}: code {code}, {said.Trim()}");
                }

                bool isBeside = said.StartsWith(Beside, StringComparison.Ordinal);
                costs.Add((kind, $"seed {seed}", Math.Min(all, ((isBeside ? error.At : first.At) ?? FirstLine.Now) - start), all));

                void Stop(bool isAnswer = true)
                {
                    if (isAnswer && s_isAnswerOnly)
                    {
                        stop.Cancel();
                    }
                }
            }
        }

        Table(costs);
        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Take(20)));

        // other tests beside this one take processor time too
        Assert.All(costs.Where(_ => s_robots > 1), c => Assert.True(c.Answer <= OfAny, FormattableString.Invariant($"{c.Kind}, {c.What}: {c.Answer:0.0} s")));
    }

    [Fact]
    public void Shipped_files()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && s_app is not null, "PUSHSIM_BUDGET_APP names no program");
        using var scratch = new ScratchFolder();
        List<(string Kind, string What, double Answer, double All)> costs = [];
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml").Order(StringComparer.Ordinal))
        {
            foreach (string command in new[] { "run", "limits" })
            {
                (int code, double answer, double all, string error) = Cost([command, file, "--out", scratch[$"{command}-{Path.GetFileName(file)}"]]);
                Assert.True(code == ExitCode.Done, error);
                costs.Add((command, Path.GetFileNameWithoutExtension(file), answer, all));
            }
        }

        string pull = Repository.Scenario("pull-test"), logs = Path.Combine(Repository.Root, "scenarios", "logs"), robots = Path.Combine(Repository.Root, "scenarios", "robots");
        foreach ((string kind, string[] words) in new[]
        {
            ("fit", (string[])["fit", Path.Combine(logs, "soft-tyre.csv"), "--robot", pull]), ("fit --robot", ["fit", Path.Combine(logs, "readings.csv"), "--load", "13.3N", "--robot", Path.Combine(robots, "mole.toml")]),
            ("fit --simulate", ["fit", Path.Combine(logs, "mole-pulls.csv"), "--robot", pull, "--simulate"]), ("sweep", ["sweep", pull, "--vary", "drive.*.gear_ratio=6..40"]),
            ("run --map", ["run", Repository.Scenario("spot-bouncy-tyre"), "--map", "tyre.sleeve.body_damping=0.1..3 N s/m", "--map", "tyre.sleeve.slip_speed=0.1..2 m/s"]),
        })
        {
            (int code, double answer, double all, string error) = Cost([.. words, "--out", scratch[kind]]);
            Assert.True(code == ExitCode.Done, error);
            costs.Add((kind, "shipped", answer, all));
        }

        Table(costs);
        foreach ((string kind, string what, double answer, double all) in costs.OrderByDescending(c => c.Answer).Take(12))
        {
            output.WriteLine(FormattableString.Invariant($"{kind} {what}: {answer:0.00} s, {all:0.00} s in all"));
        }

        Assert.All(costs, c => Assert.True(c.Answer <= OfShipped, FormattableString.Invariant($"{c.Kind} {c.What}: {c.Answer:0.00} s")));
    }

    private static int Given(string name, int usual) => int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out int n) ? n : usual;

    private void Table(IEnumerable<(string Kind, string What, double Answer, double All)> costs)
    {
        output.WriteLine("| command | runs | CPU to the answer, median | worst | to the end, worst | of |");
        output.WriteLine("|---|---|---|---|---|---|");
        foreach (IGrouping<string, (string Kind, string What, double Answer, double All)> kind in costs.GroupBy(c => c.Kind))
        {
            double[] sorted = [.. kind.Select(c => c.Answer).Order()];
            (string _, string what, double answer, double all) = kind.MaxBy(c => c.Answer);
            output.WriteLine(FormattableString.Invariant($"| {kind.Key} | {sorted.Length} | {sorted[sorted.Length / 2]:0.00} s | {answer:0.00} s | {kind.Max(c => c.All):0.00} s | {what} |"));
        }
    }

    // a robot from 100 g to 20 kg of parts of the shelf, in a scenario of each kind; false where these parts make none
    private static bool Make(string folder, int seed)
    {
        var random = new Random(seed);
        string mass = FormattableString.Invariant($"{0.1 * Math.Pow(200.0, random.NextDouble()):0.###} kg");
        string wheels = (2 * random.Next(1, 5)).ToString(CultureInfo.InvariantCulture);
        string motor = PartShelf.Motors.Parts[random.Next(PartShelf.Motors.Parts.Count)].Name, tyre = PartShelf.Tyres.Parts[random.Next(PartShelf.Tyres.Parts.Count)].Name;
        return new[] { "shove", "pull-test", "spot", "launch" }.All(kind => Cli.Run("new", "--kind", kind, "--mass", mass, "--wheels", wheels, "--motor", motor, "--tyre", tyre, "--out", folder).Code == ExitCode.Done);
    }

    private static string[] Words(string kind, string folder, Random random)
    {
        string At(string file) => Path.Combine(folder, file);
        string[] plain = ["--no-plots", "--out", At("out " + kind), "--set", FormattableString.Invariant($"floor.friction={0.3 + random.NextDouble():0.00}")];
        string throttle = FormattableString.Invariant($"manoeuvre.throttle={0.3 + (0.7 * random.NextDouble()):0.00}");
        switch (kind)
        {
            case "run shove":
                return ["run", At("shove.toml"), .. plain];
            case "run pull":
                return ["run", At("pull-test.toml"), .. plain, "--set", throttle];
            case "run spot":
                return ["run", At("spot.toml"), .. plain];
            case "run launch":
                return ["run", At("launch.toml"), .. plain, "--set", throttle];
            case "limits":
                return ["limits", At("robot.toml"), "--no-plots", "--out", At("out limits")];
            case "sweep":
                return ["sweep", At("pull-test.toml"), "--vary", "drive.*.gear_ratio=10..40", .. plain];
            case "run --map":
                return ["run", At("spot.toml"), "--map", "floor.friction=0.5..1", "--map", "manoeuvre.turn=0.3..1", .. plain[..3]];
            default:
                File.WriteAllText(At("pulls.csv"), Pull(random));
                return kind == "fit" ? ["fit", At("pulls.csv"), "--robot", At("robot.toml"), .. plain[..3]] : ["fit", At("pulls.csv"), "--robot", At("pull-test.toml"), "--simulate", .. plain[..3]];
        }
    }

    // slack, ramp, peak, plateau, slack, of an invented tyre at 80 readings a second
    private static string Pull(Random random)
    {
        double force = 2.0 + (10.0 * random.NextDouble());
        return "time [s],force [N]\n" + string.Concat(Enumerable.Range(0, 480).Select(i =>
        {
            double t = i / 80.0;
            double f = t is < 1.0 or > 5.0 ? 0.0 : t < 2.0 ? 1.15 * force * (t - 1.0) : force * (1.0 + (0.15 * Math.Exp(-(t - 2.0) / 0.1)));
            return string.Create(CultureInfo.InvariantCulture, $"{t:0.0000},{f + (0.02 * force * (random.NextDouble() - 0.5)):0.0000}\n");
        }));
    }

    private static (int Code, double Answer, double All, string Error) Cost(string[] words)
    {
        string beside = typeof(CommandLineApp).Assembly.Location;
        var start = new ProcessStartInfo(s_app ?? "dotnet", s_app is null ? [beside, .. words] : words) { RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        double answer = double.NaN, all = 0.0;
        Task<string> error = Task.Run(() =>
        {
            // a fit by simulation tells what the pulls say by themselves beside its progress
            string first = process.StandardError.ReadLine() ?? "";
            answer = first.StartsWith(Beside, StringComparison.Ordinal) ? Seconds(process.Id) ?? all : answer;
            return first + process.StandardError.ReadToEnd();
        });
        Task<string> rest = Task.Run(() =>
        {
            string first = process.StandardOutput.ReadLine() ?? "";
            answer = double.IsNaN(answer) ? Seconds(process.Id) ?? all : answer;
            return first + process.StandardOutput.ReadToEnd();
        });
        while (!process.WaitForExit(20))
        {
            all = Seconds(process.Id) ?? all;
        }

        rest.Wait();
        return (process.ExitCode, double.IsNaN(answer) ? all : answer, Math.Max(all, double.IsNaN(answer) ? 0.0 : answer), error.Result);
    }

    // user and system time out of /proc/PID/stat, fields 14 and 15, in hundredths of a second (proc(5)) [s]
    private static double? Seconds(int process)
    {
        try
        {
            string text = File.ReadAllText($"/proc/{process}/stat");
            string[] fields = text[(text.LastIndexOf(')') + 2)..].Split(' ');
            return (double.Parse(fields[11], CultureInfo.InvariantCulture) + double.Parse(fields[12], CultureInfo.InvariantCulture)) / 100.0;
        }
        catch (Exception e) when (e is IOException or FormatException)
        {
            return null;
        }
    }

    // processor time of this process when the first line came
    private sealed class FirstLine(Action<string> came) : StringWriter(CultureInfo.InvariantCulture)
    {
        private bool _isTold;

        public static double Now => Environment.CpuUsage.TotalTime.TotalSeconds;

        public double? At { get; private set; }

        public override void Write(char value)
        {
            base.Write(value);
            Came(1);
        }

        public override void Write(char[] buffer, int index, int count)
        {
            base.Write(buffer, index, count);
            Came(count);
        }

        public override void Write(ReadOnlySpan<char> buffer)
        {
            base.Write(buffer);
            Came(buffer.Length);
        }

        public override void Write(string? value)
        {
            base.Write(value);
            Came(value?.Length ?? 0);
        }

        private void Came(int signs)
        {
            At = At is null && signs > 0 ? Now : At;
            if (!_isTold && ToString().Contains('\n', StringComparison.Ordinal))
            {
                _isTold = true;
                came(ToString());
            }
        }
    }
}
