using System.Text.RegularExpressions;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Report;

/// <summary>The page of every command in a real browser, at a desk, on a telephone, in the dark, and with names that try to do harm.</summary>
public sealed class EveryPageTests(ReportFixture fixture)
{
    // those that PageStructureTests does not look at
    [Theory]
    [InlineData("limits of a robot alone")]
    [InlineData("fit of several tyres")]
    public async Task It_loads_in_silence_and_fits_a_telephone(string name)
    {
        Browser browser = await fixture.BrowserAsync();
        string file = fixture.Page(name);
        foreach ((int width, string scheme) in new[] { (1280, "light"), (390, "dark") })
        {
            await using BrowserPage page = await BrowserPage.OpenAsync(browser, file, width: width, features: [("prefers-color-scheme", scheme)]);
            await page.KeepAsync($"{name.Replace(' ', '-')}-{width}");
            await page.FitsAsync(file, width);
        }
    }

    // a name that tries to run, to turn the line and to fill the page (one of 10,000 letters is refused when the file is read)
    [Theory]
    [InlineData("limits")]
    [InlineData("odds")]
    [InlineData("sweep")]
    [InlineData("ladder")]
    public async Task A_hostile_name_does_nothing(string command)
    {
        Browser browser = await fixture.BrowserAsync();
        string folder = Directory.CreateDirectory(Path.Combine(fixture.Folder, "evil-" + command)).FullName;
        string[] evil = ["</script><script>window.hit=1</script><img src=x onerror=window.hit=2>\\u202E\\u0007", new string('W', 4_000)];
        string[] robots = [.. new[] { "mole", "badger" }.Select((r, i) =>
        {
            string path = Path.Combine(folder, r + ".toml");
            string text = File.ReadAllText(Path.Combine(Repository.Root, "scenarios", "robots", r + ".toml"));
            File.WriteAllText(path, new Regex("(?m)^name = .*$").Replace(text, $"name = \"{evil[i]}\"", 1));
            return path;
        })];
        string shove = Path.Combine(folder, "shove.toml");
        File.WriteAllText(shove, File.ReadAllText(Repository.Scenario("shove-heavy-grippy")).Replace("robots/", "", StringComparison.Ordinal));
        string[] line = command switch
        {
            "limits" => ["limits", robots[0]],
            "odds" => ["odds", shove, "--matches", "8"],
            "sweep" => ["sweep", shove, "--vary", "chassis.mass=1 kg..2 kg", "--points", "2"],
            _ => ["ladder", .. robots, "--matches", "8"],
        };
        Cli cli = Cli.Run([.. line, "--report", "--no-plots", "--quiet", "--out", Path.Combine(folder, "out")]);
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        string file = Path.Combine(folder, "out", "report.html");
        Assert.True(new FileInfo(file).Length < 1_500_000);
        await using BrowserPage page = await BrowserPage.OpenAsync(browser, file, width: 390);
        await page.KeepAsync("evil-" + command);
        Assert.Equal("undefined", await page.EvaluateAsync<string>("typeof window.hit"));
        Assert.Equal(0, await page.EvaluateAsync<int>("document.querySelectorAll('img, main style, [onload], [onerror]').length"));
        Assert.DoesNotContain('\u202E', await page.EvaluateAsync<string>("document.documentElement.textContent"));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 390);
        Assert.Empty(page.Console);
        Assert.Single(page.Requests);
    }
}
