using System.Diagnostics;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>Folders that take nothing; output that nobody takes. What a disk does at any act stands in <see cref="Faults.FaultCampaignTests"/>.</summary>
public class FaultTests
{
    [Fact]
    public void A_folder_that_takes_nothing_is_exit_4()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs /proc");
        Cli run = Cli.Run("run", Repository.Scenario("launch-soft"), "--quiet", "--out", "/proc/pushsim-out");
        Assert.Equal(ExitCode.CannotReadOrWrite, run.Code);
        Assert.StartsWith("pushsim: error: ", run.Error);
    }

    /// <summary>Each way in which output finds nobody, with each kind of command. The reader of the pipe closes its end before the program starts.</summary>
    public static TheoryData<string, string, string> Outputs()
    {
        (string Before, string After)[] places =
        [
            ("", "> /dev/full"),
            ("read -r go < \"$2\"; ", "| { exec <&-; echo go > \"$2\"; }; exit ${PIPESTATUS[0]}"),
            ("", ">&-")
        ];
        var rows = new TheoryData<string, string, string>();
        foreach ((string before, string after) in places)
        {
            foreach (string command in new[] { "explain body_stiffness", "check \"$1\"", "run \"$1\" --json", "--help" })
            {
                rows.Add(before, command, after);
            }
        }
        return rows;
    }

    [Theory]
    [MemberData(nameof(Outputs))]
    public async Task Output_that_nobody_takes_ends_without_a_trace(string before, string command, string after)
    {
        Assert.SkipUnless(File.Exists("/bin/bash") && File.Exists("/usr/bin/mkfifo") && File.Exists("/dev/full"), "needs bash, mkfifo and /dev/full");
        using var folder = new ScratchFolder();
        string fifo = Path.Combine(folder.Path, "closed");
        string line = $"mkfifo \"$2\"; {{ {before}dotnet \"$0\" {command}; }} {after}";
        string program = typeof(CommandLineApp).Assembly.Location;
        var start = new ProcessStartInfo("/bin/bash", ["-c", line, program, Repository.Scenario("launch-soft"), fifo]) { RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        string error = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == ExitCode.CannotReadOrWrite, $"{command}: {process.ExitCode} {error}");
        Assert.DoesNotContain("   at ", error);
        string said = Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.StartsWith("pushsim: error: standard output takes no more", said);
    }

    // far more bytes than a pipe holds (64 KiB, pipe(7)), into one whose other end stops reading: the first signal asks, and nothing hears it
    [Fact]
    public async Task A_second_signal_ends_a_command_that_hears_no_first_one()
    {
        Assert.SkipUnless(File.Exists("/bin/bash") && File.Exists("/usr/bin/mkfifo"), "needs bash and mkfifo");
        using var folder = new ScratchFolder();
        Shell shell = await Shell.RunAsync(
            "cd \"$1\"; mkfifo pipe; { head -c 1 > ready; exec sleep 60; } < pipe & reader=$!; dotnet \"$2\" shelf --json > pipe & p=$!; until [ -s ready ]; do sleep 0.1; done; sleep 0.5; "
            + "kill -TERM $p; sleep 0.5; kill -0 $p && echo waits; kill -TERM $p; for i in $(seq 100); do kill -0 $p 2>/dev/null || break; sleep 0.1; done; kill -KILL $p 2>/dev/null; wait $p; echo $?; kill $reader",
            folder.Path, typeof(CommandLineApp).Assembly.Location);
        Assert.Equal($"waits\n{ExitCode.Interrupted}\n", shell.Output);
    }
}
