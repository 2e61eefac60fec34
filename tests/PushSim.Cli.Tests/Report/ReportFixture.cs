using System.Globalization;
using Xunit;

namespace PushSim.Cli.Tests.Report;

/// <summary>One browser and one page of a shove, made once for all browser tests; no browser on the system: the tests are skipped.</summary>
public sealed class ReportFixture : IAsyncLifetime
{
    private readonly ScratchFolder _scratch = new();
    private Browser? _browser;
    private Dictionary<string, double[]>? _history;

    /// <summary>The page of a shove in which both robots turn.</summary>
    internal string Shove => _scratch["shove/report.html"];

    internal string Folder => _scratch.Path;

    /// <summary>Columns of the history beside it.</summary>
    internal IReadOnlyDictionary<string, double[]> History => _history ??= Read(_scratch["shove/history.csv"]);

    /// <summary>The browser; skips the test where there is none.</summary>
    internal Browser Browser
    {
        get
        {
            if (_browser is null)
            {
                Assert.Skip("no chromium on the path and no PUSHSIM_CHROMIUM: the report page was not looked at in a browser");
            }

            return _browser;
        }
    }

    public async ValueTask InitializeAsync()
    {
        Make("shove-lifted-wheel", "shove");
        if (Browser.Find() is string program)
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

        _scratch.Dispose();
    }

    /// <summary>Runs a shipped scenario with a report into a folder of the fixture.</summary>
    internal string Make(string scenario, string folder)
    {
        Cli cli = Cli.Run("run", Repository.Scenario(scenario), "--report", "--no-plots", "--csv", "--quiet", "--out", _scratch[folder]);
        Assert.Equal("", cli.Error);
        return _scratch[folder + "/report.html"];
    }

    private static Dictionary<string, double[]> Read(string file)
    {
        string[][] lines = [.. File.ReadLines(file).Select(l => l.Split(','))];
        return Enumerable.Range(0, lines[0].Length).ToDictionary(
            c => lines[0][c], c => lines.Skip(1).Select(l => double.Parse(l[c], CultureInfo.InvariantCulture)).ToArray());
    }
}
