using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.Playwright;
using PushSim.Cli.Tests;
using PushSim.Cli.Tests.Bench;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>Sixth use: the bench. Some calls of the notebook and of the load cell are answered by stand-ins, which ask the page alone; their numbers are invented.</summary>
public class BenchPageTests(PageFixture fixture)
{
    // whose answer takes no matches: the bench is the same beside it
    private const string Quick = "launch-soft.toml";

    [Fact]
    public async Task A_dropped_log_tells_the_tyre_and_one_click_puts_it_into_the_robot()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, prepare: folder => File.WriteAllText(folder["garage.toml"], "name = \"test\"\n"));
        byte[] log = await File.ReadAllBytesAsync(Path.Combine(Repository.Root, "scenarios", "logs", "mole-pulls.csv"));
        await open.PressAsync("bench");
        await open.Page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "soft.csv", MimeType = "text/csv", Buffer = log });
        ILocator card = open.Page.GetByRole(AriaRole.Region, new PageGetByRoleOptions { Name = "what the log says" });
        await Assertions.Expect(card.Locator("tbody tr")).Not.ToHaveCountAsync(0);
        await Assertions.Expect(card.Locator(".pullmarks span")).Not.ToHaveCountAsync(0);
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("log");

        // its good pulls are handed to the notebook by way of the box, where they may be looked through
        string[] peaks = [.. (await card.Locator("tbody tr").Filter(new LocatorFilterOptions { HasNotText = "left out" }).Locator("td:nth-of-type(1)").AllInnerTextsAsync())];
        Assert.NotEmpty(peaks);
        await card.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Write these pulls below" }).ClickAsync();
        await Assertions.Expect(open.Page.Locator("#paste")).ToBeFocusedAsync();
        Assert.Equal(peaks, (await open.Page.Locator("#paste").InputValueAsync()).Split('\n').Select(l => l.Split(", ")[2]));
        await open.PressAsync("Add to the notebook");
        await Assertions.Expect(open.Page.GetByRole(AriaRole.Region, new PageGetByRoleOptions { Name = "notebook" }).Locator("tbody tr")).ToHaveCountAsync(peaks.Length);
        Assert.Equal(peaks.Length + 1, (await File.ReadAllLinesAsync(open["readings.csv"])).Length);

        // "0.93 ± 0.02": value and tolerance go into the robot, and the answer follows
        string value = await card.Locator(".fitrow b").First.InnerTextAsync();
        string before = await open.Page.Locator(".card").GetAttributeAsync("data-number") ?? "";
        await card.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Use this value" }).First.ClickAsync();
        await Assertions.Expect(open.Page.Locator(".top .file")).ToContainTextAsync("1 change not saved");
        await Assertions.Expect(open.Page.Locator(".card")).Not.ToHaveAttributeAsync("data-number", before);
        await open.PressAsync("mole (yours)");
        await open.PartAsync("Tyres");
        ILocator fields = open.Page.Locator(".row.changed input.f");
        Assert.Equal(value, $"{await fields.Nth(0).InputValueAsync()} ± {await fields.Nth(1).InputValueAsync()}");
    }

    [Fact]
    public async Task A_log_that_is_too_large_is_not_even_sent()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, Quick);
        int sent = 0;
        await open.Page.RouteAsync("**/api/log**", r => { sent++; return r.AbortAsync(); });
        await open.PressAsync("bench");
        await open.Page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "long.csv", MimeType = "text/csv", Buffer = new byte[5 << 20] });
        await Assertions.Expect(open.Page.Locator(".tell.bad")).ToContainTextAsync("4 MB");
        Assert.Equal(0, sent);
    }

    [Fact]
    public async Task Pasted_readings_go_into_the_notebook()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, Quick);
        string? got = null;
        await open.Page.RouteAsync("**/api/reading", r => { got = r.Request.PostData; return Answer(r, """{ "added": 2 }"""); });
        await open.Page.RouteAsync("**/api/readings", r => Answer(r, got is null ? """{ "file": "readings.csv", "rows": [], "trend": [] }""" : """
            { "file": "readings.csv", "trend": ["soft: 0.84, steady."], "rows": [
              { "line": 2, "date": "2026-11-28 18:10", "tyre": "soft", "load": "1360 g", "peak": "12.0 N", "sliding": "11.1 N", "note": "clean", "left_out": false, "why": "" },
              { "line": 3, "date": "2026-11-28 18:12", "tyre": "soft", "load": "1360 g", "peak": "7.0 N", "sliding": "6.0 N", "note": "", "left_out": true, "why": "slipped off" }] }
            """));
        await open.PressAsync("bench");
        await open.Page.GetByLabel("Readings by hand").FillAsync("soft, 1360 g, 12.0 N, 11.1 N, clean\nsoft, 1360 g, 7.0 N, 6.0 N");
        await open.PressAsync("Add to the notebook");
        await Assertions.Expect(open.Page.Locator(".bench td")).ToContainTextAsync(["slipped off", "clean"]);
        Assert.Contains("11.1 N, clean", got!, StringComparison.Ordinal);
        Assert.Empty(await open.ViolationsAsync());
    }

    [Fact]
    public async Task A_trace_of_a_load_cell_grows_and_its_pulls_are_marked()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, Quick);
        string? port = null;
        await open.Page.RouteAsync("**/api/ports", r => Answer(r, """{ "ports": ["cell0"] }"""));
        await open.Page.RouteAsync("**/api/port", r => { port = r.Request.PostData; return Answer(r, """{ "number": 1 }"""); });
        await open.PressAsync("bench");
        await open.PressAsync("Listen");
        await Assertions.Expect(open.Page.Locator(".tell")).ToContainTextAsync("cell0");
        Assert.Contains("115200", port!, StringComparison.Ordinal);
        for (int seconds = 1; seconds <= 3; seconds++)
        {
            double[] t = [.. Enumerable.Range(0, 10 * seconds).Select(i => 0.1 * i)];
            Send(open, new { t, f = t.Select(s => 10.0 * Math.Abs(Math.Sin(s))).ToArray(), unit = "N", pulls = seconds < 3 ? [] : new[] { new { from = 0.5, to = 2.5, words = "10.0 N" } }, words = $"{seconds} s" });
            await Assertions.Expect(open.Page.GetByText($"{seconds} s", new PageGetByTextOptions { Exact = true }).First).ToBeVisibleAsync();
        }

        await Assertions.Expect(open.Page.Locator(".pullmarks span")).ToHaveCountAsync(1);
        Assert.Empty(await open.ViolationsAsync());
    }

    // Only the list of ports is a stand-in: a pseudo-terminal is in none
    [Fact]
    public async Task A_pull_on_a_port_is_drawn_marked_and_noted_in_the_notebook()
    {
        using Pty? pty = Pty.Open();
        Assert.SkipWhen(pty is null, "no pseudo-terminals here");
        await using OpenPage open = await OpenPage.StartAsync(fixture, Quick, prepare: folder => File.WriteAllText(folder["garage.toml"], "name = \"test\"\n"));
        await open.Page.RouteAsync("**/api/ports", r => Answer(r, $$"""{ "ports": ["{{pty.Port}}"] }"""));
        await open.PressAsync("bench");
        await open.Page.GetByLabel("Readings by hand").FillAsync("soft, 1360 g, 12.0 N, 11.1 N, by hand");
        await open.PressAsync("Add to the notebook");
        await Assertions.Expect(open.Page.GetByText("by hand", new PageGetByTextOptions { Exact = true })).ToBeVisibleAsync();
        await open.Page.GetByLabel("Unit").SelectOptionAsync("gf");
        await open.Page.GetByLabel("Tyre", new PageGetByLabelOptions { Exact = true }).FillAsync("soft");
        await open.PressAsync("Listen");
        double time = await HearAsync(pty, 0.0, open.Page.GetByText("Ready: pull."));
        await HearAsync(pty, CellLines.Play(pty, time), open.Page.Locator(".pullmarks span"));
        await Assertions.Expect(open.Page.GetByText("sliding 5.10 N (520 gf)")).ToBeVisibleAsync();
        await Assertions.Expect(open.Page.Locator(".bench table").Last.Locator("tbody tr")).ToHaveCountAsync(2);
        Assert.Empty(await open.ViolationsAsync());
        await open.Page.Locator(".plotbox.trace").ScrollIntoViewIfNeededAsync();
        await open.KeepAsync("cell");
        await open.PressAsync("Stop");
        await Assertions.Expect(open.Page.GetByText("Stopped.")).ToBeVisibleAsync();
        await Assertions.Expect(open.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Stop" })).ToHaveCountAsync(0);
        await open.Page.Locator(".bench table").Last.ScrollIntoViewIfNeededAsync();
        await open.KeepAsync("notebook");
    }

    // Slack until the page shows it
    private static async Task<double> HearAsync(Pty pty, double time, ILocator shown)
    {
        for (int i = 0; i < 2000 && await shown.CountAsync() == 0; i++, time += 1.0 / CellLines.Rate)
        {
            pty.Line(CellLines.Stamp(time, 0.0));
        }

        await Assertions.Expect(shown.First).ToBeVisibleAsync();
        return time;
    }

    private static Task Answer(IRoute route, string json) => route.FulfillAsync(new RouteFulfillOptions { ContentType = "application/json", Body = json });

    private static void Send<T>(OpenPage open, T trace) => open.Server.Hub.Send("trace", trace, (JsonTypeInfo<T>)JsonSerializerOptions.Default.GetTypeInfo(typeof(T)));
}
