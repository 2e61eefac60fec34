using Microsoft.Playwright;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>What goes wrong at a bench: cables, names, haste, two windows.</summary>
public class RoughTests(PageFixture fixture)
{
    private const string Mass = "a.chassis.mass";

    [Fact]
    public async Task A_lost_connection_is_told_and_the_last_value_goes_out_when_it_is_back()
    {
        Relay? relay = null;
        await using OpenPage open = await OpenPage.StartAsync(fixture, through: port => relay = new Relay(port));
        using Relay cable = relay!;
        await open.PartAsync("Body");
        cable.Cut();
        await Assertions.Expect(open.Page.Locator(".tell.bad").First).ToContainTextAsync("connection");
        await open.SlideAsync(Mass, 0.3);
        await open.SlideAsync(Mass, 0.5, release: true);
        await open.VerdictAsync("badger pushes mole");
        cable.Mend();
        await open.VerdictAsync("mole pushes badger");
        await Assertions.Expect(open.Page.GetByText("connection to PushSim is lost")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_hostile_name_is_shown_as_text()
    {
        const string Name = "<img src=x onerror=document.title=1>";
        await using OpenPage open = await OpenPage.StartAsync(fixture, prepare: folder =>
        {
            string robot = folder["robots/mole.toml"];
            File.WriteAllText(robot, File.ReadAllText(robot).Replace("name = \"mole\"", $"name = \"{Name}\"", StringComparison.Ordinal));
        });
        await Assertions.Expect(open.Page.Locator(".whobtn").First).ToContainTextAsync("<img src=x");
        await open.VerdictAsync(Name);
        await Assertions.Expect(open.Page.Locator("img")).ToHaveCountAsync(0);
        Assert.DoesNotContain("1", await open.Page.TitleAsync(), StringComparison.Ordinal);
        int wide = await open.ValueAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.Equal(0, wide);
    }

    [Fact]
    public async Task A_wrong_value_while_a_slider_moves_leaves_both_right()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PartAsync("Body");
        await open.SlideAsync(Mass, 0.5);
        await open.WriteAsync("a.chassis.width", "wide");
        await open.SlideAsync(Mass, 0.55, release: true);
        await Assertions.Expect(open.Row("a.chassis.width").GetByRole(AriaRole.Alert)).ToBeVisibleAsync();
        await Assertions.Expect(open.Page.Locator(".card.old")).ToHaveCountAsync(1);
        await open.WriteAsync("a.chassis.width", "130 mm");
        await Assertions.Expect(open.Page.Locator(".card.old")).ToHaveCountAsync(0);
        await open.VerdictAsync("mole pushes badger");
    }

    [Fact]
    public async Task Events_of_three_seconds_a_hundred_a_second_pile_nothing_up_and_the_last_one_wins()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PartAsync("Body");
        int under = 0, most = 0, sent = 0;
        open.Page.Request += (_, r) =>
        {
            if (r.Url.EndsWith("/api/change", StringComparison.Ordinal))
            {
                sent++;
                most = Math.Max(most, Interlocked.Increment(ref under));
            }
        };
        open.Page.RequestFinished += (_, r) => under -= r.Url.EndsWith("/api/change", StringComparison.Ordinal) ? 1 : 0;
        string last = await open.Row(Mass).Locator("input[type=range]").EvaluateAsync<string>("""
            async s => {
              const from = performance.now();
              s.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
              for (let i = 0; i < 300; i++) {
                const wait = from + 10 * i - performance.now();
                if (wait > 0) await new Promise(done => setTimeout(done, wait));
                s.value = String(Math.round(Number(s.max) * (0.5 + 0.49 * Math.sin(i / 40))));
                s.dispatchEvent(new Event('input', { bubbles: true }));
              }
              s.value = String(Math.round(0.6 * Number(s.max)));
              s.dispatchEvent(new Event('input', { bubbles: true }));
              s.dispatchEvent(new Event('change', { bubbles: true }));
              return document.querySelector("[data-row='a.chassis.mass'] input.f").value;
            }
            """);
        await Assertions.Expect(open.Row(Mass).Locator("input.f").First).Not.ToHaveValueAsync("1100 g");
        last = await open.Row(Mass).Locator("input.f").First.InputValueAsync();
        await open.Page.WaitForFunctionAsync("async last => { const s = await (await fetch('/api/state')).json(); const row = s.robots[0].parts.flatMap(p => p.rows).find(r => r.key === 'a.chassis.mass'); return row.text === last && Number(document.querySelector('.card').dataset.number) === s.number; }", last);
        Assert.InRange(sent, 6, 302);
        Assert.Equal(1, most);
    }

    [Fact]
    public async Task Two_windows_show_the_same_values_and_answers()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        IPage other = await open.AnotherAsync(fixture);
        await open.PartAsync("Body");
        await other.Locator(".partbtn").Filter(new LocatorFilterOptions { HasText = "Body" }).First.ClickAsync();
        await open.WriteAsync(Mass, "1350 g");
        await Assertions.Expect(other.Locator($"[data-row='{Mass}'] input.f").First).ToHaveValueAsync("1350 g");
        await Assertions.Expect(other.Locator(".card .say")).ToContainTextAsync("mole pushes badger");
        await other.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Undo" }).First.ClickAsync();
        await open.VerdictAsync("badger pushes mole");
        await Assertions.Expect(open.Row(Mass).Locator("input.f").First).ToHaveValueAsync("1100 g");
    }
}
