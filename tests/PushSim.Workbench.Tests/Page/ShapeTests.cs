using Microsoft.Playwright;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>Second use: shape the robot, by its drawing, by text and by sliders.</summary>
public class ShapeTests(PageFixture fixture)
{
    private const string Mass = "a.chassis.mass";

    [Fact]
    public async Task The_drawing_is_to_scale_from_both_sides()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);

        // mole.toml: wheels of 54 mm at x = +-55 mm; both views have one scale
        double[] side = await open.ValueAsync<double[]>("(() => { const w = [...document.querySelectorAll('.draw svg circle.wheel')].map(c => [Number(c.getAttribute('cx')), Number(c.getAttribute('r'))]); const x = w.map(c => c[0]); return [Math.max(...x) - Math.min(...x), w[0][1]]; })()");
        double[] top = await open.ValueAsync<double[]>("(() => { const w = [...document.querySelectorAll('.draw svg rect.wheel')]; const x = w.map(r => Number(r.getAttribute('x'))); return [Math.max(...x) - Math.min(...x), Number(w[0].getAttribute('width'))]; })()");
        Assert.Equal(110.0 / 27.0, side[0] / side[1], 2);
        Assert.Equal(110.0 / 54.0, top[0] / top[1], 2);
        Assert.Equal(side[1] * 2.0, top[1], 1);
    }

    [Fact]
    public async Task A_part_opens_by_its_button_and_by_its_shape()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PartAsync("Body");
        await Assertions.Expect(open.Row(Mass)).ToBeVisibleAsync();
        await Assertions.Expect(open.Page.Locator(".sort h2")).ToHaveTextAsync("Body");
        await open.Page.Locator(".draw svg rect.wheel").First.ClickAsync();
        await Assertions.Expect(open.Row("a.tyre.soft.kinetic_friction")).ToBeVisibleAsync();
        await Assertions.Expect(open.Row(Mass)).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_text_in_another_unit_is_accepted_and_kept()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PartAsync("Body");
        await open.WriteAsync(Mass, "2.9 lb");
        await open.VerdictAsync("mole pushes badger");
        await Assertions.Expect(open.Row(Mass).Locator("input.f").First).ToHaveValueAsync("2.9 lb");
        await Assertions.Expect(open.Page.Locator(".top .file")).ToContainTextAsync("1 change not saved");
    }

    [Fact]
    public async Task A_mistake_stands_at_its_field_and_the_last_answer_stays_marked_as_old()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        string before = await open.VerdictAsync();
        await open.PartAsync("Body");
        await open.WriteAsync(Mass, "1300 mm");
        ILocator error = open.Row(Mass).GetByRole(AriaRole.Alert);
        await Assertions.Expect(error).ToContainTextAsync("mass");
        await Assertions.Expect(open.Row(Mass).Locator("input.f").First).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(open.Row(Mass).Locator("input.f").First).ToHaveValueAsync("1300 mm");
        await Assertions.Expect(open.Page.Locator(".card.old .oldtag")).ToContainTextAsync("Old answer");

        // the closer look may have told the instant anew before the mistake: 1.88 or 1.89 s
        Assert.Equal(before.Split(" after ")[0], (await open.VerdictAsync()).Split(" after ")[0]);
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("error");
        await open.WriteAsync(Mass, "1300 g");
        await open.VerdictAsync("mole pushes badger");
        await Assertions.Expect(open.Page.Locator(".card.old")).ToHaveCountAsync(0);
        await Assertions.Expect(error).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Keys_alone_do_all_of_it()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.Page.Locator(".partbtn").Filter(new LocatorFilterOptions { HasText = "Body" }).FocusAsync();
        await open.Page.Keyboard.PressAsync("Enter");
        ILocator slider = open.Row(Mass).Locator("input[type=range]");
        await slider.FocusAsync();
        string outline = await open.ValueAsync<string>("getComputedStyle(document.querySelector('.ctl:has(input:focus-visible)')).outlineStyle");
        Assert.Equal("solid", outline);
        await open.Page.Keyboard.PressAsync("PageUp");
        await open.VerdictAsync("mole pushes badger");
        await Assertions.Expect(slider).ToHaveAttributeAsync("aria-valuetext", new System.Text.RegularExpressions.Regex("^14[0-9]{2} g"));
        await open.Page.Keyboard.PressAsync("Control+z");
        await open.VerdictAsync("badger pushes mole");
    }

    [Fact]
    public async Task The_line_of_a_value_in_its_file_is_shown()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PartAsync("Tyres");
        await open.Row("a.tyre.soft.kinetic_friction").Locator(".src button").ClickAsync();
        await Assertions.Expect(open.Page.Locator("dialog .diff")).ToContainTextAsync("kinetic_friction = \"0.85 ± 0.08\"");
    }
}
