using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Xunit;

namespace PushSim.Cli.Tests.Report;

/// <summary>The report page in a real browser; skipped, not failed, where there is none.</summary>
public sealed partial class ReportBrowserTests(ReportFixture fixture)
{
    [Theory]
    [InlineData("launch-soft")]
    [InlineData("drag-test")]
    [InlineData("arc")]
    [InlineData("wall-push")]
    public async Task A_page_loads_without_a_word_on_the_console_and_asks_for_nothing(string scenario)
    {
        Browser browser = await fixture.BrowserAsync();
        string file = fixture.Page("run " + scenario);
        await using BrowserPage page = await BrowserPage.OpenAsync(browser, file);
        await page.SlideAsync(0.6);
        Assert.True(await page.EvaluateAsync<bool>("!document.getElementById('player').hidden"));
        await page.KeepAsync(scenario);
        Assert.Empty(page.Console);
        Assert.Equal([new Uri(file).AbsoluteUri], page.Requests);
    }

    // Frames of the replay are samples of the history: equal to its rounding, 0.005 mm and 0.05 mrad, and to the three digits of the page.
    // A time between two frames (5 ms apart, smooth there) is within a few hundredths of a millimetre.
    [Theory]
    [InlineData(0.0, 0.01)]
    [InlineData(0.2, 0.01)]
    [InlineData(0.215, 0.01)]
    [InlineData(1.5, 0.01)]
    [InlineData(2.123, 0.05)]
    [InlineData(3.0, 0.01)]
    public async Task The_slider_puts_the_robots_where_the_history_has_them(double time, double millimetres)
    {
        BrowserPage page = await fixture.ShovePageAsync();
        await page.SlideAsync(time);
        int i = Array.FindIndex(fixture.History["time_s"], t => Math.Abs(t - time) < 1e-9);
        Assert.True(i >= 0);
        (string Prefix, double Frame, double Turn)[] robots = [("", 1.0, 0.0), ("opponent_", -1.0, 180.0)];
        for (int k = 0; k < robots.Length; k++)
        {
            double[] pose = Pose(await page.EvaluateAsync<string>($"document.getElementById('robot-{k}').getAttribute('transform')"));
            (string prefix, double frame, double turn) = robots[k];
            Assert.Equal(1000.0 * frame * fixture.History[prefix + "x_m"][i], pose[0], millimetres);
            Assert.Equal(1000.0 * frame * fixture.History[prefix + "y_m"][i], pose[1], millimetres);
            Assert.Equal(turn + (fixture.History[prefix + "heading_rad"][i] * 180.0 / Math.PI), pose[2], 0.02);
        }

        Assert.Empty(page.Console);
    }

    // What the transform says must be what is seen: the drawn body's middle, out of the page's pixels back to millimetres
    [Fact]
    public async Task The_picture_shows_what_the_transform_says()
    {
        BrowserPage page = await fixture.ShovePageAsync();
        await page.SlideAsync(1.0);
        int i = Array.IndexOf(fixture.History["time_s"], 1.0);
        double[] place = await page.EvaluateAsync<double[]>(
            "(() => { const s = document.getElementById('stage'), c = document.querySelector('#robot-0 .centre').getBoundingClientRect();"
            + " const p = new DOMPoint(c.x + c.width / 2, c.y + c.height / 2).matrixTransform(s.getScreenCTM().inverse()); return [p.x, -p.y]; })()");
        Assert.Equal(1000.0 * fixture.History["x_m"][i], place[0], 0.5);
        Assert.Equal(1000.0 * fixture.History["y_m"][i], place[1], 0.5);
    }

    [Fact]
    public async Task Wheels_show_load_and_slip_of_the_history()
    {
        BrowserPage page = await fixture.ShovePageAsync();
        await page.SlideAsync(1.0);
        int i = Array.IndexOf(fixture.History["time_s"], 1.0);
        string[] row = await page.EvaluateAsync<string[]>("[...[...document.querySelectorAll('#wheels tbody tr')].find(r => r.cells[1].textContent === 'front left').cells].map(c => c.textContent)");
        Assert.Equal(["mole", "front left"], row[..2]);
        Assert.Equal(fixture.History["wheel_front_left_load_n"][i], double.Parse(row[2], System.Globalization.CultureInfo.InvariantCulture), 0.0101);
        Assert.Equal(fixture.History["wheel_front_left_tread_slip_speed_m_per_s"][i], double.Parse(row[3], System.Globalization.CultureInfo.InvariantCulture), 0.0101);
    }

    // The mark's place against the plot's own axis: its share of the way between the first and last tick of time
    [Fact]
    public async Task The_time_is_marked_in_every_plot_over_time()
    {
        BrowserPage page = await fixture.ShovePageAsync();
        await page.SlideAsync(1.5);
        const string marks =
            "[...document.querySelectorAll('.plot.desk[data-from]')].map(s => { const n = s.querySelector('.now').getBoundingClientRect(), b = s.getBoundingClientRect();"
            + " const tick = t => { const e = [...s.querySelectorAll('text')].find(x => x.textContent === t).getBoundingClientRect(); return e.x + e.width / 2; };"
            + " return (n.x + n.width / 2 - tick('0')) / (tick('3') - tick('0')); })";
        double[] shares = await page.EvaluateAsync<double[]>(marks.Replace("x.textContent === t)", "x.textContent === t && x.getAttribute('text-anchor') === 'middle')"));
        Assert.Equal(9, shares.Length);
        Assert.All(shares, s => Assert.Equal(0.5, s, 0.003));
    }

    [Fact]
    public async Task Keys_and_buttons_drive_the_replay()
    {
        await using BrowserPage page = await BrowserPage.OpenAsync(await fixture.BrowserAsync(), fixture.Shove);
        await page.EvaluateAsync<bool>("(document.getElementById('time').focus(), true)");
        Assert.Equal("3.000 s", await Clock(page));
        await page.PressAsync("Home");
        await page.PressAsync("ArrowRight");
        Assert.Equal("0.005 s", await Clock(page));
        await page.PressAsync("End");
        Assert.Equal("3.000 s", await Clock(page));
        await page.PressAsync("ArrowLeft");
        Assert.Equal("2.995 s", await Clock(page));
        await page.PressAsync("Home");
        Assert.Equal("0.000 s", await Clock(page));
        await page.PressAsync("Space");
        Assert.Equal("Pause", await page.EvaluateAsync<string>("document.getElementById('play').textContent"));
        await Task.Delay(600);
        await page.EvaluateAsync<bool>("(document.getElementById('play').click(), true)");
        string stopped = await Clock(page);
        Assert.NotEqual("0.000 s", stopped);
        await Task.Delay(200);
        Assert.Equal(stopped, await Clock(page));
        Assert.Equal("Play", await page.EvaluateAsync<string>("document.getElementById('play').textContent"));
        Assert.Empty(page.Console);
    }

    [Fact]
    public async Task Who_asks_for_less_motion_sees_still_pictures()
    {
        await using BrowserPage page = await BrowserPage.OpenAsync(await fixture.BrowserAsync(), fixture.Shove, features: [("prefers-reduced-motion", "reduce")]);
        Assert.Equal("auto", await page.EvaluateAsync<string>("getComputedStyle(document.documentElement).scrollBehavior"));
        await page.EvaluateAsync<bool>("(document.getElementById('speed').selectedIndex = 4, document.getElementById('play').click(), true)");
        await Task.Delay(700);
        Assert.EndsWith("00 s", await Clock(page));
        Assert.NotEqual("0.000 s", await Clock(page));
    }

    [Fact]
    public async Task Without_scripts_all_but_the_replay_is_there()
    {
        await using BrowserPage page = await BrowserPage.OpenAsync(await fixture.BrowserAsync(), fixture.Shove, hasScript: false);
        JsonNode tree = await page.SendAsync("Accessibility.getFullAXTree");
        string[] names = [.. Named(tree).Select(n => n.Name)];
        Assert.Contains(names, n => n.Contains("needs JavaScript"));
        Assert.Contains("mole gains", string.Join(' ', names));
        Assert.Contains("What limits the push", names);
        Assert.DoesNotContain("Play", names);
        Assert.Equal(5, Named(tree).Count(n => n.Role == "image" && n.Name.StartsWith("Plot: ", StringComparison.Ordinal)));
        await page.KeepAsync("no-script");
    }

    // Names as the browser hands them to a screen reader
    [Fact]
    public async Task Everything_a_screen_reader_meets_has_a_name()
    {
        BrowserPage page = await fixture.ShovePageAsync();
        (string Role, string Name)[] nodes = Named(await page.SendAsync("Accessibility.getFullAXTree"));
        string[] roles = ["button", "slider", "combobox", "checkbox", "image", "link", "table", "heading", "region", "navigation"];
        Assert.All(nodes.Where(n => roles.Contains(n.Role)), n => Assert.NotEqual("", n.Name));
        Assert.All(roles, r => Assert.Contains(nodes, n => n.Role == r));
        int[] levels = await page.EvaluateAsync<int[]>("[...document.querySelectorAll('h1,h2,h3')].map(h => Number(h.tagName[1]))");
        Assert.Equal(1, levels[0]);
        Assert.Equal(1, levels.Count(l => l == 1));
        Assert.All(levels.Zip(levels.Skip(1)), p => Assert.True(p.Second <= p.First + 1));
    }

    // Ratios of WCAG 2.1: 4.5 for text, 3 for lines; computed here by its formula out of the page's own colours
    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public async Task Colours_stand_out_from_their_ground(string scheme)
    {
        await using BrowserPage page = await BrowserPage.OpenAsync(await fixture.BrowserAsync(), fixture.Shove, features: [("prefers-color-scheme", scheme)]);
        await page.SlideAsync(1.0);
        await page.KeepAsync(scheme);
        Dictionary<string, string> c = await page.EvaluateAsync<Dictionary<string, string>>(
            "Object.fromEntries(['paper','card','floor','ink','soft','accent','onaccent','warn','warnbg','rule','ghost','now','mark','c0','c1','t0','t1','c2','c3','c6','c7'].map(n => [n, getComputedStyle(document.documentElement).getPropertyValue('--' + n).trim()]))");
        Assert.Equal(scheme == "dark", Luminance(c["paper"]) < 0.2);
        Assert.All(new[] { "ink", "soft", "accent", "warn" }, n => Assert.True(Contrast(c[n], c["paper"]) >= 4.5, $"{n}: {Contrast(c[n], c["paper"]):0.0}"));
        Assert.All(new[] { "ink", "soft", "t0", "t1" }, n => Assert.True(Contrast(c[n], c["card"]) >= 4.5, $"{n}: {Contrast(c[n], c["card"]):0.0}"));
        Assert.All(new[] { "ink", "t0", "t1" }, n => Assert.True(Contrast(c[n], c["floor"]) >= 4.5, $"{n}: {Contrast(c[n], c["floor"]):0.0}"));
        Assert.True(Contrast(c["warn"], c["warnbg"]) >= 4.5);
        Assert.True(Contrast(c["ink"], c["warnbg"]) >= 4.5);
        Assert.All(new[] { "rule", "ghost", "now", "mark", "c0", "c1", "c2", "c3", "c6", "c7" }, n => Assert.True(Contrast(c[n], c["card"]) >= 3.0, $"{n}: {Contrast(c[n], c["card"]):0.0}"));
        Assert.True(Contrast(c["onaccent"], c["accent"]) >= 4.5);
    }

    [Fact]
    public async Task A_telephone_shows_it_without_sideways_scrolling_and_with_letters_one_can_read()
    {
        await using BrowserPage page = await BrowserPage.OpenAsync(await fixture.BrowserAsync(), fixture.Shove, width: 390);
        await page.SlideAsync(1.0);
        await page.KeepAsync("phone");
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 390);
        double[] letters = await page.EvaluateAsync<double[]>(
            "[...document.querySelectorAll('.plot text')].filter(t => t.getClientRects().length > 0).map(t => Number(t.getAttribute('font-size')) * t.ownerSVGElement.getBoundingClientRect().width / t.ownerSVGElement.viewBox.baseVal.width)");
        Assert.NotEmpty(letters);
        Assert.True(letters.Min() >= 10.0, $"{letters.Min():0.0} px");
        double[] outside = await page.EvaluateAsync<double[]>(
            "[...document.querySelectorAll('.plot.phone')].flatMap(s => { const b = s.getBoundingClientRect(); return [...s.querySelectorAll('text')].map(t => { const r = t.getBoundingClientRect(); return Math.max(b.left - r.left, r.right - b.right, b.top - r.top, r.bottom - b.bottom); }); })");
        Assert.True(outside.Max() <= 2.0, $"text {outside.Max():0.0} px outside its plot");
        double[] buttons = await page.EvaluateAsync<double[]>("[...document.querySelectorAll('.bar button, .bar select, .bar label, #marks button')].map(e => e.getBoundingClientRect().height)");
        Assert.All(buttons, h => Assert.True(h >= 44.0));
    }

    [Fact]
    public async Task It_prints_on_white_without_controls_and_no_table_is_cut()
    {
        await using BrowserPage page = await BrowserPage.OpenAsync(await fixture.BrowserAsync(), fixture.Shove, width: 688, features: [("prefers-color-scheme", "dark")], media: "print");
        await page.SlideAsync(1.0);
        Assert.Equal("rgb(255, 255, 255)", await page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor"));
        Assert.Equal("none", await page.EvaluateAsync<string>("getComputedStyle(document.querySelector('.bar')).display"));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 688);
        await page.KeepAsync("print");
        (int sheets, byte[] pdf) = await page.PrintAsync();
        Assert.InRange(sheets, 1, 4);
        await BrowserPage.KeepAsync("print.pdf", pdf);
    }

    // Names and a question that try to run, to fetch, to leave their place and to turn the line
    [Fact]
    public async Task A_hostile_name_does_nothing()
    {
        Browser browser = await fixture.BrowserAsync();
        string[] evil = ["</script><script>window.hit=1</script>", "<img src=x onerror=window.hit=2>", "\\\" onload=\\\"window.hit=3\\u0007\\u202E", "<style>*{display:none}</style>-->"];
        string folder = Directory.CreateDirectory(Path.Combine(fixture.Folder, "evil")).FullName;
        foreach ((string robot, int i) in new[] { "mole", "wombat" }.Select((r, i) => (r, i)))
        {
            string text = File.ReadAllText(Path.Combine(Repository.Root, "scenarios", "robots", robot + ".toml"));
            string renamed = RobotName().Replace(text, $"name = \"{evil[i]}\"", 1);
            Assert.NotEqual(text, renamed);
            File.WriteAllText(Path.Combine(folder, robot + ".toml"), renamed);
        }

        string scenario = File.ReadAllText(Repository.Scenario("shove-off-centre")).Replace("robots/", "", StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(folder, "evil.toml"), Regex.Replace(scenario, "question = .*", $"question = \"{evil[2]}{evil[3]}\""));
        Cli cli = Cli.Run("run", Path.Combine(folder, "evil.toml"), "--report", "--quiet", "--out", Path.Combine(folder, "out"));
        Assert.Equal("", cli.Error);
        await using BrowserPage page = await BrowserPage.OpenAsync(browser, Path.Combine(folder, "out", "report.html"));
        await page.SlideAsync(1.0);
        await page.KeepAsync("hostile");
        Assert.Equal("undefined", await page.EvaluateAsync<string>("typeof window.hit"));
        Assert.Equal(2, await page.EvaluateAsync<int>("document.querySelectorAll('script').length"));
        Assert.Equal(0, await page.EvaluateAsync<int>("document.querySelectorAll('img, main style, [onload], [onerror]').length"));
        Assert.Contains("<script>", await page.EvaluateAsync<string>("document.body.innerText"));
        Assert.DoesNotContain('\u202E', await page.EvaluateAsync<string>("document.documentElement.textContent"));
        Assert.Empty(page.Console);
        Assert.Single(page.Requests);
    }

    private static Task<string> Clock(BrowserPage page) => page.EvaluateAsync<string>("document.getElementById('clock').textContent");

    private static double[] Pose(string transform) =>
        [.. Number().Matches(transform).Select(m => double.Parse(m.Value, System.Globalization.CultureInfo.InvariantCulture))];

    private static (string Role, string Name)[] Named(JsonNode tree) =>
    [
        .. tree["nodes"]!.AsArray().Where(n => n!["ignored"]?.GetValue<bool>() != true)
            .Select(n => (n!["role"]?["value"]?.ToString() ?? "", n["name"]?["value"]?.ToString() ?? "")),
    ];

    private static double Contrast(string a, string b)
    {
        (double low, double high) = (Math.Min(Luminance(a), Luminance(b)), Math.Max(Luminance(a), Luminance(b)));
        return (high + 0.05) / (low + 0.05);
    }

    private static double Luminance(string colour)
    {
        double[] c = [.. Enumerable.Range(0, 3).Select(i => Convert.ToInt32(colour.Substring(1 + (2 * i), 2), 16) / 255.0)
            .Select(v => v <= 0.03928 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4))];
        return (0.2126 * c[0]) + (0.7152 * c[1]) + (0.0722 * c[2]);
    }

    [GeneratedRegex(@"-?\d+(\.\d+)?")]
    private static partial Regex Number();

    [GeneratedRegex("(?m)^name = .*$")]
    private static partial Regex RobotName();
}
