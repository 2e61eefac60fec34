using PushSim.Cli.Tests.Report;
using Xunit;

[assembly: AssemblyFixture(typeof(PushSim.Workbench.Tests.Page.PageFixture))]

namespace PushSim.Workbench.Tests.Page;

/// <summary>One browser for all tests of the page, which run side by side; started by the first that asks.</summary>
public sealed class PageFixture : IAsyncDisposable
{
    // A machine that runs other work beside the tests answers later; a test that passes never waits this long [ms].
    private const float Patience = 15_000;

    private readonly Lazy<Task<Browser>> _browser = new(() =>
    {
        Microsoft.Playwright.Assertions.SetDefaultExpectTimeout(Patience);
        return Browser.StartAsync(Browser.Find()!);
    });

    /// <summary>The browser; a test without one is skipped and says so.</summary>
    internal Task<Browser> BrowserAsync()
    {
        Assert.SkipWhen(Browser.Find() is null, "needs chromium, on the path or in PUSHSIM_CHROMIUM");
        return _browser.Value;
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser.IsValueCreated)
        {
            await (await _browser.Value).DisposeAsync();
        }
    }
}

/// <summary>What times the page runs alone.</summary>
[CollectionDefinition("timed", DisableParallelization = true)]
public sealed class TimedTests;
