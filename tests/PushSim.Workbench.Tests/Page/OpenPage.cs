using System.Text.Json;
using Microsoft.Playwright;
using PushSim.Cli.Tests.Report;
using PushSim.Cli;
using PushSim.Cli.Tests;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>A workbench on a copy of the shipped scenarios, and pages of a browser that look at it.</summary>
internal sealed class OpenPage : IAsyncDisposable
{
    public const string Shove = "shove-heavy-grippy.toml";

    private readonly ScratchFolder _folder;
    private readonly List<IBrowserContext> _contexts = [];
    private readonly List<string> _complaints = [];

    private OpenPage(ScratchFolder folder, WorkbenchServer server) => (_folder, Server) = (folder, server);

    public WorkbenchServer Server { get; }

    /// <summary>The first page.</summary>
    public IPage Page { get; private set; } = null!;

    /// <summary>Errors of its scripts and of its policy; a lost stream is none.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    /// <summary>A file of the copy.</summary>
    public string this[string name] => _folder[name];

    /// <summary>Starts a workbench and opens a page.</summary>
    /// <param name="fixture">The browser.</param>
    /// <param name="file">File below the copy; null: the start page.</param>
    /// <param name="prepare">Changes the copy first.</param>
    /// <param name="width">Width of the window [px].</param>
    /// <param name="through">Port of a relay that the browser goes through; null: none.</param>
    /// <param name="height">Height of the window [px]; null: the usual one.</param>
    public static async Task<OpenPage> StartAsync(PageFixture fixture, string? file = Shove, Action<ScratchFolder>? prepare = null, int width = 1280, Func<int, Relay>? through = null, int? height = null)
    {
        _ = await fixture.BrowserAsync();
        var folder = new ScratchFolder();
        Copy(Path.Combine(Repository.Root, "scenarios"), folder.Path);
        prepare?.Invoke(folder);
        WorkbenchServer server = await WorkbenchServer.Start(new WorkbenchOptions { File = file is null ? null : folder[file], Folder = folder.Path, Stays = true, Starter = CommandLineApp.Starter, Page = (read, options, _) => Written(folder["page.html"], read) });
        var open = new OpenPage(folder, server);
        open.Page = await open.AnotherAsync(fixture, width, through?.Invoke(server.Address.Port), height);
        if (file is not null)
        {
            await open.AnswerAsync();
        }

        return open;
    }

    /// <summary>One more page, of another window.</summary>
    public async Task<IPage> AnotherAsync(PageFixture fixture, int width = 1280, Relay? through = null, int? height = null)
    {
        IBrowserContext context = await (await fixture.BrowserAsync()).Inner.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height ?? (width < 600 ? 844 : 800) },
            IsMobile = width < 600 || height < 600,
            HasTouch = width < 600 || height < 600,
            ColorScheme = ColorScheme.Light,
            Proxy = through is null ? null : new Proxy { Server = through.Address },
        });
        _contexts.Add(context);
        IPage page = await context.NewPageAsync();
        page.SetDefaultTimeout(20_000);
        page.PageError += (_, e) => _complaints.Add(e);
        page.Console += (_, m) =>
        {
            if (m.Type == "error" && !m.Text.Contains("net::", StringComparison.Ordinal) && !m.Text.Contains("Failed to load resource", StringComparison.Ordinal))
            {
                _complaints.Add(m.Text);
            }
        };
        await page.GotoAsync(Server.Address.AbsoluteUri);
        return page;
    }

    /// <summary>Waits for an answer of at least a number.</summary>
    public Task AnswerAsync(long number = 0) => Page.WaitForFunctionAsync("n => Number(document.querySelector('.card[data-number]')?.dataset.number ?? -1) >= n", number);

    /// <summary>The verdict that is shown.</summary>
    public Task<string> VerdictAsync() => Page.Locator(".card .say").InnerTextAsync();

    /// <summary>Waits until the verdict has a text.</summary>
    public Task VerdictAsync(string part) => Assertions.Expect(Page.Locator(".card .say")).ToContainTextAsync(part, new LocatorAssertionsToContainTextOptions { Timeout = 20_000 });

    /// <summary>The row of a key.</summary>
    public ILocator Row(string key) => Page.Locator($"[data-row='{key}']");

    /// <summary>Opens a part by its button.</summary>
    public Task PartAsync(string words) => Page.Locator(".partbtn").Filter(new LocatorFilterOptions { HasText = words }).First.ClickAsync();

    /// <summary>Writes a text into a row's field as a hand would.</summary>
    public async Task WriteAsync(string key, string text)
    {
        ILocator field = Row(key).Locator("input.f").First;
        await field.FillAsync(text);
        await field.PressAsync("Enter");
    }

    /// <summary>Moves a row's slider to a share of its track, as dragging would: one event, the hand still on it.</summary>
    public Task SlideAsync(string key, double share, bool release = false) => Row(key).Locator("input[type=range]").EvaluateAsync(
        "(s, [share, release]) => { s.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true })); s.value = String(Math.round(share * s.max)); s.dispatchEvent(new Event('input', { bubbles: true })); if (release) s.dispatchEvent(new Event('change', { bubbles: true })); }",
        new object[] { share, release });

    /// <summary>Changes to dark or light colours, as the system of whoever looks would.</summary>
    public Task ColourAsync(bool isDark) => Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light });

    /// <summary>Presses a button by its words.</summary>
    public Task PressAsync(string words) => Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = words }).Locator("visible=true").First.ClickAsync();

    /// <summary>What axe-core finds against its rules: rule, and where.</summary>
    /// <param name="rules">Rules to try; none: all.</param>
    public Task<string[]> ViolationsAsync(params string[] rules) => Axe.ViolationsAsync(Page, rules);

    /// <summary>Value of an expression in the page.</summary>
    public async Task<T> ValueAsync<T>(string expression) => (await Page.EvaluateAsync<JsonElement>(expression)).Deserialize<T>()!;

    /// <summary>Keeps a picture in the folder of PUSHSIM_SCREENSHOTS, if that is set, and one in grey.</summary>
    public async Task KeepAsync(string name)
    {
        if (Environment.GetEnvironmentVariable("PUSHSIM_SCREENSHOTS") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            await Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + ".png") });
            await Page.EvaluateAsync("document.documentElement.style.filter = 'grayscale(1)'");
            await Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + "-grey.png") });
            await Page.EvaluateAsync("document.documentElement.style.filter = ''");
        }
    }

    public async ValueTask DisposeAsync()
    {
        foreach (IBrowserContext context in _contexts)
        {
            await context.CloseAsync();
        }

        await Server.DisposeAsync();
        _folder.Dispose();
        Assert.Empty(_complaints);
    }

    // what the command line writes there is tested with it
    private static string Written(string path, string of)
    {
        File.WriteAllText(path, $"<!doctype html><title>{Path.GetFileName(of)}</title>");
        return path;
    }

    private static void Copy(string from, string to)
    {
        foreach (string file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            string copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }
}
