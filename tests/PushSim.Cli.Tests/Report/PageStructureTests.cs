using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace PushSim.Cli.Tests.Report;

/// <summary>How every page is built, looked at in a browser: the answer and its picture first, what few need folded, no violation of axe-core's rules (WCAG 2.2 A and AA, and its best practices).</summary>
public sealed partial class PageStructureTests(ReportFixture fixture)
{
    // Bottom edge that the top of the first picture may not pass [px].
    private const double FirstPicture = 700.0;

    public static TheoryData<string> Pages => ["run shove-heavy-grippy", "run spot-turn", "run pull-test", "run tilted-board", "limits", "fit", "odds", "sweep", "sweep of two", "ladder"];

    // at a desk by all rules; on a telephone in the dark by those that look at colour and width; sheets of A4 as a browser's own printing makes them
    [Theory]
    [MemberData(nameof(Pages))]
    public async Task The_answer_comes_first_axe_finds_nothing_and_it_prints_on_four_sheets(string name)
    {
        Browser browser = await fixture.BrowserAsync();
        string file = fixture.Page(name);
        foreach ((int width, string scheme) in new[] { (1280, "light"), (390, "dark") })
        {
            bool isDesk = width > 600;
            await using BrowserPage page = await BrowserPage.OpenAsync(browser, file, width: width, features: [("prefers-color-scheme", scheme)]);
            await page.KeepAsync($"{name.Replace(' ', '-')}-{width}-{scheme}");
            await page.FitsAsync(file, width);
            double[] first = await page.EvaluateAsync<double[]>("['.say', '.hero .plot, .nums, .plot'].map(q => [...document.querySelectorAll(q)].find(e => e.checkVisibility()).getBoundingClientRect().top)");
            Assert.True(first[0] < first[1]);
            Assert.InRange(first[1], 0.0, FirstPicture);
            Assert.True(await page.EvaluateAsync<double>("document.querySelector('.say').getBoundingClientRect().bottom") < FirstPicture);
            Assert.Equal(0, await page.EvaluateAsync<int>("document.querySelectorAll('#inputs details[open], #estimates details[open]').length"));
            Assert.Equal(0, await page.EvaluateAsync<int>("[...document.querySelectorAll('#inputs table, #estimates li')].filter(e => e.checkVisibility()).length"));
            Assert.True(await page.EvaluateAsync<int>("document.querySelectorAll('#plots > figure').length") <= 5);
            Assert.InRange(await page.EvaluateAsync<int>("document.querySelectorAll('.num').length"), 1, 3);
            Assert.Empty(await page.ViolationsAsync(isDesk ? [] : Axe.OfColourAndWidth));

            // no picture names a value by its key
            string[] words = await page.EvaluateAsync<string[]>("[...document.querySelectorAll('svg.plot text, figcaption, figure h3, .card')].map(e => e.textContent)");
            Assert.DoesNotContain(words, w => RawKey().IsMatch(w));
            if (isDesk)
            {
                (int sheets, byte[] pdf) = await page.PrintAsync();
                await BrowserPage.KeepAsync(name.Replace(' ', '-') + ".pdf", pdf);
                Assert.InRange(sheets, 1, 4);
            }
        }

        // the other two for the eye alone
        if (Environment.GetEnvironmentVariable("PUSHSIM_SCREENSHOTS") is { Length: > 0 })
        {
            foreach ((int width, string scheme) in new[] { (1280, "dark"), (390, "light") })
            {
                await using BrowserPage page = await BrowserPage.OpenAsync(browser, file, width: width, features: [("prefers-color-scheme", scheme)]);
                await page.KeepAsync($"{name.Replace(' ', '-')}-{width}-{scheme}");
            }
        }
    }

    // winner, why and how sure from the card alone
    [Fact]
    public async Task The_first_screen_of_a_shove_tells_winner_reason_and_how_sure()
    {
        await using BrowserPage page = await BrowserPage.OpenAsync(await fixture.BrowserAsync(), fixture.Page("run shove-heavy-grippy"), width: 1280);
        string seen = await page.EvaluateAsync<string>("[...document.querySelectorAll('.card *')].filter(e => e.children.length === 0 && e.getBoundingClientRect().bottom < 800).map(e => e.textContent).join(' ') + document.querySelector('.card').innerText");
        Assert.Contains("badger pushes mole back over its line", seen);
        Assert.Contains("held back by their tyres", seen);
        Assert.Contains("How sure:", seen);
        Assert.True(await page.EvaluateAsync<double>("document.querySelector('.card').getBoundingClientRect().bottom") <= 800.0);
    }

    [Fact]
    public async Task The_replay_rests_at_its_end_and_a_click_on_a_curve_goes_there()
    {
        await using BrowserPage page = await BrowserPage.OpenAsync(await fixture.BrowserAsync(), fixture.Shove, width: 1280);
        Assert.Equal("3.000 s", await page.EvaluateAsync<string>("document.getElementById('clock').textContent"));
        Assert.Contains("mole gains", await page.EvaluateAsync<string>("document.getElementById('said').textContent"));
        await page.ClickAsync(".hero .plot", 0.5, 0.5);
        double time = JsonDocument.Parse((await page.EvaluateAsync<string>("document.getElementById('clock').textContent")).Replace(" s", "", StringComparison.Ordinal)).RootElement.GetDouble();
        Assert.InRange(time, 0.9, 1.7);
        Assert.True(await page.EvaluateAsync<int>("document.querySelectorAll('#side .body').length") == 2);
        Assert.Empty(page.Console);
    }

    // advice has values such as this one
    [Fact]
    public async Task A_long_value_leaves_room_for_its_label_on_a_telephone()
    {
        await using BrowserPage page = await BrowserPage.OpenAsync(await fixture.BrowserAsync(), fixture.Page("limits"), width: 390);
        await page.EvaluateAsync<string>("document.querySelector('.num b').textContent = '+100 (+56 to +100) (16 g, price 12)'");
        double[] sizes = await page.EvaluateAsync<double[]>("[...document.querySelector('.num').children].slice(0, 2).flatMap(e => [e.getBoundingClientRect().width, e.getBoundingClientRect().right])");
        Assert.True(sizes[0] >= 120.0, $"label {sizes[0]:0} px wide");
        Assert.True(Math.Max(sizes[1], sizes[3]) <= 390.0);
    }

    [Fact]
    public async Task A_block_to_paste_can_be_copied()
    {
        await using BrowserPage page = await BrowserPage.OpenAsync(await fixture.BrowserAsync(), fixture.Page("fit"), width: 1280);
        await page.ClickAsync(".copy", 0.5, 0.5);
        await Task.Delay(100);
        Assert.NotEqual("Copy", await page.EvaluateAsync<string>("document.querySelector('.copy').textContent"));
        Assert.Empty(page.Console);
    }

    // "drive.*.gear_ratio", "pull_plateau_n"; no file's name and no figure such as 0.5
    [GeneratedRegex(@"\b[a-z]+(\.[a-z*]+)*[._][a-z*]+_[a-z_]+\b|\b[a-z]+\.\*\.")]
    private static partial Regex RawKey();
}
