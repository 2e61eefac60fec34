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

    [Theory]
    [InlineData("> /dev/full", ExitCode.CannotReadOrWrite)]
    [InlineData("| true; exit ${PIPESTATUS[0]}", ExitCode.CannotReadOrWrite)]
    [InlineData(">&-", ExitCode.CannotReadOrWrite)]
    public async Task Output_that_nobody_takes_ends_without_a_trace(string where, int code)
    {
        Assert.SkipUnless(File.Exists("/bin/bash") && File.Exists("/dev/full"), "needs bash and /dev/full");
        string program = typeof(CommandLineApp).Assembly.Location;
        foreach (string command in new[] { "explain body_stiffness", "check \"$1\"", "run \"$1\" --json", "--help" })
        {
            var start = new ProcessStartInfo("/bin/bash", ["-c", $"dotnet \"$0\" {command} {where}", program, Repository.Scenario("launch-soft")]) { RedirectStandardError = true };
            using Process process = Process.Start(start)!;
            string error = await process.StandardError.ReadToEndAsync();
            await process.WaitForExitAsync();
            Assert.True(process.ExitCode == code, $"{command}: {process.ExitCode} {error}");
            Assert.DoesNotContain("   at ", error);
            Assert.Equal("pushsim: error: standard output takes no more", Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries)).Split(": ", 4) is [var a, var b, var c, ..] ? $"{a}: {b}: {c}" : error);
        }
    }
}
