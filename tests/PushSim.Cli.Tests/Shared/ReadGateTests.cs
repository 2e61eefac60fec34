using System.Diagnostics;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>What opens and what does not: links, pipes, devices, line ends.</summary>
public class ReadGateTests
{
    private const string Secret = "secret = [ not toml\n";

    // A link in the folder that leads out, at once, by a second link, by a folder's link, or by the ".." of a linked folder, which is taken as written: nothing of the file shows
    [Theory]
    [InlineData("direct")]
    [InlineData("chain")]
    [InlineData("folder")]
    [InlineData("chain of folders")]
    [InlineData("back")]
    public void A_chain_of_links_does_not_leave_the_folder(string how)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        Directory.CreateDirectory(scratch["outside/deep"]);
        File.WriteAllText(scratch["outside/secret.toml"], Secret);
        Directory.CreateDirectory(scratch["project"]);
        Directory.Move(scratch["robots"], scratch["project/robots"]);
        string name = "bait.toml";
        switch (how)
        {
            case "direct":
                File.CreateSymbolicLink(scratch["project/bait.toml"], "../outside/secret.toml");
                break;
            case "chain":
                File.CreateSymbolicLink(scratch["project/bait.toml"], "second.toml");
                File.CreateSymbolicLink(scratch["project/second.toml"], "third.toml");
                File.CreateSymbolicLink(scratch["project/third.toml"], scratch["outside/secret.toml"]);
                break;
            case "folder":
                Directory.CreateSymbolicLink(scratch["project/sub"], "../outside");
                name = "sub/secret.toml";
                break;
            case "chain of folders":
                Directory.CreateSymbolicLink(scratch["project/a"], "b");
                Directory.CreateSymbolicLink(scratch["project/b"], scratch["outside"]);
                File.CreateSymbolicLink(scratch["project/bait.toml"], "a/secret.toml");
                break;
            default:
                Directory.CreateSymbolicLink(scratch["project/deep"], scratch["outside/deep"]);
                name = "deep/../secret.toml";
                break;
        }

        File.WriteAllText(scratch["project/s.toml"], $"include = [\"{name}\"]\n" + File.ReadAllText(scratch["short.toml"]));
        Cli check = Cli.Run("check", scratch["project/s.toml"]);
        Assert.Equal(3, check.Code);
        Assert.Contains(how == "back" ? "is not there" : "leaves the scenario's folder", check.Error);
        Assert.DoesNotContain("secret = ", check.Error);
    }

    [Fact]
    public void Links_that_stay_inside_are_followed()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        File.Move(scratch["robots/mole.toml"], scratch["robots/real.toml"]);
        File.CreateSymbolicLink(scratch["robots/mole.toml"], "second.toml");
        File.CreateSymbolicLink(scratch["robots/second.toml"], "../robots/real.toml");
        Cli check = Cli.Run("check", scratch["short.toml"]);
        Assert.True(check.Code == 0, check.Error);
    }

    [Fact]
    public void Links_in_a_circle_are_complained_about()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        File.Delete(scratch["robots/mole.toml"]);
        File.CreateSymbolicLink(scratch["robots/mole.toml"], "second.toml");
        File.CreateSymbolicLink(scratch["robots/second.toml"], "mole.toml");
        Cli check = Cli.Run("check", scratch["short.toml"]);
        Assert.Equal(4, check.Code);
        Assert.Contains("circle", check.Error);
    }

    [Theory]
    [InlineData("run")]
    [InlineData("check")]
    [InlineData("limits")]
    public void A_pipe_or_device_for_a_scenario_is_refused_at_once(string command)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs mkfifo");
        using var scratch = new ScratchFolder();
        Process.Start("mkfifo", [scratch["pipe.toml"]]).WaitForExit();
        foreach (string file in new[] { scratch["pipe.toml"], "/dev/zero", "/dev/null", "/dev/urandom" })
        {
            Cli run = Cli.Run(command, file);
            Assert.Equal(3, run.Code);
            Assert.Contains("no regular file", run.Error);
        }
    }

    [Fact]
    public async Task A_log_comes_from_a_pipe_too_and_a_silent_one_ends_at_an_interrupt()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && File.Exists("/bin/bash"), "needs bash and mkfifo");
        using var scratch = new ScratchFolder();
        string program = typeof(CommandLineApp).Assembly.Location;
        string log = Path.Combine(Repository.Root, "scenarios", "logs", "soft-tyre.csv");
        Shell piped = await Shell.RunAsync("cat \"$1\" | dotnet \"$2\" fit /dev/stdin --load '1360 gf' --json", log, program);
        Assert.True(piped.Code == 0, piped.Error);
        Shell silent = await Shell.RunAsync("mkfifo \"$1/silent\"; dotnet \"$2\" fit \"$1/silent\" --load 1N & p=$!; sleep 1.5; kill -TERM $p; for i in $(seq 50); do kill -0 $p 2>/dev/null || break; sleep 0.1; done; kill -KILL $p 2>/dev/null; wait $p; exit $?", scratch.Path, program);
        Assert.Equal(130, silent.Code);
        Assert.Equal("pushsim: interrupted\n", silent.Error.ReplaceLineEndings("\n"));
    }

    [Fact]
    public async Task An_endless_device_for_a_log_ends_by_itself()
    {
        Assert.SkipUnless(File.Exists("/dev/zero") && File.Exists("/bin/bash"), "needs /dev/zero");
        Shell zero = await Shell.RunAsync("timeout 30 dotnet \"$1\" fit /dev/zero --load 1N; exit $?", typeof(CommandLineApp).Assembly.Location);
        Assert.Equal(3, zero.Code);
    }

    [Fact]
    public void Lines_that_end_in_a_carriage_return_alone_are_read()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        File.WriteAllText(scratch["old.toml"], File.ReadAllText(scratch["short.toml"]).Replace('\n', '\r'));
        Cli check = Cli.Run("check", scratch["old.toml"]);
        Assert.True(check.Code == 0, check.Error);
        string log = File.ReadAllText(Path.Combine(Repository.Root, "scenarios", "logs", "soft-tyre.csv"));
        File.WriteAllText(scratch["soft.csv"], log.ReplaceLineEndings("\n"));
        string[] fit = ["fit", scratch["soft.csv"], "--load", "1360 gf", "--json"];
        Cli with = Cli.Run(fit);
        File.WriteAllText(scratch["soft.csv"], log.ReplaceLineEndings("\r"));
        Cli without = Cli.Run(fit);
        Assert.Equal((0, Cli.Steady(with.Output)), (without.Code, Cli.Steady(without.Output)));
    }
}
