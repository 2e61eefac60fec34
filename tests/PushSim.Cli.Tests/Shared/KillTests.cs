using System.Diagnostics;
using PushSim.Cli.Shared;
using PushSim.Files;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>Processes killed at any moment, folders that refuse, and two processes in one folder. PUSHSIM_KILLS=100 kills that often.</summary>
public class KillTests(ITestOutputHelper output)
{
    private static readonly string s_program = typeof(CommandLineApp).Assembly.Location;
    private static readonly int s_kills = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_KILLS"), out int n) ? n : 2;

    [Fact]
    public void A_killed_run_leaves_no_half_file_and_the_next_one_clears_up() => KilledAgainAndAgain("run", (Repository.Scenario("launch-soft"), []));

    [Fact]
    public void A_killed_ladder_goes_on_to_the_same_matches() => KilledAgainAndAgain("ladder", ("robots/mole.toml", ["robots/vole.toml", "--scene", "short.toml", "--matches", "20"]));

    [Fact]
    public void A_killed_sweep_goes_on_to_the_same_matches() => KilledAgainAndAgain("sweep", ("short.toml", ["--vary", "chassis.mass=1.2 kg..1.5 kg", "--points", "3", "--odds", "25", "--threads", "1"]));

    // with the clock set back after every second one: what it left seems to come from the future
    [Fact]
    public void A_killed_odds_goes_on_to_the_same_matches_whatever_the_clock_says() => KilledAgainAndAgain("odds", ("short.toml", ["--matches", "80", "--threads", "1"]), (scratch, kill) =>
    {
        if (kill % 2 == 0)
        {
            return;
        }

        foreach (string file in Directory.EnumerateFiles(scratch.Path, "*", SearchOption.AllDirectories))
        {
            File.SetLastWriteTimeUtc(file, new DateTime(2099, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        }
    });

    [Fact]
    public async Task A_full_disk_is_exit_4_in_one_line()
    {
        Assert.SkipUnless((await Shell.RunAsync("unshare -rm mount -t tmpfs none /mnt")).Code == 0, "needs unshare and leave to mount");
        using var scratch = new ScratchFolder();
        foreach (int kilobytes in new[] { 4, 32, 128 })
        {
            Shell run = await Shell.RunAsync(
                "exec unshare -rm bash -c 'mount -t tmpfs -o size=$1 none \"$2\" && dotnet \"$3\" run \"$4\" --quiet --out \"$2/out\"; code=$?; ls -A \"$2/out\" 2>/dev/null; exit $code' bash \"$@\"",
                $"{kilobytes}k", scratch.Path, s_program, Repository.Scenario("launch-soft"));
            Assert.True(run.Code == ExitCode.CannotReadOrWrite, $"{kilobytes} kB: {run.Code} {run.Output} {run.Error}");
            Assert.StartsWith("pushsim: error: ", run.Error);
            Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
            Assert.DoesNotContain(".part", run.Output);
        }
    }

    [Fact]
    public async Task A_folder_without_leave_to_write_is_exit_4_and_untouched()
    {
        if (!OperatingSystem.IsLinux())
        {
            Assert.Skip("needs the modes of a Unix folder");
            return;
        }

        using var scratch = new ScratchFolder();
        string asNobody = Environment.IsPrivilegedProcess ? "setpriv --reuid 65534 --regid 65534 --clear-groups " : "";
        Assert.SkipUnless((await Shell.RunAsync(asNobody + "test -r \"$1\"", s_program)).Code == 0, "another user cannot read the program");
        File.WriteAllText(scratch["mine.txt"], "mine");
        File.SetUnixFileMode(scratch.Path, UnixFileMode.UserRead | UnixFileMode.UserExecute | UnixFileMode.OtherRead | UnixFileMode.OtherExecute);
        try
        {
            foreach (string where in new[] { "", "/new" })
            {
                Shell run = await Shell.RunAsync(asNobody + "dotnet \"$1\" run \"$2\" --quiet --force --out \"$3\"", s_program, Repository.Scenario("launch-soft"), scratch.Path + where);
                Assert.True(run.Code == ExitCode.CannotReadOrWrite, $"{run.Code} {run.Error}");
                Assert.StartsWith("pushsim: error: ", run.Error);
                Assert.DoesNotContain("   at ", run.Error);
            }
        }
        finally
        {
            File.SetUnixFileMode(scratch.Path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        Assert.Equal(["mine.txt"], Directory.GetFileSystemEntries(scratch.Path).Select(Path.GetFileName));
    }

    // The second waits for the first
    [Fact]
    public void Two_processes_in_one_folder_leave_whole_files()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        string[] args = ["run", Repository.Scenario("launch-soft"), "--quiet", "--out"];
        Assert.Equal(ExitCode.Done, Cli.Run([.. args, scratch["whole"]]).Code);
        for (int round = 0; round < (s_kills + 1) / 2; round++)
        {
            Process[] both = [ShortMatches.Start(scratch, [.. args, scratch["out"]]), ShortMatches.Start(scratch, [.. args, scratch["out"]])];
            foreach (Process process in both)
            {
                (int code, string error) = ShortMatches.Finish(process);
                Assert.True(code == ExitCode.Done, $"{code} {error}");
                Assert.DoesNotContain("   at ", error);
                Assert.DoesNotContain("internal fault", error);
            }

            Whole(scratch);
        }

        Assert.Equal(ExitCode.Done, Cli.Run([.. args, scratch["out"]]).Code);
        Same(scratch);
    }

    private void KilledAgainAndAgain(string command, (string File, string[] More) what, Action<ScratchFolder, int>? afterEach = null)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        var random = new Random(15);
        string[] args = [command, what.File, .. what.More, "--quiet", "--out"];
        long start = Stopwatch.GetTimestamp();
        Assert.Equal(ExitCode.Done, ShortMatches.Finish(ShortMatches.Start(scratch, [.. args, scratch["whole"]])).Code);
        double usual = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        int hits = 0;
        for (int i = 0; i < s_kills; i++)
        {
            using Process process = ShortMatches.Start(scratch, [.. args, scratch["out"]]);
            if (!process.WaitForExit((int)(usual * (0.2 + (0.8 * random.NextDouble())))))
            {
                hits++;
                process.Kill();
            }

            process.WaitForExit();
            Whole(scratch);
            afterEach?.Invoke(scratch, i);
        }

        // with all instructions that there are, which changes no bit
        Cli last = Cli.Run([.. args.Select(a => a.EndsWith(".toml", StringComparison.Ordinal) ? Path.Combine(scratch.Path, a) : a), scratch["out"]]);
        Assert.True(last.Code == ExitCode.Done, last.Error);
        Same(scratch);
        output.WriteLine($"{hits} of {s_kills} killed");
    }

    // Every file but parts and the mark is as an undisturbed run writes it
    private static void Whole(ScratchFolder scratch)
    {
        foreach (string file in Directory.Exists(scratch["out"]) ? Names(scratch["out"]).Where(n => !n.EndsWith(".part", StringComparison.Ordinal) && !n.StartsWith("part-", StringComparison.Ordinal)) : [])
        {
            string whole = Path.Combine(scratch["whole"], file);
            Assert.True(File.Exists(whole), $"{file} is no file of this command");
            Assert.True(File.ReadAllBytes(whole).SequenceEqual(File.ReadAllBytes(Path.Combine(scratch["out"], file))), $"{file} is half there");
        }
    }

    private static void Same(ScratchFolder scratch)
    {
        Assert.DoesNotContain(Directory.GetFileSystemEntries(scratch.Path), e => Path.GetFileName(e).Contains(".pushsim-", StringComparison.Ordinal));
        Assert.Equal(Names(scratch["whole"]), Names(scratch["out"]));
        Whole(scratch);
    }

    private static string[] Names(string folder) =>
        [.. Directory.GetFiles(folder).Select(f => Path.GetFileName(f)!).Where(n => !n.StartsWith(OutputMark.Name, StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
}
