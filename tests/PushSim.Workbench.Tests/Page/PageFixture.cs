using PushSim.Cli.Tests.Report;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>One browser for all tests of the page.</summary>
public sealed class PageFixture : IAsyncLifetime
{
    private Browser? _browser;

    /// <summary>The browser; a test without one is skipped and says so.</summary>
    internal Browser Browser
    {
        get
        {
            Assert.SkipWhen(_browser is null, "needs chromium, on the path or in PUSHSIM_CHROMIUM");
            return _browser!;
        }
    }

    public async ValueTask InitializeAsync()
    {
        if (Browser.Find() is { } program)
        {
            _browser = await Browser.StartAsync(program);
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }
    }
}

/// <summary>Tests of the page share the browser and run one after the other: they time it.</summary>
[CollectionDefinition("page", DisableParallelization = true)]
public sealed class PageTests : ICollectionFixture<PageFixture>;
