using System.Reflection;
using System.Text.RegularExpressions;
using Xunit;

namespace PushSim.Cli.Tests;

/// <summary>Who may know whom, read from the assemblies.</summary>
public class ArrowTests
{
    [Theory]
    [InlineData("PushSim", "")]
    [InlineData("PushSim.Scenarios", "PushSim")]
    [InlineData("PushSim.Words", "PushSim")]
    [InlineData("PushSim.Plotting", "PushSim,PushSim.Words")]
    [InlineData("PushSim.Cli", "PushSim,PushSim.Words,PushSim.Plotting,PushSim.Scenarios")]
    public void Own_references(string assembly, string allowed) =>
        Assert.Subset(new HashSet<string>(allowed.Split(',', StringSplitOptions.RemoveEmptyEntries)), References(assembly, n => n.StartsWith("PushSim", StringComparison.Ordinal)));

    [Theory]
    [InlineData("PushSim", "MathNet.Numerics")]
    [InlineData("PushSim.Scenarios", "Tomlyn,CsvHelper")]
    [InlineData("PushSim.Plotting", "OxyPlot,OxyPlot.SkiaSharp,SkiaSharp")]
    public void Foreign_references(string assembly, string allowed) =>
        Assert.Subset(
            new HashSet<string>(allowed.Split(',')),
            References(assembly, n => !n.StartsWith("PushSim", StringComparison.Ordinal) && !n.StartsWith("System", StringComparison.Ordinal)));

    // Simulation computes, Runs answers what one run says, Analysis asks many runs, or none.
    [Theory]
    [InlineData("Numerics", "Chassis|Tyres|Powertrain|Surroundings|Contact|Simulation|Runs|Analysis")]
    [InlineData("Chassis", "Tyres|Powertrain|Surroundings|Contact|Simulation|Runs|Analysis")]
    [InlineData("Tyres", "Powertrain|Surroundings|Contact|Simulation|Runs|Analysis")]
    [InlineData("Powertrain", "Chassis|Surroundings|Contact|Simulation|Runs|Analysis")]
    [InlineData("Surroundings", "Tyres|Powertrain|Contact|Simulation|Runs|Analysis")]
    [InlineData("Contact", "Powertrain|Surroundings|Simulation|Runs|Analysis")]
    [InlineData("Simulation", "Runs|Analysis")]
    [InlineData("Runs", "Analysis")]
    public void Folders_of_the_engine_know_only_those_before_them(string folder, string later)
    {
        var named = new Regex($@"^using PushSim\.({later})\b|(?<![\w.])(PushSim\.)?({later})\.[A-Z]", RegexOptions.Multiline);
        string[] files = Directory.GetFiles(Path.Combine(Repository.Root, "src", "PushSim", folder), "*.cs", SearchOption.AllDirectories);
        Assert.NotEmpty(files);
        Assert.All(files, f => Assert.DoesNotMatch(named, Regex.Replace(File.ReadAllText(f), "//.*", string.Empty)));
    }

    private static HashSet<string> References(string assembly, Func<string, bool> counts) =>
        [.. Assembly.Load(assembly).GetReferencedAssemblies().Select(a => a.Name!).Where(counts)];
}
