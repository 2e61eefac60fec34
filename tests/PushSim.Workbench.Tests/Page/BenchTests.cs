using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.Playwright;
using PushSim.Cli.Tests;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>Sixth use: the bench. Its calls are answered by stand-ins here, so that these tests ask the page alone; numbers are invented.</summary>
[Collection("page")]
public class BenchTests(PageFixture fixture)
{
    private const string Card = """
        { "sentence": "The soft tyre slides at 0.95 ± 0.03.",
          "tyres": [{ "name": "soft", "words": "Sliding grip of soft", "key": "a.tyre.soft.kinetic_friction", "value": "0.95 ± 0.03" }, { "name": "spare", "words": "Sliding grip of spare", "key": null, "value": "0.60 ± 0.05" }],
          "pulls": [{ "words": "first", "verdict": "tyre", "from": 0.2, "to": 0.8, "peak": "12.1 N", "left_out": false, "why": "" }, { "words": "second", "verdict": "motor", "from": 1.1, "to": 1.6, "peak": "9.0 N", "left_out": true, "why": "the motor stalled" }],
          "curve": { "name": "force", "unit": "N", "t": [0, 0.5, 1, 1.5, 2], "f": [0, 12, 0, 9, 0] }, "block": "kinetic_friction = \"0.95 ± 0.03\"" }
        """;

    [Fact]
    public async Task A_dropped_log_tells_the_tyre_and_one_click_puts_it_into_the_robot()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        string log = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "scenarios", "logs", "mole-pulls.csv"));
        string? got = null, used = null;
        await open.Page.RouteAsync("**/api/log**", r => { got = r.Request.PostData; return Answer(r, Card); });
        await open.Page.RouteAsync("**/api/use", async r =>
        {
            // what the server does with it: a change of the row
            used = r.Request.PostData;
            using JsonDocument said = JsonDocument.Parse(used!);
            await open.Page.APIRequest.PostAsync(new Uri(open.Server.Address, "/api/change").AbsoluteUri, new APIRequestContextOptions
            {
                DataObject = new Dictionary<string, object> { ["key"] = said.RootElement.GetProperty("key").GetString()!, ["text"] = said.RootElement.GetProperty("value").GetString()!, ["drag"] = false },
            });
            await Answer(r, """{ "number": 1 }""");
        });
        await open.PressAsync("bench");
        await open.Page.Locator("input[type=file]").SetInputFilesAsync(Path.Combine(Repository.Root, "scenarios", "logs", "mole-pulls.csv"));
        await Assertions.Expect(open.Page.Locator(".bench h3").Filter(new LocatorFilterOptions { HasText = "slides at 0.95" })).ToBeVisibleAsync();
        Assert.Equal(log.ReplaceLineEndings("\n"), got!.ReplaceLineEndings("\n"));
        await Assertions.Expect(open.Page.Locator(".bench td")).ToContainTextAsync(["12.1 N", "the tyre let go", "9.0 N", "left out: the motor stalled"]);
        await Assertions.Expect(open.Page.Locator(".fitrow").Filter(new LocatorFilterOptions { HasText = "spare" }).GetByRole(AriaRole.Button)).ToHaveCountAsync(0);
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("log");
        await open.PressAsync("Use this value");
        await open.VerdictAsync("mole ");
        Assert.Contains("kinetic_friction", used!, StringComparison.Ordinal);
        await Assertions.Expect(open.Page.Locator(".top .file")).ToContainTextAsync("1 change not saved");
        await open.PressAsync("mole (yours)");
        await open.PartAsync("Tyres");
        await Assertions.Expect(open.Row("a.tyre.soft.kinetic_friction").Locator("input.f").First).ToHaveValueAsync("0.95");
    }

    [Fact]
    public async Task A_log_that_is_too_large_is_not_even_sent()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        int sent = 0;
        await open.Page.RouteAsync("**/api/log**", r => { sent++; return Answer(r, Card); });
        await open.PressAsync("bench");
        await open.Page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "long.csv", MimeType = "text/csv", Buffer = new byte[5 << 20] });
        await Assertions.Expect(open.Page.Locator(".tell.bad")).ToContainTextAsync("4 MB");
        Assert.Equal(0, sent);
    }

    [Fact]
    public async Task Pasted_readings_go_into_the_notebook()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
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
        await using OpenPage open = await OpenPage.StartAsync(fixture);
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

    private static Task Answer(IRoute route, string json) => route.FulfillAsync(new RouteFulfillOptions { ContentType = "application/json", Body = json });

    private static void Send<T>(OpenPage open, T trace) => open.Server.Hub.Send("trace", trace, (JsonTypeInfo<T>)JsonSerializerOptions.Default.GetTypeInfo(typeof(T)));
}
