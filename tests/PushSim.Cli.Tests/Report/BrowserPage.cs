using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace PushSim.Cli.Tests.Report;

/// <summary>One page of a <see cref="Browser"/>, with what it complained of and what it asked for.</summary>
internal sealed class BrowserPage
{
    private readonly Browser _browser;
    private readonly string _session;

    private BrowserPage(Browser browser, string session) => (_browser, _session) = (browser, session);

    /// <summary>Everything the page asked for, its own file first.</summary>
    public IReadOnlyList<string> Requests => [.. Named("Network.requestWillBeSent").Select(e => e["request"]!["url"]!.GetValue<string>())];

    /// <summary>Errors and messages of its console.</summary>
    public IReadOnlyList<string> Console =>
    [
        .. Named("Runtime.exceptionThrown").Select(e => e.ToJsonString()),
        .. Named("Runtime.consoleAPICalled").Select(e => e.ToJsonString()),
        .. Named("Log.entryAdded").Select(e => e.ToJsonString()),
    ];

    /// <summary>Opens a file.</summary>
    /// <param name="browser">The browser.</param>
    /// <param name="file">Its path.</param>
    /// <param name="width">Width of the window [px].</param>
    /// <param name="features">Media features, for example ("prefers-color-scheme", "dark").</param>
    /// <param name="media">"print" for a page as it is printed.</param>
    /// <param name="hasScript">Whether scripts may run.</param>
    public static async Task<BrowserPage> OpenAsync(
        Browser browser, string file, int width = 1100, (string Name, string Value)[]? features = null, string media = "", bool hasScript = true)
    {
        var page = new BrowserPage(browser, await browser.OpenAsync());
        foreach (string domain in new[] { "Page", "Runtime", "Log", "Network" })
        {
            await page.SendAsync(domain + ".enable");
        }

        await page.SendAsync("Emulation.setDeviceMetricsOverride", new { width, height = 900, deviceScaleFactor = 1, mobile = width < 600 });
        await page.SendAsync("Emulation.setEmulatedMedia", new { media, features = (features ?? []).Select(f => new { name = f.Name, value = f.Value }) });
        if (!hasScript)
        {
            await page.SendAsync("Emulation.setScriptExecutionDisabled", new { value = true });
        }

        await page.SendAsync("Page.navigate", new { url = new Uri(file).AbsoluteUri });
        var clock = Stopwatch.StartNew();
        while (!page.Named("Page.loadEventFired").Any())
        {
            if (clock.Elapsed.TotalSeconds > 60.0)
            {
                throw new TimeoutException("the page did not load");
            }

            await Task.Delay(20);
        }

        return page;
    }

    public Task<JsonNode> SendAsync(string method, object? parameters = null) => _browser.SendAsync(_session, method, parameters);

    /// <summary>Value of an expression in the page.</summary>
    public async Task<T> EvaluateAsync<T>(string expression)
    {
        JsonNode answer = await SendAsync("Runtime.evaluate", new { expression, returnByValue = true, awaitPromise = true });
        return answer["exceptionDetails"] is JsonNode fault
            ? throw new InvalidOperationException(fault.ToJsonString())
            : answer["result"]!["value"].Deserialize<T>()!;
    }

    /// <summary>Moves the slider as a hand would.</summary>
    public Task SlideAsync(double time) => EvaluateAsync<bool>(string.Create(
        CultureInfo.InvariantCulture,
        $"(() => {{ const s = document.getElementById('time'); s.value = '{time:R}'; s.dispatchEvent(new Event('input', {{ bubbles: true }})); return true; }})()"));

    /// <summary>Presses a key in the element that has the focus.</summary>
    public async Task PressAsync(string key, string code, int number, string text = "")
    {
        await SendAsync("Input.dispatchKeyEvent", new { type = text.Length > 0 ? "keyDown" : "rawKeyDown", key, code, windowsVirtualKeyCode = number, text });
        await SendAsync("Input.dispatchKeyEvent", new { type = "keyUp", key, code, windowsVirtualKeyCode = number });
    }

    /// <summary>Keeps a picture of the whole page in the folder of PUSHSIM_SCREENSHOTS, if that is set.</summary>
    public async Task KeepAsync(string name)
    {
        if (Environment.GetEnvironmentVariable("PUSHSIM_SCREENSHOTS") is not { Length: > 0 } folder)
        {
            return;
        }

        JsonNode shot = await SendAsync("Page.captureScreenshot", new { format = "png", captureBeyondViewport = true });
        Directory.CreateDirectory(folder);
        await File.WriteAllBytesAsync(Path.Combine(folder, name + ".png"), Convert.FromBase64String(shot["data"]!.GetValue<string>()));
    }

    private IEnumerable<JsonNode> Named(string method) =>
        _browser.Events(_session).Where(e => e["method"]?.GetValue<string>() == method).Select(e => e["params"]!);
}
