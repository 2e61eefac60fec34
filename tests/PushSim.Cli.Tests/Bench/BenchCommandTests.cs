using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Bench;

/// <summary>`bench` over pseudo-terminal pairs and pipes, with cables pulled out and processes killed.</summary>
public class BenchCommandTests
{
    private const double Gram = 9.80665e-3;
    private const double Rate = CellLines.Rate;

    [Fact]
    public void A_port_is_heard_unplugged_and_heard_again()
    {
        using var scratch = new ScratchFolder();
        using Pty? first = Pty.Open();
        Assert.SkipWhen(first is null, "no pseudo-terminals here");
        string port = scratch["port"];
        File.CreateSymbolicLink(port, first.Port);
        File.WriteAllText(scratch["garage.toml"], "name = \"test\"\n");
        using var bench = new Running("bench", "--port", port, "--out", scratch["out"], "--unit", "gf", "--tyre", "soft", "--state", "wiped", "--load", "1360 gf", "--notebook", scratch["readings.csv"], "--json");
        bench.WaitFor("quiet second", () => first.Line(CellLines.Stamp(0.0, 0.0)));
        double time = CellLines.Play(first, 0.1);
        bench.WaitFor("pull 1", () => first.Line(CellLines.Stamp(time += 0.0125, 0.0)));
        File.Delete(port);
        first.Dispose();
        bench.WaitFor("is gone");
        using Pty second = Pty.Open()!;
        File.CreateSymbolicLink(port, second.Port);
        bench.WaitFor("is back");
        time = CellLines.Play(second, time + 3.0);
        bench.WaitFor("pull 2", () => second.Line(CellLines.Stamp(time += 0.0125, 0.0)));
        JsonElement json = bench.End();
        Assert.Equal(2, json.GetProperty("pulls").GetArrayLength());
        Assert.All(json.GetProperty("pulls").EnumerateArray(), p => Assert.Equal("", p.GetProperty("flaw").GetString()));
        Assert.InRange(json.GetProperty("sliding_force_n").GetDouble() / Gram, 519.0, 521.0);
        Assert.Equal(1, json.GetProperty("gaps").GetArrayLength());

        // both pulls stand in the notebook, the state with what went over the floor before
        string[] notebook = File.ReadAllLines(scratch["readings.csv"]);
        Assert.Equal(3, notebook.Length);
        Assert.Contains("wiped after 1 pull", notebook[2], StringComparison.Ordinal);
        Assert.Contains("out/bench-", notebook[2], StringComparison.Ordinal);

        // what was kept is a log that fit reads: the same two pulls
        string log = Assert.Single(Directory.GetFiles(scratch["out"], "*.log"));
        Cli fit = Cli.Run("fit", log, "--unit", "gf", "--load", "1360 gf", "--json");
        Assert.True(fit.Code == 0, fit.Error);
        JsonElement tyre = JsonDocument.Parse(fit.Output).RootElement.GetProperty("tyres")[0];
        Assert.Equal(2, tyre.GetProperty("pulls").GetInt32());
        Assert.InRange(tyre.GetProperty("kinetic_friction").GetDouble(), 519.0 / 1360.0, 521.0 / 1360.0);
    }

    [Fact]
    public void A_port_that_is_not_there_is_an_answer()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("bench", "--port", scratch["nothing"], "--out", scratch["out"]);
        Assert.Equal(ExitCode.CannotReadOrWrite, cli.Code);
        Assert.Contains("it is not there", cli.Error.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("help:", cli.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("needs --port", "bench")]
    [InlineData("not both", "bench", "-", "--port", "x")]
    [InlineData("a whole log with pushsim fit", "bench", "log.csv")]
    [InlineData("--rate takes readings", "bench", "-", "--rate", "0")]
    [InlineData("--known", "bench", "-", "--known", "5 apples")]
    public void What_is_wrong_on_the_command_line(string says, params string[] args)
    {
        Cli cli = Cli.Run(args);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains(says, cli.Error, StringComparison.Ordinal);
    }

    // What the process had read before it was killed is on the disk: all that stands there are whole lines in their order, and none is missing that was there a moment before
    [Fact]
    public void Nothing_is_lost_when_the_process_is_killed()
    {
        using var scratch = new ScratchFolder();
        var random = new Random(4);
        for (int round = 0; round < 3; round++)
        {
            string folder = scratch[$"out{round}"];
            using Process process = Process.Start(new ProcessStartInfo("dotnet", [typeof(CommandLineApp).Assembly.Location, "bench", "-", "--unit", "gf", "--out", folder])
            {
                RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = scratch.Path,
            })!;
            string[] sent = [.. Enumerable.Range(0, 400).Select(i => FormattableString.Invariant($"{i}: {random.NextDouble():0.000}"))];
            int written = 0;
            for (; written < 200; written++)
            {
                process.StandardInput.Write(sent[written] + "\n");
                process.StandardInput.Flush();
            }

            long deadline = Stopwatch.GetTimestamp();
            while (Lines(folder).Length < 200 && Stopwatch.GetElapsedTime(deadline).TotalSeconds < 20.0)
            {
                Thread.Sleep(10);
            }

            int seen = Lines(folder).Length;
            Assert.Equal(200, seen);
            int more = random.Next(10, 200);
            for (; written < 200 + more; written++)
            {
                process.StandardInput.Write(sent[written] + "\n");
                process.StandardInput.Flush();
            }

            process.Kill();
            process.WaitForExit();
            string[] kept = Lines(folder);
            Assert.InRange(kept.Length, seen, written);
            Assert.Equal(sent.Take(kept.Length), kept.Select(l => l[(l.IndexOf(" -> ", StringComparison.Ordinal) + 4)..]));
        }
    }

    [Fact]
    public async Task Lines_of_a_pipe_are_heard()
    {
        using var scratch = new ScratchFolder();
        File.WriteAllLines(scratch["lines.txt"], CellLines.Pull(Rate).Select(f => FormattableString.Invariant($"Weight: {f:0.00} g")));
        Shell shell = await Shell.RunAsync($"dotnet \"{typeof(CommandLineApp).Assembly.Location}\" bench - --rate 80 --out \"{scratch["out"]}\" < \"{scratch["lines.txt"]}\"");
        Assert.SkipWhen(shell.Code == -1, "no bash here");
        Assert.True(shell.Code == 0, shell.Error);
        Assert.Contains("a good one", shell.Output, StringComparison.Ordinal);
        Assert.Contains("520 gf", shell.Output, StringComparison.Ordinal);
        Assert.Contains("ready: pull", shell.Error, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', shell.Error);
        Assert.All((shell.Output + shell.Error).Split('\n').Where(l => !l.Contains(scratch.Path, StringComparison.Ordinal)), l => Assert.True(l.Length <= 79, l));
    }

    private static string[] Lines(string folder)
    {
        string? log = Directory.Exists(folder) ? Directory.GetFiles(folder, "*.log").FirstOrDefault() : null;
        if (log is null)
        {
            return [];
        }

        using var reader = new StreamReader(new FileStream(log, FileMode.Open, FileAccess.Read, FileShare.ReadWrite));
        string text = reader.ReadToEnd();
        Assert.True(text.Length == 0 || text[^1] == '\n', "the last line is whole");
        return text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    private sealed class Running : IDisposable
    {
        private readonly CancellationTokenSource _stop = new();
        private readonly StringWriter _output = new(CultureInfo.InvariantCulture);
        private readonly StringWriter _error = new(CultureInfo.InvariantCulture);
        private readonly TextWriter _shared;
        private readonly Task<int> _task;

        public Running(params string[] args)
        {
            _shared = TextWriter.Synchronized(_error);
            _task = Task.Run(() => CommandLineApp.Invoke(args, _output, _shared, _stop.Token));
        }

        public void WaitFor(string text, Action? meanwhile = null)
        {
            long start = Stopwatch.GetTimestamp();
            while (!Said().Contains(text, StringComparison.Ordinal))
            {
                Assert.True(Stopwatch.GetElapsedTime(start).TotalSeconds < 20.0 && !_task.IsCompleted, $"no \"{text}\" in: {Said()}{_output}");
                meanwhile?.Invoke();
                Thread.Sleep(5);
            }
        }

        public JsonElement End()
        {
            _stop.Cancel();
            Assert.True(_task.Wait(10_000), Said());
            Assert.True(_task.Result == ExitCode.Done, Said());
            return JsonDocument.Parse(_output.ToString()).RootElement;
        }

        public void Dispose()
        {
            _stop.Cancel();
            _task.Wait(10_000);
            _stop.Dispose();
        }

        private string Said()
        {
            lock (_shared)
            {
                return _error.ToString();
            }
        }
    }
}
