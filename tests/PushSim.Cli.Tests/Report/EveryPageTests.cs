using System.Text.RegularExpressions;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Report;

/// <summary>The page of every command in a real browser, at a desk, on a telephone, in the dark, and with names that try to do harm.</summary>
public sealed class EveryPageTests(ReportFixture fixture) : IClassFixture<ReportFixture>
{
    public static TheoryData<string> Commands => ["limits", "fit of several tyres", "odds", "sweep", "sweep of two", "ladder"];

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task It_loads_in_silence_and_fits_a_telephone(string name)
    {
        Browser browser = fixture.Browser;
        string folder = Path.Combine(fixture.Folder, name.Replace(' ', '-'));
        Cli.Run([.. ReportCommandTests.Command(name), "--report", "--no-plots", "--quiet", "--out", folder]);
        string file = Path.Combine(folder, "report.html");
        Assert.True(new FileInfo(file).Length < 1_500_000);
        foreach ((int width, string scheme) in new[] { (1280, "light"), (390, "dark") })
        {
            await using BrowserPage page = await BrowserPage.OpenAsync(browser, file, width: width, features: [("prefers-color-scheme", scheme)]);
            await page.KeepAsync($"{name.Replace(' ', '-')}-{width}");
            Assert.Empty(page.Console);
            Assert.Equal([new Uri(file).AbsoluteUri], page.Requests);
            Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
            Assert.Equal(0, await page.EvaluateAsync<int>("[...document.querySelectorAll('pre')].filter(p => p.scrollWidth > p.clientWidth).length"));

            // a table that goes on beyond its box has the shadow that says so: covers that scroll with it over shadows that stay
            Assert.Equal(0, await page.EvaluateAsync<int>("[...document.querySelectorAll('.scroll')].filter(b => b.scrollWidth > b.clientWidth && getComputedStyle(b).backgroundAttachment !== 'local, local, scroll, scroll').length"));
            string kind = width > 600 ? "desk" : "phone";
            string[] outside = await page.EvaluateAsync<string[]>(
                $"[...document.querySelectorAll('.plot.{kind}')].flatMap(s => {{ const b = s.getBoundingClientRect(); return [...s.querySelectorAll('text')].map(t => {{ const r = t.getBoundingClientRect(); return [Math.max(b.left - r.left, r.right - b.right, b.top - r.top, r.bottom - b.bottom), t.textContent]; }}); }}).filter(t => t[0] > 2).map(t => t[1])");
            Assert.Empty(outside);
            Assert.True(await page.EvaluateAsync<int>($"document.querySelectorAll('.plot.{kind} text').length") > 0);
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
        Browser browser = fixture.Browser;
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
