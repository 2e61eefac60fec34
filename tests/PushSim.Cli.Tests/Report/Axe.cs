using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace PushSim.Cli.Tests.Report;

/// <summary>axe-core's rules (WCAG 2.2 A and AA, and its best practices) in an open page.</summary>
internal static class Axe
{
    /// <summary>Rules whose outcome depends on colours and on the width of the window: what a page that broke no rule may still break in the dark or on a telephone.</summary>
    public static readonly string[] OfColourAndWidth = ["color-contrast", "link-in-text-block", "meta-viewport", "scrollable-region-focusable", "target-size"];

    private static readonly string s_script = new BundledAxeScriptProvider().GetScript();

    /// <summary>What breaks a rule: the rule, and where.</summary>
    /// <remarks>Run in the page itself and asked for violations alone: the package's own call opens a second page each time and takes 2.5 times as long.</remarks>
    /// <param name="page">A page without frames.</param>
    /// <param name="rules">Rules to try; none: all.</param>
    public static async Task<string[]> ViolationsAsync(IPage page, params string[] rules)
    {
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window"))
        {
            await page.EvaluateAsync(s_script);
        }

        JsonElement found = await page.EvaluateAsync<JsonElement>(
            "rules => axe.run(document, { resultTypes: ['violations'], ...(rules.length > 0 ? { runOnly: { type: 'rule', values: rules } } : {}) }).then(r => { if (r.passes.length === 0) throw new Error('no rule ran'); return r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.target.join(' ')).join('; ')); })",
            rules);
        return found.Deserialize<string[]>()!;
    }
}
