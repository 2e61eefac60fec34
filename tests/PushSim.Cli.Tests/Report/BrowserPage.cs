using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.Playwright;
using Xunit;

namespace PushSim.Cli.Tests.Report;

/// <summary>One page of a <see cref="Browser"/>, with what it complained of and what it asked for.</summary>
internal sealed class BrowserPage : IAsyncDisposable
{
    private readonly List<string> _requests = [];
    private readonly List<string> _console = [];
    private readonly IPage _page;

    private BrowserPage(IPage page) => _page = page;

    /// <summary>Everything the page asked for, its own file first.</summary>
    public IReadOnlyList<string> Requests => _requests;

    /// <summary>Errors and messages of its console.</summary>
    public IReadOnlyList<string> Console => _console;

    /// <summary>Opens a file.</summary>
    /// <param name="browser">The browser.</param>
    /// <param name="file">Its path.</param>
    /// <param name="width">Width of the window [px].</param>
    /// <param name="features">Media features: "prefers-color-scheme", "prefers-reduced-motion".</param>
    /// <param name="media">"print" for a page as it is printed.</param>
    /// <param name="hasScript">Whether scripts may run.</param>
    public static async Task<BrowserPage> OpenAsync(
        Browser browser, string file, int width = 1100, (string Name, string Value)[]? features = null, string media = "", bool hasScript = true)
    {
        string Feature(string name) => (features ?? []).FirstOrDefault(f => f.Name == name).Value ?? "";
        IBrowserContext context = await browser.Inner.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = width < 600 ? 844 : 900 },
            IsMobile = width < 600,
            HasTouch = width < 600,
            JavaScriptEnabled = hasScript,
            ColorScheme = Feature("prefers-color-scheme") == "dark" ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = Feature("prefers-reduced-motion") == "reduce" ? ReducedMotion.Reduce : ReducedMotion.NoPreference,
        });
        var page = new BrowserPage(await context.NewPageAsync());
        page._page.Request += (_, r) => page._requests.Add(r.Url);
        page._page.Console += (_, m) => page._console.Add(m.Text);
        page._page.PageError += (_, e) => page._console.Add(e);
        if (media.Length > 0)
        {
            await page._page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = media == "print" ? Media.Print : Media.Screen });
        }

        await page._page.GotoAsync(new Uri(file).AbsoluteUri);
        return page;
    }

    /// <summary>Closes the page with all that it holds.</summary>
    public async ValueTask DisposeAsync() => await _page.Context.CloseAsync();

    /// <summary>A command of the browser's own protocol, for what has no other way.</summary>
    public async Task<JsonNode> SendAsync(string method, object? parameters = null)
    {
        ICDPSession session = await _page.Context.NewCDPSessionAsync(_page);
        JsonElement? answer = await session.SendAsync(method, parameters is null ? [] : JsonSerializer.SerializeToElement(parameters).EnumerateObject().ToDictionary(p => p.Name, p => (object)p.Value));
        return JsonNode.Parse(answer!.Value.GetRawText())!;
    }

    /// <summary>Value of an expression in the page.</summary>
    public async Task<T> EvaluateAsync<T>(string expression) => (await _page.EvaluateAsync<JsonElement>("async e => { const v = await (0, eval)(e); return v; }", expression)).Deserialize<T>()!;

    /// <summary>What axe-core finds against WCAG 2.2 A and AA and its best practices: rule, and where.</summary>
    /// <param name="rules">Rules to try; none: all.</param>
    public Task<string[]> ViolationsAsync(params string[] rules) => Axe.ViolationsAsync(_page, rules);

    /// <summary>It loaded in silence and asked for nothing else; nothing is wider than the window, and no text lies outside its picture.</summary>
    /// <param name="file">What was opened.</param>
    /// <param name="width">Width of the window [px].</param>
    public async Task FitsAsync(string file, int width)
    {
        Assert.True(new FileInfo(file).Length < 1_500_000);
        Assert.Empty(Console);
        Assert.Equal([new Uri(file).AbsoluteUri], Requests);
        Assert.True(await EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
        Assert.Equal(0, await EvaluateAsync<int>("[...document.querySelectorAll('pre')].filter(p => p.scrollWidth > p.clientWidth).length"));

        // a table that goes on beyond its box has the shadow that says so: covers that scroll with it over shadows that stay
        Assert.Equal(0, await EvaluateAsync<int>("[...document.querySelectorAll('.scroll')].filter(b => b.scrollWidth > b.clientWidth && getComputedStyle(b).backgroundAttachment !== 'local, local, scroll, scroll').length"));
        string kind = width > 600 ? "desk" : "phone";
        string[] outside = await EvaluateAsync<string[]>(
            $"[...document.querySelectorAll('.plot.{kind}')].flatMap(s => {{ const b = s.getBoundingClientRect(); return [...s.querySelectorAll('text')].map(t => {{ const r = t.getBoundingClientRect(); return [Math.max(b.left - r.left, r.right - b.right, b.top - r.top, r.bottom - b.bottom), t.textContent]; }}); }}).filter(t => t[0] > 2).map(t => t[1])");
        Assert.Empty(outside);
        Assert.True(await EvaluateAsync<int>($"document.querySelectorAll('.plot.{kind} text').length") > 0);
    }

    /// <summary>Moves the slider as a hand would.</summary>
    public Task SlideAsync(double time) => EvaluateAsync<bool>(string.Create(
        CultureInfo.InvariantCulture,
        $"(() => {{ const s = document.getElementById('time'); s.value = '{time:R}'; s.dispatchEvent(new Event('input', {{ bubbles: true }})); return true; }})()"));

    /// <summary>Presses a key in the element that has the focus.</summary>
    public Task PressAsync(string key) => _page.Keyboard.PressAsync(key);

    /// <summary>Clicks a place of an element, as shares of its size.</summary>
    public async Task ClickAsync(string selector, double across, double down)
    {
        ILocator element = _page.Locator(selector).Locator("visible=true").First;
        LocatorBoundingBoxResult box = (await element.BoundingBoxAsync())!;
        await element.ClickAsync(new LocatorClickOptions { Position = new Position { X = (float)(across * box.Width), Y = (float)(down * box.Height) } });
    }

    /// <summary>Keeps a picture of the page in the folder of PUSHSIM_SCREENSHOTS, if that is set: whole, its first screen, and both in grey.</summary>
    public async Task KeepAsync(string name)
    {
        if (Environment.GetEnvironmentVariable("PUSHSIM_SCREENSHOTS") is not { Length: > 0 } folder)
        {
            return;
        }

        Directory.CreateDirectory(folder);
        await _page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + ".png"), FullPage = true });
        await _page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + "-first.png") });
        await _page.EvaluateAsync("document.documentElement.style.filter = 'grayscale(1)'");
        await _page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + "-grey.png") });
        await _page.EvaluateAsync("document.documentElement.style.filter = ''");
    }

    /// <summary>The page as the browser prints it on A4, and its sheets.</summary>
    public async Task<(int Sheets, byte[] Pdf)> PrintAsync()
    {
        JsonNode printed = await SendAsync("Page.printToPDF", new { printBackground = false, paperWidth = 8.27, paperHeight = 11.69 });
        byte[] pdf = Convert.FromBase64String(printed["data"]!.GetValue<string>());
        string text = System.Text.Encoding.Latin1.GetString(pdf);
        if (!text.StartsWith("%PDF", StringComparison.Ordinal))
        {
            throw new InvalidDataException("the browser printed no PDF");
        }

        // a page is a dictionary of type Page (ISO 32000-1, 7.7.3.3, from memory)
        return (System.Text.RegularExpressions.Regex.Count(text, @"/Type\s*/Page\b"), pdf);
    }

    /// <summary>Keeps a file for the eye where PUSHSIM_SCREENSHOTS names a folder.</summary>
    public static async Task KeepAsync(string name, byte[] file)
    {
        if (Environment.GetEnvironmentVariable("PUSHSIM_SCREENSHOTS") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            await File.WriteAllBytesAsync(Path.Combine(folder, name), file);
        }
    }
}
