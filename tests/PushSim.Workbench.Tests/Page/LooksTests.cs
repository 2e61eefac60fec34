using PushSim.Cli.Tests.Report;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>Looks: nothing wider than the window, enough contrast, names for all controls, weight.</summary>
public class LooksTests(PageFixture fixture)
{
    // axe-core's rules are the yardstick outside the project: WCAG 2.2 A and AA and its best practices. Each view is tried by all of them in one colour scheme, in the other by those of colours.
    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task Axe_finds_nothing_in_any_view_light_or_dark(int width)
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, width: width);
        await Look("work", false);
        await Look("work", true, Axe.OfColourAndWidth);
        await open.PressAsync("bench");
        await Microsoft.Playwright.Assertions.Expect(open.Page.Locator(".bench")).ToBeVisibleAsync();
        await Look("bench", true);
        await Look("bench", false, Axe.OfColourAndWidth);

        async Task Look(string view, bool isDark, params string[] rules)
        {
            await open.ColourAsync(isDark);
            Assert.Equal(isDark, await open.ValueAsync<bool>("matchMedia('(prefers-color-scheme: dark)').matches"));
            Assert.Empty(await open.ViolationsAsync(rules));
            await open.KeepAsync($"{view}-{width}-{(isDark ? "dark" : "light")}");
        }
    }

    [Theory]
    [InlineData(360)]
    [InlineData(800, 1100, 3840)]
    public async Task Nothing_is_wider_than_the_window(params int[] widths)
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, width: widths[0]);
        await Fits();
        foreach (int width in widths.Skip(1))
        {
            await open.Page.SetViewportSizeAsync(width, 800);

            // pictures are drawn anew for a width once it holds
            await open.Page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 50))))");
            await Fits();
        }

        async Task Fits()
        {
            Assert.Equal(0, await open.ValueAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth"));

            // texts of pictures are drawn at their own size, not shrunk with the picture
            Assert.True(await open.ValueAsync<double>("Math.min(...[...document.querySelectorAll('.stage text, .draw svg text')].map(t => t.getBoundingClientRect()).filter(b => b.height > 0).map(b => b.height))") > 10.0);
        }
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

    // a telephone on its side: the answer scrolls away, and nothing covers a slider that is scrolled to
    [Fact]
    public async Task A_telephone_on_its_side_leaves_room_for_a_slider()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, width: 844, height: 390);
        Assert.Equal(0, await open.ValueAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth"));
        await open.KeepAsync("phone-side");
        await open.PartAsync("Body");
        Assert.True(await open.ValueAsync<bool>("(() => { const s = document.querySelector('.row input[type=range]'); s.scrollIntoView({ block: 'center' }); const b = s.getBoundingClientRect(); return b.height >= 44 && [b.top + 4, b.bottom - 4].every(y => document.elementFromPoint((b.left + b.right) / 2, y) === s); })()"));
        Assert.Empty(await open.ViolationsAsync(Axe.OfColourAndWidth));
        await open.KeepAsync("phone-side-slider");
    }

    [Fact]
    public async Task The_page_weighs_less_than_400_kB_and_nothing_is_fetched_from_elsewhere()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        double bytes = await open.ValueAsync<double>("(() => { const all = [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')].filter(e => !e.name.includes('/api/')); return all.reduce((s, e) => s + e.encodedBodySize, 0); })()");
        TestContext.Current.SendDiagnosticMessage($"page weight {bytes / 1000.0:F1} kB");
        Assert.InRange(bytes, 50_000, 400_000);
        string[] hosts = await open.ValueAsync<string[]>("[...new Set(performance.getEntriesByType('resource').map(e => new URL(e.name).host))]");
        Assert.Equal([open.Server.Address.Authority], hosts);
    }
}
