using Microsoft.Playwright;

namespace PushSim.Cli.Tests.Report;

/// <summary>A headless browser of the system, driven by Playwright; its own browsers are not fetched.</summary>
internal sealed class Browser : IAsyncDisposable
{
    /// <summary>Names that the browser has on the systems it is packaged for.</summary>
    private static readonly string[] s_names = ["chromium", "chromium-browser"];

    private readonly IPlaywright _playwright;

    private Browser(IPlaywright playwright, IBrowser browser) => (_playwright, Inner) = (playwright, browser);

    /// <summary>The browser itself.</summary>
    public IBrowser Inner { get; }

    /// <summary>The browser's program: PUSHSIM_CHROMIUM, or the first of its names on the path; null without one.</summary>
    public static string? Find()
    {
        if (Environment.GetEnvironmentVariable("PUSHSIM_CHROMIUM") is { Length: > 0 } given)
        {
            return File.Exists(given) ? given : null;
        }

        IEnumerable<string> folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        return folders.SelectMany(f => s_names.SelectMany(n => new[] { Path.Combine(f, n), Path.Combine(f, n + ".exe") })).FirstOrDefault(File.Exists);
    }

    // no sandbox: tests may run as root, and open only pages they made
    public static async Task<Browser> StartAsync(string program)
    {
        IPlaywright playwright = await Playwright.CreateAsync();
        return new Browser(playwright, await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = program, Args = ["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--hide-scrollbars"] }));
    }

    public async ValueTask DisposeAsync()
    {
        await Inner.DisposeAsync();
        _playwright.Dispose();
    }
}
