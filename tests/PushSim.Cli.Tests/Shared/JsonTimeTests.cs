using System.Diagnostics;
using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>Every document tells how long the whole command worked.</summary>
public class JsonTimeTests
{
    [Theory]
    [InlineData("run @short.toml")]
    [InlineData("limits @robots/mole.toml")]
    [InlineData("check @short.toml")]
    [InlineData("odds @short.toml --matches 4")]
    [InlineData("odds @short.toml --matches 4 --match 2")]
    [InlineData("odds @short.toml --matches 4 --merge --check --out @parts")]
    [InlineData("sweep @short.toml --vary chassis.mass=1.2,1.3 kg")]
    [InlineData("ladder @robots/mole.toml @robots/vole.toml --scene @short.toml --matches 2")]
    [InlineData("fit %logs/readings.csv --load 1360gf")]
    [InlineData("fit %logs/weighings.csv --robot %tyre-wear.toml")]
    [InlineData("fit %garage/readings.csv")]
    [InlineData("compare %logs/drive.csv %gopher-launch.toml")]
    [InlineData("plan soft hard")]
    [InlineData("garage --garage %garage")]
    [InlineData("cluster -- odds @short.toml --matches 4 --out @parts")]
    [InlineData("new --out @new")]
    [InlineData("explain chassis.mass")]
    [InlineData("shelf tyres")]
    public void The_whole_time_is_told(string line)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        List<string> args = [.. line.Split(' ').Select(a => a[0] == '@' ? scratch[a[1..]] : a[0] == '%' ? Path.Combine(Repository.Root, "scenarios", a[1..]) : a)];
        int vary = args.FindIndex(a => a.StartsWith("chassis.mass=", StringComparison.Ordinal));
        if (vary >= 0)
        {
            args[vary] += " " + args[vary + 1];
            args.RemoveAt(vary + 1);
        }

        args.Insert(1, "--json");
        long begin = Stopwatch.GetTimestamp();
        Cli cli = Cli.Run([.. args]);
        double most = Stopwatch.GetElapsedTime(begin).TotalMilliseconds;
        Assert.True(cli.Code is ExitCode.Done || (cli.Code == ExitCode.RunFailed && line.Contains("--check", StringComparison.Ordinal)), $"{cli.Code} {cli.Error}");
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        Assert.InRange(json.RootElement.GetProperty("total_ms").GetDouble(), double.Epsilon, most);
    }
}
