using System.Reflection;
using Xunit;

namespace PushSim.Cli.Tests;

/// <summary>Who may know whom, read from the assemblies.</summary>
public class ArrowTests
{
    [Theory]
    [InlineData("PushSim", "")]
    [InlineData("PushSim.Scenarios", "PushSim")]
    [InlineData("PushSim.Plotting", "PushSim")]
    [InlineData("PushSim.Cli", "PushSim,PushSim.Plotting,PushSim.Scenarios")]
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

    private static HashSet<string> References(string assembly, Func<string, bool> counts) =>
        [.. Assembly.Load(assembly).GetReferencedAssemblies().Select(a => a.Name!).Where(counts)];
}
