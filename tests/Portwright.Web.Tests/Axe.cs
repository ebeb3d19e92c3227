using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Portwright.Web.Tests;

/// <summary>
/// The rules of axe, run inside the page as it stands. The library's own way opens a second page for every run, which costs seconds;
/// our pages have no frames and need none.
/// </summary>
internal static class Axe
{
    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    // label-content-name-mismatch is off unless asked for: who speaks the letters seen must be understood.
    private const string EveryRule = "{ rules: { 'label-content-name-mismatch': { enabled: true } } }";

    // The dark theme changes colours and nothing else.
    private const string ContrastAlone = "{ runOnly: ['color-contrast', 'link-in-text-block'] }";

    /// <summary>What stands in somebody's way on the page, a sentence each: every rule in the light theme, contrast in the dark one.</summary>
    public static async Task<IReadOnlyList<string>> Wrong(IPage page, string called)
    {
        await page.EvaluateAsync(Script);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        var light = await Run(page, EveryRule, called);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        return [.. light, .. await Run(page, ContrastAlone, called)];
    }

    private static async Task<IReadOnlyList<string>> Run(IPage page, string options, string called)
    {
        var found = await page.EvaluateAsync<JsonElement>($"() => axe.run(document, {options}).then(r => ({{ passes: r.passes.length, violations: r.violations.map(v => v.nodes.map(n => `${{v.id}}: ${{n.html}}`)).flat() }}))");
        // Where nothing was looked at nothing was found.
        Assert.True(found.GetProperty("passes").GetInt32() > 0, called);
        return [.. found.GetProperty("violations").EnumerateArray().Select(v => $"{called}: {v.GetString()}")];
    }
}
