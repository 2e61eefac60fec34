using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Conventions;

/// <summary>Nothing is fetched or sent at run time, and nothing hangs on the wall clock.</summary>
public class OfflineTests
{
    private static readonly string s_program = typeof(CommandLineApp).Assembly.Location;

    [Theory]
    [InlineData("PushSim")]
    [InlineData("PushSim.Files")]
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

        // a bench dates its readings, in one file
        string[] clocks = [.. reader.MemberReferences.Select(h => Clock(reader, reader.GetMemberReference(h))).Where(m => name != "PushSim.Scenarios" || m != "DateTime.get_Now")];
        Assert.DoesNotContain(clocks, m => m is "DateTime.get_Now" or "DateTime.get_UtcNow" or "DateTime.get_Today" or "DateTimeOffset.get_Now" or "DateTimeOffset.get_UtcNow" or "TimeProvider.GetUtcNow");
    }

    [Fact]
    public void The_time_of_day_is_read_in_one_file_that_only_the_bench_knows()
    {
        string[] sources = [.. Directory.GetFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories)];
        Assert.Equal(["WallClock.cs"], sources.Where(f => File.ReadAllText(f).Contains("DateTime.Now", StringComparison.Ordinal)).Select(f => Path.GetFileName(f)));
        Assert.All(sources.Where(f => File.ReadAllText(f).Contains("WallClock.", StringComparison.Ordinal)), f => Assert.Equal("Bench", Path.GetFileName(Path.GetDirectoryName(f))));
    }

    private static string Clock(MetadataReader reader, MemberReference member) => member.Parent.Kind == HandleKind.TypeReference
        ? reader.GetString(reader.GetTypeReference((TypeReferenceHandle)member.Parent).Name) + "." + reader.GetString(member.Name)
        : "";

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
        Assert.Equal(Cli.Steady(Cli.Run(args).Output), Cli.Steady(without.Output));
    }
}
