using Microsoft.Playwright;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>Third use: the answer moves with the slider, beside what it was before.</summary>
public class AnswerTests(PageFixture fixture)
{
    private const string Mass = "a.chassis.mass";

    [Fact]
    public async Task Verdict_numbers_and_stage_follow_a_slider_and_the_design_before_stays()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.VerdictAsync("badger pushes mole");
        await open.PressAsync("Compare from here");
        await Assertions.Expect(open.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "End of comparing" })).ToBeVisibleAsync();
        await open.PartAsync("Body");
        await open.SlideAsync(Mass, 0.5);
        await open.VerdictAsync("mole pushes badger");
        await Assertions.Expect(open.Page.Locator(".card .why").First).ToContainTextAsync("badger");
        await Assertions.Expect(open.Page.Locator(".num p").First).ToContainTextAsync("before");
        await Assertions.Expect(open.Page.Locator(".stage .ghost .body")).ToHaveCountAsync(4);
        await Assertions.Expect(open.Page.Locator(".stage .verdict")).ToContainTextAsync("mole wins");
        await Assertions.Expect(open.Row(Mass).Locator(".was")).ToHaveCountAsync(1);

        // a live region says it once the hand rests
        await Assertions.Expect(open.Page.Locator("#spoken")).ToContainTextAsync("mole pushes badger");
        await open.KeepAsync("answer");
    }

    [Fact]
    public async Task A_click_or_a_drag_on_the_curve_and_the_slider_under_it_seek()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        LocatorBoundingBoxResult box = (await open.Page.Locator(".curves .u-over").BoundingBoxAsync())!;
        string end = await open.Page.Locator(".clock").InnerTextAsync();
        await open.Page.Mouse.MoveAsync(box.X + (0.25f * box.Width), box.Y + 40);
        await open.Page.Mouse.DownAsync();
        double quarter = await TimeAsync(open);
        await open.Page.Mouse.MoveAsync(box.X + (0.5f * box.Width), box.Y + 40, new MouseMoveOptions { Steps = 4 });
        double half = await TimeAsync(open);
        await open.Page.Mouse.UpAsync();
        Assert.Equal(2.0, half / quarter, 1);
        await Assertions.Expect(open.Page.Locator(".stage .verdict")).Not.ToContainTextAsync("wins");

        // ribbon, curve and slider have one axis of time
        LocatorBoundingBoxResult ribbon = (await open.Page.Locator(".rib").First.BoundingBoxAsync())!;
        Assert.Equal(box.X, ribbon.X, 0.6f);
        Assert.Equal(box.X + box.Width, ribbon.X + ribbon.Width, 0.6f);
        await open.Page.Locator(".time").FocusAsync();
        await open.Page.Keyboard.PressAsync("End");
        Assert.Equal(end, await open.Page.Locator(".clock").InnerTextAsync());
    }

    [Fact]
    public async Task Play_runs_to_the_end_and_stops()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        string before = await open.Page.Locator(".clock").InnerTextAsync();
        await open.PressAsync("Play");
        await Assertions.Expect(open.Page.Locator(".clock")).Not.ToHaveTextAsync(before);
        await Assertions.Expect(open.Page.Locator(".playbtn")).ToHaveTextAsync("Play");

        // the closer look may have moved the end by a hundredth meanwhile: where it stopped is where the slider ends
        string stopped = await open.Page.Locator(".clock").InnerTextAsync();
        await open.Page.Locator(".time").FocusAsync();
        await open.Page.Keyboard.PressAsync("End");
        Assert.Equal(stopped, await open.Page.Locator(".clock").InnerTextAsync());
    }

    private static async Task<double> TimeAsync(OpenPage open) => double.Parse((await open.Page.Locator(".clock").InnerTextAsync()).Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
}
