using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Playwright;
using PushSim.Cli.Tests;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>
/// From the start of a released program to a page that shows an answer, in a browser that runs already. Not run with the others:
/// <c>PUSHSIM_PROGRAM=FILE PushSim.Workbench.Tests -explicit only -class PushSim.Workbench.Tests.Page.StartMeasure -showliveoutput</c>.
/// </summary>
[Collection("timed")]
public class StartMeasure(PageFixture fixture)
{
    private const int Starts = 9;

    [Fact(Explicit = true)]
    public async Task Program_to_answer()
    {
        string? program = Environment.GetEnvironmentVariable("PUSHSIM_PROGRAM");
        Assert.SkipWhen(program is null, "PUSHSIM_PROGRAM names the program");
        IBrowser browser = (await fixture.BrowserAsync()).Inner;
        List<(double Address, double Answer, double Memory)> all = [];
        for (int i = 0; i < Starts; i++)
        {
            using var folder = new ScratchFolder();
            Directory.CreateDirectory(folder["robots"]);
            foreach (string name in new[] { OpenPage.Shove, "robots/mole.toml", "robots/badger.toml" })
            {
                File.Copy(Path.Combine(Repository.Root, "scenarios", name), folder[name]);
            }

            IPage page = await browser.NewPageAsync();
            long begin = Stopwatch.GetTimestamp();
            using Process process = Process.Start(new ProcessStartInfo(program!, ["open", OpenPage.Shove, "--no-browser", "--stay"]) { WorkingDirectory = folder.Path, RedirectStandardOutput = true, RedirectStandardError = true })!;
            string address = await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) ?? "";
            double told = Ms(begin);
            await page.GotoAsync(address);
            await page.WaitForSelectorAsync(".card[data-number]");
            double shown = Ms(begin);
            process.Refresh();
            all.Add((told, shown, process.WorkingSet64 / 1e6));
            await page.CloseAsync();
            process.Kill();
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        var report = new StringBuilder();
        report.AppendLine(Line("address told [ms]", all.Select(a => a.Address)));
        report.AppendLine(Line("answer shown [ms]", all.Select(a => a.Answer)));
        report.AppendLine(Line("memory then [MB]", all.Select(a => a.Memory)));
        TestContext.Current.TestOutputHelper!.WriteLine(report.ToString());
        Assert.Equal(Starts, all.Count);
    }

    private static double Ms(long since) => Stopwatch.GetElapsedTime(since).TotalMilliseconds;

    private static string Line(string name, IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return string.Create(CultureInfo.InvariantCulture, $"{name,-20} least {sorted[0]:F0}, median {sorted[sorted.Length / 2]:F0}, most {sorted[^1]:F0}");
    }
}
