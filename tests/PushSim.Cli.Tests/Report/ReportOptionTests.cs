using System.Text.Json;
using System.Text.RegularExpressions;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Report;

public class ReportOptionTests
{
    [Fact]
    public void It_is_written_last_and_only_when_asked_for()
    {
        using var scratch = new ScratchFolder();
        string text = Cli.Run("run", Repository.Scenario("launch-soft"), "--out", scratch["a"], "--report").Output;
        Assert.Contains($"page: {scratch["a/report.html"]}", text);
        Assert.EndsWith("report.html", Cli.Run("run", Repository.Scenario("launch-soft"), "--details", "--format", "png,svg,pdf", "--out", scratch["a"], "--report").Output.TrimEnd());
        Assert.Equal(
            [".pushsim-output", "history.csv", "plot.pdf", "plot.png", "plot.svg", "report.html"],
            Directory.GetFiles(scratch["a"]).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
        Cli.Run("run", Repository.Scenario("launch-soft"), "--out", scratch["a"], "--no-plots");
        Assert.False(File.Exists(scratch["a/report.html"]));
    }

    [Fact]
    public void With_json_it_needs_a_folder()
    {
        using var scratch = new ScratchFolder();
        Cli refused = Cli.Run("run", Repository.Scenario("launch-soft"), "--json", "--report");
        Assert.Equal(ExitCode.WrongCommandLine, refused.Code);
        Assert.Contains("--out", refused.Error);
        Cli done = Cli.Run("run", Repository.Scenario("launch-soft"), "--json", "--report", "--no-plots", "--out", scratch["a"]);
        Assert.Equal(ExitCode.Done, done.Code);
        using JsonDocument json = JsonDocument.Parse(done.Output);
        Assert.True(File.Exists(scratch["a/report.html"]));
    }

    // Every value of both files with its unit and place, every estimate, the cautions, and no folder of this machine
    [Fact]
    public void It_says_what_went_in_and_where_it_stands()
    {
        using var scratch = new ScratchFolder();
        string scenario = Repository.Scenario("pull-test");
        Cli.Run("run", scenario, "--out", scratch["a"], "--no-plots", "--report");
        string page = File.ReadAllText(scratch["a/report.html"]);
        Scenarios.Scenes.ReadResult read = Scenarios.ScenarioReader.Read(scenario);
        Assert.Equal(read.Inputs.Count, Regex.Matches(page.Split("id=\"inputs\"")[1].Split("</section>")[0], "<tr><th scope=\"row\">").Count);
        int line = read.Inputs.Single(i => i.Key == "chassis.mass").Line;
        Assert.Matches($"<th scope=\"row\">chassis.mass</th><td>1360 g ± 10 g</td><td class=\"n\">1.36 ± 0.01</td><td>kg</td><td class=\"n\">{line}</td>", page);
        Assert.Equal(read.Notes.Count, Regex.Matches(page.Split("id=\"estimates\"")[1].Split("</section>")[0], "<li>").Count);
        Assert.Contains("keep clear of taut tethers", page);
        Assert.DoesNotContain(Repository.Root, page);
        Assert.Contains("<caption>Where the energy went</caption>", page);
    }
}
