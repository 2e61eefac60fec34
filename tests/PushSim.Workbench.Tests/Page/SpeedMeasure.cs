using System.Globalization;
using System.Text;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>
/// From a slider that moves to its verdict on the screen, on every shipped shove, and the weight of the page. Not run with the others:
/// <c>PushSim.Workbench.Tests -explicit only -class PushSim.Workbench.Tests.Page.SpeedMeasure -showliveoutput</c>. Places come from a seed.
/// </summary>
[Collection("timed")]
public class SpeedMeasure(PageFixture fixture)
{
    private const int Moves = 60;
    private const int Seed = 20261;

    private static readonly string[] s_shoves =
        ["shove-downforce", "shove-equals", "shove-heavy-grippy", "shove-lifted-wheel", "shove-off-centre", "shove-ramp-flat", "shove-ramp-ramp", "shove-six-four"];

    [Fact(Explicit = true)]
    public async Task Slider_to_verdict()
    {
        var report = new StringBuilder();
        List<double> all = [];
        foreach (string shove in s_shoves)
        {
            await using OpenPage open = await OpenPage.StartAsync(fixture, shove + ".toml");
            await open.PartAsync("Body");
            await open.Row("a.chassis.mass").WaitForAsync();
            double[] times = await open.Row("a.chassis.mass").Locator("input[type=range]").EvaluateAsync<double[]>("""
                async (s, [moves, seed]) => {
                  const frame = () => new Promise(requestAnimationFrame), number = () => Number(document.querySelector('.card').dataset.number), times = [];
                  let x = seed;
                  s.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
                  for (let i = 0; i < moves + 5; i++) {
                    x = (x * 1103515245 + 12345) % 2147483648;
                    await frame();
                    const old = number(), from = performance.now();
                    s.value = String(Math.round(Number(s.max) * (0.2 + 0.3 * x / 2147483648)));
                    s.dispatchEvent(new Event('input', { bubbles: true }));
                    while (number() === old && performance.now() - from < 5000) await frame();
                    // the frame with the verdict is shown when the next one begins
                    await frame();
                    if (i >= 5) times.push(performance.now() - from);
                    await new Promise(done => setTimeout(done, 120));
                  }
                  return times;
                }
                """, new object[] { Moves, Seed });
            all.AddRange(times);
            report.AppendLine(Line(shove, times));
        }

        report.AppendLine(Line("all", all));
        await using OpenPage page = await OpenPage.StartAsync(fixture);
        double[] weight = await page.ValueAsync<double[]>("(() => { const all = [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')].filter(e => !e.name.includes('/api/')); return [all.length, all.reduce((s, e) => s + e.encodedBodySize, 0) / 1000]; })()");
        report.AppendLine(string.Create(CultureInfo.InvariantCulture, $"page: {weight[0]} files, {weight[1]:F1} kB"));
        TestContext.Current.TestOutputHelper!.WriteLine(report.ToString());
        Assert.Equal(s_shoves.Length * Moves, all.Count);
    }

    private static string Line(string name, IEnumerable<double> times)
    {
        double[] sorted = [.. times.Order()];
        return string.Create(CultureInfo.InvariantCulture, $"{name,-20} median {sorted[sorted.Length / 2],6:F0} ms, 95 % {sorted[(int)(0.95 * sorted.Length)],6:F0} ms, most {sorted[^1],6:F0} ms");
    }
}
