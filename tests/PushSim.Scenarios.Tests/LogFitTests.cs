using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Studies;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Logs and robot files made ready for a fit, and what is lacking for one.</summary>
public class LogFitTests
{
    private const string Readings = "tyre,force [N]\nfoam,4\nfoam,5\nhard,2\n";

    [Fact]
    public void Readings_of_a_file_are_fitted_by_tyre()
    {
        using SmallFiles files = With(Readings, out string log);
        FitResult fit = LogFit.Of(new FitRequest { Files = [log], Load = 5.0 });
        Assert.Null(fit.Lack);
        Assert.Equal(["foam", "hard"], fit.Fits.Select(f => f.Name));
        Assert.Equal([0.9, 0.4], fit.Fits.Select(f => f.KineticFriction!.Value.Value));
    }

    [Fact]
    public void Readings_with_their_own_load_are_counted()
    {
        using SmallFiles files = With("tyre,force [N],load [N]\nfoam,4,5\nfoam,5,\n", out string log);
        FitResult fit = LogFit.Of(new FitRequest { Files = [log], Load = 6.0 });
        Assert.Equal(1, fit.ReadingsOfOtherLoad);
        Assert.False(fit.IsHeightUnknown);
    }

    [Fact]
    public void Numbered_files_are_pulls_of_one_tyre()
    {
        using var files = new SmallFiles();
        string[] names = [.. new[] { "soft-1.csv", "soft-2.csv", "n20.csv" }.Select(n => Path.Combine(files.Folder, n))];
        Array.ForEach(names, n => File.WriteAllText(n, "force [N]\n4\n5\n"));
        Assert.Equal(["soft", "n20"], LogFit.Of(new FitRequest { Files = names, Load = 5.0 }).Fits.Select(f => f.Name));
    }

    // skids carry part of the shrew, and its height above the floor moves load between them and the wheels
    [Fact]
    public void The_height_of_the_tether_is_missed_where_it_matters()
    {
        using SmallFiles files = With(Readings, out string log);
        var request = new FitRequest { Files = [log], RobotFile = files.RobotPath };
        Assert.True(LogFit.Of(request).IsHeightUnknown);
        Assert.False(LogFit.Of(request with { Height = 0.01 }).IsHeightUnknown);
    }

    [Theory]
    [InlineData(false, null, false, FitLack.Load)]
    [InlineData(true, null, false, FitLack.Scenario)]
    [InlineData(true, "launch-soft", false, FitLack.Tether)]
    [InlineData(true, "pull-test", true, FitLack.DragScenario)]
    [InlineData(true, "pull-test", false, FitLack.Traces)]
    public void What_is_lacking_is_told_by_kind(bool simulate, string? scenario, bool isDrag, FitLack lack)
    {
        using SmallFiles files = With(Readings, out string log);
        string? robot = scenario is null ? null : Path.Combine(Generated.Root(), "scenarios", scenario + ".toml");
        FitResult fit = LogFit.Of(new FitRequest { Files = [log], Load = simulate ? 5.0 : null, RobotFile = robot, Simulate = simulate, IsDrag = isDrag });
        Assert.Equal(lack, fit.Lack);
        Assert.Empty(fit.Fits);
    }

    [Fact]
    public void A_negative_reading_is_complained_about_at_its_line()
    {
        using SmallFiles files = With("force [N]\n4\n-5\n", out string log);
        Problem problem = Assert.Single(LogFit.Of(new FitRequest { Files = [log], Load = 5.0 }).Problems);
        Assert.Equal((3, "this reading is negative"), (problem.Line, problem.Message));
    }

    private static SmallFiles With(string readings, out string log)
    {
        var files = new SmallFiles();
        log = Path.Combine(files.Folder, "readings.csv");
        File.WriteAllText(log, readings);
        return files;
    }
}
