using System.Collections.Concurrent;
using System.Globalization;
using PushSim.Cli.Shared;
using Xunit;

[assembly: AssemblyFixture(typeof(PushSim.Cli.Tests.Report.ReportFixture))]

namespace PushSim.Cli.Tests.Report;

/// <summary>One browser and the pages of all browser tests, each made once by the first that asks; no browser on the system: the tests are skipped.</summary>
public sealed class ReportFixture : IAsyncDisposable
{
    private readonly ScratchFolder _scratch = new();
    private readonly ConcurrentDictionary<string, Lazy<string>> _files = new();
    private readonly Lazy<Task<Browser>> _browser = new(() => Task.Run(() => Browser.StartAsync(Browser.Find()!)));
    private readonly Lazy<Task<BrowserPage>> _page;
    private readonly Lazy<Dictionary<string, double[]>> _history;

    public ReportFixture()
    {
        _page = new(async () => await BrowserPage.OpenAsync(await BrowserAsync(), Shove));
        _history = new(() => Read(Path.Combine(Path.GetDirectoryName(Shove)!, "history.csv")));
    }

    /// <summary>The page of a shove in which both robots turn.</summary>
    internal string Shove => Page("run shove-lifted-wheel");

    internal string Folder => _scratch.Path;

    /// <summary>Columns of the history beside it.</summary>
    internal IReadOnlyDictionary<string, double[]> History => _history.Value;

    /// <summary>The browser; skips the test where there is none.</summary>
    internal Task<Browser> BrowserAsync()
    {
        Assert.SkipWhen(Browser.Find() is null, "no chromium on the path and no PUSHSIM_CHROMIUM: the report page was not looked at in a browser");
        return _browser.Value;
    }

    /// <summary><see cref="Shove"/>, opened once for tests that only put its time and look.</summary>
    internal async Task<BrowserPage> ShovePageAsync()
    {
        await BrowserAsync();
        return await _page.Value;
    }

    /// <summary>The page of a command, as a script has it made.</summary>
    /// <param name="name">"run " and a shipped scenario, or a name of <see cref="ReportCommandTests.Command"/>.</param>
    internal string Page(string name) => _files.GetOrAdd(name, _ => new Lazy<string>(() =>
    {
        string folder = _scratch["page-" + name.Replace(' ', '-')];
        string[] command = name.StartsWith("run ", StringComparison.Ordinal) ? ["run", Repository.Scenario(name[4..]), "--csv"] : ReportCommandTests.Command(name);
        Cli cli = Cli.Run([.. command, "--json", "--report", "--no-plots", "--out", folder]);
        Assert.Equal((ExitCode.Done, ""), (cli.Code, cli.Error));
        return Path.Combine(folder, "report.html");
    })).Value;

    public async ValueTask DisposeAsync()
    {
        if (_browser.IsValueCreated)
        {
            await (await _browser.Value).DisposeAsync();
        }

        _scratch.Dispose();
    }

    private static Dictionary<string, double[]> Read(string file)
    {
        string[][] lines = [.. File.ReadLines(file).Select(l => l.Split(','))];
        return Enumerable.Range(0, lines[0].Length).ToDictionary(
            c => lines[0][c], c => lines.Skip(1).Select(l => double.Parse(l[c], CultureInfo.InvariantCulture)).ToArray());
    }
}
