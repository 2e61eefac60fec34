using System.Globalization;
using Microsoft.Playwright;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>Fourth and fifth use: strips under the sliders, and the answer as odds.</summary>
public class StripPageTests(PageFixture fixture)
{
    private const string Mass = "a.chassis.mass";

    [Fact]
    public async Task The_strip_shows_the_flip_where_the_verdict_flips()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PartAsync("Body");
        ILocator row = open.Row(Mass);
        await Assertions.Expect(row.Locator(".flip")).ToContainTextAsync("to spare");
        await Assertions.Expect(row.Locator(".strip rect[fill='url(#hatch)']")).Not.ToHaveCountAsync(0);
        await Assertions.Expect(row.Locator(".strip .w")).ToContainTextAsync(["badger wins", "mole wins"]);
        await Assertions.Expect(row.Locator("input[type=range]")).ToHaveAttributeAsync("aria-valuetext", new System.Text.RegularExpressions.Regex("badger wins; flips at"));

        // the flip as the strip says it: a little less and a little more have different winners
        string text = (await row.Locator(".flip").InnerTextAsync()).Split("flips at ")[1].Split(' ', ':')[0];
        double flip = double.Parse(text, CultureInfo.InvariantCulture);
        await open.WriteAsync(Mass, string.Create(CultureInfo.InvariantCulture, $"{0.9 * flip:F0} g"));
        await open.VerdictAsync("badger pushes mole");
        await open.WriteAsync(Mass, string.Create(CultureInfo.InvariantCulture, $"{1.1 * flip:F0} g"));
        await open.VerdictAsync("mole pushes badger");
        await open.KeepAsync("strips");

        // the knob stands on no word
        await Assertions.Expect(row.Locator(".strip .w")).Not.ToHaveCountAsync(0);
        Assert.Equal(0, await open.ValueAsync<int>("[...document.querySelectorAll('.ctl')].filter(c => { const k = c.querySelector('.knob').getBoundingClientRect(); return [...c.querySelectorAll('.w')].some(w => { const b = w.getBoundingClientRect(); return b.left < k.right && b.right > k.left; }); }).length"));
    }

    [Fact]
    public async Task Odds_narrow_and_strips_become_shares()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PartAsync("Body");
        await open.WriteAsync(Mass, "1300 g");
        await open.VerdictAsync("mole pushes badger");
        await open.PressAsync("How sure?");
        ILocator sure = open.Page.Locator(".sure");
        await Assertions.Expect(sure.Locator(".t")).ToContainTextAsync("of 100");
        double first = await WidthAsync(open);

        // how far the matches went: winners solid, losers hatched, none on both sides of the place where they met
        await Assertions.Expect(sure.Locator(".ground rect.s-a")).Not.ToHaveCountAsync(0);
        await Assertions.Expect(sure.Locator(".ground rect.s-other")).Not.ToHaveCountAsync(0);
        Assert.StartsWith("Ground that mole gains in ", await sure.Locator(".ground svg").GetAttributeAsync("aria-label"));
        await Assertions.Expect(sure.Locator(".fun i")).ToHaveCountAsync(2, new LocatorAssertionsToHaveCountOptions { Timeout = 10_000 });
        double later = await WidthAsync(open);
        Assert.True(later <= first, string.Create(CultureInfo.InvariantCulture, $"{first} to {later}"));

        // shares come behind the bar: seconds on a machine with nothing else to do
        await Assertions.Expect(open.Row(Mass).Locator(".s-half")).ToHaveCountAsync(1, new LocatorAssertionsToHaveCountOptions { Timeout = 40_000 });
        await Assertions.Expect(open.Row(Mass).Locator(".flip")).ToContainTextAsync("of 100");
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("odds");
        await open.PressAsync("One match");
        await Assertions.Expect(open.Row(Mass).Locator(".s-half")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_question_without_a_contest_has_strips_too()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, "pull-test.toml");
        await Assertions.Expect(open.Page.Locator(".row .strip rect").First).ToBeAttachedAsync();
        await Assertions.Expect(open.Page.Locator(".surebtn")).ToHaveCountAsync(0);
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("pull");
    }

    private static Task<double> WidthAsync(OpenPage open) => open.ValueAsync<double>("document.querySelector('.sure .s-range').getBoundingClientRect().width");
}
