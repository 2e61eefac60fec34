using Microsoft.Playwright;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>First use: cards, and a robot from what one can measure.</summary>
public class StartPageTests(PageFixture fixture)
{
    [Fact]
    public async Task A_card_opens_its_file_and_the_way_back_is_there()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, file: null);
        await Assertions.Expect(open.Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Name = "Robots here" })).ToBeVisibleAsync();
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("start");
        await open.PressAsync("Does a light robot on grippy tyres push a heavy one");
        await open.VerdictAsync("badger pushes mole");
        await open.PressAsync("PushSim");
        await open.PressAsync("Back to");
        await open.VerdictAsync("badger pushes mole");
        await open.PressAsync("PushSim");
        await open.PressAsync("mole robots/mole.toml");
        await open.AnswerAsync();
        await Assertions.Expect(open.Page.Locator(".whobtn").First).ToContainTextAsync("mole");
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("robot");
    }

    [Fact]
    public async Task A_robot_of_measured_values_runs_and_a_mistake_stands_at_its_field()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, file: null);
        await open.Page.Locator(".measure summary").ClickAsync();
        ILocator mass = open.Page.GetByLabel("mass of the whole robot");
        await mass.FillAsync("900 mm");
        await open.PressAsync("Make this robot");
        await Assertions.Expect(open.Page.Locator(".measure .err")).ToContainTextAsync("measures length");
        await Assertions.Expect(mass).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(mass).ToBeFocusedAsync();
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("measure");
        await mass.FillAsync("900 g");
        await open.PressAsync("Make this robot");
        await open.AnswerAsync();
        await open.PartAsync("Body");
        await Assertions.Expect(open.Row("a.chassis.mass").Locator("input.f").First).ToHaveValueAsync("900 g");
        await open.KeepAsync("made");
    }

    [Fact]
    public async Task The_start_page_fits_a_phone()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture, file: null, width: 360);
        await Assertions.Expect(open.Page.Locator(".tile").First).ToBeVisibleAsync();
        Assert.Equal(0, await open.ValueAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth"));
        Assert.Empty(await open.ViolationsAsync());
    }
}
