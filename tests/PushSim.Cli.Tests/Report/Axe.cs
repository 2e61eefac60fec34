using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace PushSim.Cli.Tests.Report;

/// <summary>axe-core's rules (WCAG 2.2 A and AA, and its best practices) in an open page.</summary>
internal static class Axe
{
    private static readonly string s_script = new BundledAxeScriptProvider().GetScript();

    /// <summary>What breaks a rule: the rule, and where.</summary>
    /// <remarks>Run in the page itself and asked for violations alone: the package's own call opens a second page each time and takes 2.5 times as long.</remarks>
    /// <param name="page">A page without frames.</param>
    public static async Task<string[]> ViolationsAsync(IPage page)
    {
        await page.EvaluateAsync(s_script);
        JsonElement found = await page.EvaluateAsync<JsonElement>(
            "() => axe.run(document, { resultTypes: ['violations'] }).then(r => { if (r.passes.length === 0) throw new Error('no rule ran'); return r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.target.join(' ')).join('; ')); })");
        return found.Deserialize<string[]>()!;
    }
}
