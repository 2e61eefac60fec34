using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>Looks: nothing wider than the window, enough contrast, names for all controls, weight.</summary>
[Collection("page")]
public class LooksTests(PageFixture fixture)
{
    // axe-core's rules are the yardstick outside the project: WCAG 2.2 A and AA and its best practices
    [Theory]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    [InlineData(390, false)]
    [InlineData(390, true)]
    public async Task Axe_finds_nothing_in_any_view(int width, bool dark)
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, width: width, dark: dark);
        string name = $"{width}-{(dark ? "dark" : "light")}";
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("work-" + name);
        await open.PressAsync("bench");
        await Microsoft.Playwright.Assertions.Expect(open.Page.Locator(".bench")).ToBeVisibleAsync();
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("bench-" + name);
    }

    [Theory]
    [InlineData(360)]
    [InlineData(800)]
    [InlineData(1100)]
    [InlineData(3840)]
    public async Task Nothing_is_wider_than_the_window(int width)
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, width: width);
        Assert.Equal(0, await open.ValueAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth"));

        // texts of pictures are drawn at their own size, not shrunk with the picture
        Assert.True(await open.ValueAsync<double>("Math.min(...[...document.querySelectorAll('.stage text, .draw svg text')].map(t => t.getBoundingClientRect()).filter(b => b.height > 0).map(b => b.height))") > 10.0);
    }

    // a part that is chosen on a telephone folds the others away: two sliders stand below the answer
    [Fact]
    public async Task A_telephone_shows_two_sliders_of_a_chosen_part()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, width: 390);
        await open.PartAsync("Body");
        await Microsoft.Playwright.Assertions.Expect(open.Page.Locator(".phonedraw .partbtn")).ToHaveCountAsync(2);
        Assert.True(await open.ValueAsync<int>("[...document.querySelectorAll('.row .ctl')].filter(e => e.getBoundingClientRect().bottom < innerHeight).length") >= 2);
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("phone-part");
        await open.PressAsync("all parts");
        await Microsoft.Playwright.Assertions.Expect(open.Page.Locator(".phonedraw svg")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task The_page_weighs_less_than_400_kB()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        double bytes = await open.ValueAsync<double>("(() => { const all = [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')].filter(e => !e.name.includes('/api/')); return all.reduce((s, e) => s + e.encodedBodySize, 0); })()");
        TestContext.Current.SendDiagnosticMessage($"page weight {bytes / 1000.0:F1} kB");
        Assert.InRange(bytes, 50_000, 400_000);
    }

    [Fact]
    public async Task Nothing_is_fetched_from_elsewhere()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        string[] hosts = await open.ValueAsync<string[]>("[...new Set(performance.getEntriesByType('resource').map(e => new URL(e.name).host))]");
        Assert.Equal([open.Server.Address.Authority], hosts);
    }
}
