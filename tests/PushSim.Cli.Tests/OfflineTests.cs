using System.Diagnostics;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Xunit;

namespace PushSim.Cli.Tests;

/// <summary>Nothing is fetched or sent at run time, and nothing hangs on the wall clock.</summary>
public class OfflineTests
{
    private static readonly string s_program = typeof(CommandLineApp).Assembly.Location;

    [Theory]
    [InlineData("PushSim")]
    [InlineData("PushSim.Scenarios")]
    [InlineData("PushSim.Plotting")]
    [InlineData("PushSim.Cli")]
    public void No_assembly_of_ours_knows_the_network_or_reads_the_wall_clock(string name)
    {
        using var file = new PEReader(File.OpenRead(Path.Combine(Path.GetDirectoryName(s_program)!, name + ".dll")));
        MetadataReader reader = file.GetMetadataReader();
        string[] assemblies = [.. reader.AssemblyReferences.Select(h => reader.GetString(reader.GetAssemblyReference(h).Name))];
        string[] spaces = [.. reader.TypeReferences.Select(h => reader.GetString(reader.GetTypeReference(h).Namespace))];
        Assert.Contains("System.Runtime", assemblies);
        Assert.DoesNotContain(assemblies, a => a.StartsWith("System.Net", StringComparison.Ordinal));
        Assert.DoesNotContain(spaces, s => s == "System.Net" || s.StartsWith("System.Net.", StringComparison.Ordinal));
        Assert.DoesNotContain(reader.MemberReferences.Select(h => reader.GetString(reader.GetMemberReference(h).Name)), m => m is "get_Now" or "get_UtcNow" or "get_Today" or "get_TickCount" or "get_TickCount64");
    }

    // In a network namespace of its own there is not even a loopback that is up
    [Theory]
    [InlineData("run")]
    [InlineData("limits")]
    public async Task Without_any_network_the_answer_is_the_same(string command)
    {
        Assert.SkipUnless((await Shell.RunAsync("unshare -rn true")).Code == 0, "needs unshare and leave to use it");
        string scenario = Repository.Scenario("launch-soft");
        string[] args = command == "run" ? [command, scenario, "--json"] : [command, Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml"), "--json"];
        Shell without = await Shell.RunAsync("exec unshare -rn dotnet \"$@\"", [s_program, .. args]);
        Assert.Equal((ExitCode.Done, ""), (without.Code, without.Error));
        Assert.Equal(Steady(Cli.Run(args).Output), Steady(without.Output));
    }

    private static string Steady(string json) => string.Join('\n', json.ReplaceLineEndings("\n").Split('\n').Where(l => !l.Contains("_ms\""))).Trim();
}
