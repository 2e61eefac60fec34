using System.Diagnostics;
using PushSim.Cli.Shared;
using PushSim.Files;
using Xunit;

namespace PushSim.Cli.Tests.Matches;

/// <summary>Finished matches on the disk: split into parts, joined, gone on with.</summary>
public class PartsTests
{
    // odds of one and two scenarios, a sweep of four points, a ladder of three pairs; 20 matches each
    private static string[] Command(string name) => name switch
    {
        "odds" => ["odds", "short.toml", "--matches", "20"],
        "odds against" => ["odds", "short.toml", "--matches", "20", "--beside", "other.toml"],
        "sweep" => ["sweep", "short.toml", "--vary", "chassis.mass=1.2 kg..1.5 kg", "--points", "4", "--odds", "20"],
        _ => ["ladder", "robots/mole.toml", "robots/badger.toml", "robots/wombat.toml", "--scene", "short.toml", "--matches", "20"],
    };

    // odds in three processes side by side; a process takes seconds to start, so the parts of the other commands are played in this one
    [Theory]
    [InlineData("odds", 7)]
    [InlineData("odds against", 14)]
    [InlineData("sweep", 28)]
    [InlineData("ladder", 21)]
    public void Parts_merge_to_exactly_the_whole(string name, int second)
    {
        using ScratchFolder scratch = Files();
        string[] command = Command(name);
        string[][] parts = [.. Enumerable.Range(1, 3).Select(k => (string[])[.. command, "--part", $"{k}/3", "--out", "parts"])];
        Process[] processes = [.. parts.Where(_ => name == "odds").Select(p => ShortMatches.Start(scratch, p))];
        Assert.All(processes, p =>
        {
            // one waits for another as long as that begins its journal, and says so on a slow machine
            (int code, string error) = ShortMatches.Finish(p);
            Assert.Equal((ExitCode.Done, ""), (code, string.Concat(error.Split('\n').Where(l => !l.Contains("; waiting up to ", StringComparison.Ordinal)))));
        });
        Assert.All(parts.Skip(processes.Length), p =>
        {
            Cli part = Run(scratch, p);
            Assert.Equal((ExitCode.Done, ""), (part.Code, part.Error));
        });
        Cli whole = Run(scratch, [.. command, "--json", "--out", "whole"]);
        string[] merging = [.. command, "--merge", "--json", "--out", "parts"];
        Same(whole, Run(scratch, merging), scratch);

        // a part that lacks matches is named, and the same command goes on where it stopped
        string part = scratch["parts/part-2-of-3.csv"];
        string[] lines = File.ReadAllLines(part);
        File.WriteAllLines(part, lines[..5]);
        Cli lacking = Run(scratch, merging);
        Assert.Equal(ExitCode.RunFailed, lacking.Code);
        Assert.Contains($"2/3 (3 of {second})", lacking.Error);
        Assert.Contains("going on after 3 finished matches", Run(scratch, [.. command, "--part", "2/3", "--out", "parts"]).Error);
        Assert.Equal(lines.Where(IsRow).Order(StringComparer.Ordinal), File.ReadAllLines(part).Where(IsRow).Order(StringComparer.Ordinal));
        Assert.Equal(ExitCode.Done, Run(scratch, [.. merging, "--check"]).Code);
        Same(whole, Run(scratch, merging), scratch);

        // a part that is not there, or of another seed, count or file, is none
        Assert.Contains("1/3 (0 of", Run(scratch, [.. merging, "--seed", "9"]).Error);
        Assert.Contains("another seed", Run(scratch, [.. merging, "--seed", "9"]).Error);
        string[] more = [.. merging.Select(a => a == "20" ? "21" : a)];
        Assert.Contains($"3/3 ({6 * (second / 7)} of {second}) unfinished", Run(scratch, more).Error);
        File.Delete(part);
        Assert.Contains($"2/3 (0 of {second}) missing", Run(scratch, merging).Error);
        Assert.Equal(ExitCode.RunFailed, Run(scratch, [.. merging, "--check"]).Code);
        string robot = File.ReadAllText(scratch["robots/mole.toml"]);
        Assert.Contains("\"26 g\"", robot);
        File.WriteAllText(scratch["robots/mole.toml"], robot.Replace("\"26 g\"", "\"27 g\"", StringComparison.Ordinal));
        Assert.Contains("1/3 (0 of", Run(scratch, merging).Error);
    }

    // whatever the processor can do, the matches are the same to the bit
    [Fact]
    public void A_processor_without_wide_instructions_plays_the_same_matches_and_says_so()
    {
        using ScratchFolder scratch = Files();
        string[] Asked(string off) => [.. Command("odds").Select(a => a == "20" ? "9" : a), "--details", "--no-plots", "--out", off];
        string[] texts = [.. new[] { "DOTNET_EnableAVX2", "DOTNET_EnableHWIntrinsic" }.Select(off =>
        {
            using Process process = ShortMatches.Start(scratch, off, Asked(off));
            string text = process.StandardOutput.ReadToEnd();
            Assert.True(process.WaitForExit(60_000) && process.ExitCode == ExitCode.Done, process.StandardError.ReadToEnd());
            return text;
        })];
        Assert.All(texts, t => Assert.Contains("lacks AVX2", t));

        // this process has all instructions that there are
        Cli here = Run(scratch, Asked("all"));
        Assert.Equal(System.Runtime.Intrinsics.X86.Avx2.IsSupported, !here.Output.Contains("AVX2", StringComparison.Ordinal));
        string[] matches = [.. new[] { "all", "DOTNET_EnableAVX2", "DOTNET_EnableHWIntrinsic" }.Select(off => File.ReadAllText(scratch[off + "/matches.csv"]))];
        Assert.Single(matches.Distinct());
    }

    [Theory]
    [InlineData("odds")]
    [InlineData("sweep")]
    [InlineData("ladder")]
    public void An_interrupt_keeps_finished_matches_and_the_same_command_goes_on(string name)
    {
        using ScratchFolder scratch = Files();
        using var stop = new CancellationTokenSource();
        using var output = new StringWriter();
        using var error = new StringWriter();
        string[] args = [.. Command(name).Select(a => a == "20" ? name == "odds" ? "200" : "80" : a), "--no-plots", "--threads", "1"];
        string[] interrupted = Absolute(scratch, [.. args, "--out", "out"]);

        // a thread of its own: the pool may be busy with other tests until all matches are done
        bool isOver = false;
        var watch = new Thread(() =>
        {
            while (!Volatile.Read(ref isOver) && (!File.Exists(scratch["out/part-1-of-1.csv"]) || File.ReadLines(scratch["out/part-1-of-1.csv"]).Count() < 6))
            {
                Thread.Sleep(1);
            }

            stop.Cancel();
        });
        watch.Start();
        int code = CommandLineApp.Invoke(interrupted, output, error, stop.Token);
        Volatile.Write(ref isOver, true);
        watch.Join();
        Assert.Equal(ExitCode.Interrupted, code);
        Assert.Contains("they are kept in", error.ToString());
        Assert.Contains("going on after", Cli.Run(interrupted).Error);
        Assert.Equal(ExitCode.Done, Run(scratch, [.. args, "--out", "whole"]).Code);
        SameFiles(scratch, "whole", "out");
        Assert.StartsWith($"# end; matches {(name == "odds" ? 200 : 80)}; rows ", File.ReadLines(scratch["out/part-1-of-1.csv"]).Last(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("odds", "matches.csv")]
    [InlineData("ladder", "pairs.csv")]
    [InlineData("sweep", "sweep.csv")]
    public void A_partial_result_does_not_replace_a_whole_one(string name, string file)
    {
        using ScratchFolder scratch = Files();
        string[] args = [.. Command(name), "--no-plots", "--out", "out"];
        Assert.Equal(ExitCode.Done, Run(scratch, args).Code);
        string whole = File.ReadAllText(scratch["out/" + file]);
        using var stop = new CancellationTokenSource();
        using var output = new StringWriter();
        using var error = new StringWriter();
        string[] more = Absolute(scratch, [.. args.Select(a => a == "20" ? "100000" : a)]);
        string kept = scratch["out/part-1-of-1.csv"];
        long length = new FileInfo(kept).Length;
        var watch = new Thread(() =>
        {
            SpinWait.SpinUntil(() => new FileInfo(kept).Length > length + 1000, 60_000);
            stop.Cancel();
        });
        watch.Start();
        Assert.Equal(ExitCode.Interrupted, CommandLineApp.Invoke(more, output, error, stop.Token));
        watch.Join();
        Assert.Contains("the whole result of an earlier command stays", error.ToString());
        Assert.Equal(whole, File.ReadAllText(scratch["out/" + file]));
    }

    // the lock goes with its holder, so that a killed or requeued part is never locked out
    [Fact]
    public void A_part_is_played_by_one_command_at_a_time()
    {
        using ScratchFolder scratch = Files();
        string[] args = [.. Command("odds"), "--part", "2/3", "--out", "parts"];
        Assert.Equal(ExitCode.Done, Run(scratch, args).Code);
        string kept = File.ReadAllText(scratch["parts/part-2-of-3.csv"]);
        string[] more = [.. args.Select(a => a == "20" ? "4000000" : a)];
        using Process first = ShortMatches.Start(scratch, more);
        Assert.True(SpinWait.SpinUntil(() => new FileInfo(scratch["parts/part-2-of-3.csv"]).Length > kept.Length, 60_000));
        LockAsk.Patience(0.2);
        Cli second = Run(scratch, args);
        LockAsk.Patience(null);
        Cli check = Run(scratch, [.. Command("odds").Select(a => a == "20" ? "4000000" : a), "--merge", "--check", "--out", "parts"]);
        first.Kill();
        first.WaitForExit();
        Assert.Equal(ExitCode.CannotReadOrWrite, second.Code);
        Assert.Contains("part-2-of-3 in ", second.Error);
        Assert.Contains(") running", check.Output);
        Assert.Equal(ExitCode.Done, Run(scratch, args).Code);
    }

    [Theory]
    [InlineData("odds", "x.toml", "--part", "4/3")]
    [InlineData("odds", "x.toml", "--matches", "5", "--part", "9/8")]
    [InlineData("odds", "x.toml", "--matches", "many", "--part", "1/2")]
    [InlineData("odds", "x.toml", "--part", "1/3", "--merge")]
    [InlineData("odds", "x.toml", "--part", "1/3", "--json")]
    [InlineData("odds", "x.toml", "--part", "1/3", "--report")]
    [InlineData("odds", "x.toml", "--part", "1/3", "--within", "2%")]
    [InlineData("odds", "x.toml", "--merge", "--json")]
    [InlineData("odds", "x.toml", "--check")]
    [InlineData("ladder", "x.toml", "y.toml", "--part", "x")]
    [InlineData("ladder", "x.toml", "y.toml", "--merge", "--part", "1/2")]
    [InlineData("sweep", "x.toml", "--vary", "chassis.mass=1..2", "--part", "1/2")]
    [InlineData("sweep", "x.toml", "--vary", "chassis.mass=1..2", "--merge")]
    public void Wrong_calls(params string[] args)
    {
        Cli cli = Cli.Run(args);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("--", cli.Error);
    }

    private static ScratchFolder Files()
    {
        ScratchFolder scratch = ShortMatches.Files();
        File.WriteAllText(scratch["other.toml"], File.ReadAllText(scratch["short.toml"]).Replace("\"robots/mole.toml\"\n[manoeuvre]", "\"robots/badger.toml\"\n[manoeuvre]", StringComparison.Ordinal));
        return scratch;
    }

    private static Cli Run(ScratchFolder scratch, params string[] args) => Cli.Run(Absolute(scratch, args));

    private static string[] Absolute(ScratchFolder scratch, string[] args) =>
        [.. args.Select((a, i) => a.EndsWith(".toml", StringComparison.Ordinal) || (i > 0 && args[i - 1] == "--out") ? scratch[a] : a)];

    private static void Same(Cli whole, Cli merged, ScratchFolder scratch)
    {
        Assert.True(merged.Code == ExitCode.Done, merged.Error);
        Assert.Equal(Cli.Steady(whole.Output), Cli.Steady(merged.Output));
        SameFiles(scratch, "whole", "parts");
    }

    private static void SameFiles(ScratchFolder scratch, string whole, string other)
    {
        string[] names = [.. Directory.EnumerateFiles(scratch[whole], "*.csv").Select(f => Path.GetFileName(f)!).Where(n => !n.StartsWith("part-", StringComparison.Ordinal))];
        Assert.NotEmpty(names);
        Assert.All(names, n => Assert.Equal(File.ReadAllText(scratch[$"{whole}/{n}"]), File.ReadAllText(scratch[$"{other}/{n}"])));
    }

    private static bool IsRow(string line) => !line.StartsWith('#');
}
