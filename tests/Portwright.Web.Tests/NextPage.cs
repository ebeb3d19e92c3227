using Microsoft.Playwright;

namespace Portwright.Web.Tests;

internal static class NextPage
{
    /// <summary>Does what leads to another page, and waits until that stands there wholly: on a slow machine the old one stands for a while yet, and would take what is typed.</summary>
    public static async Task Leads(this IPage page, Func<Task> does)
    {
        await page.EvaluateAsync("() => { window.isBefore = true; }");
        await does();
        await page.WaitForFunctionAsync("() => !window.isBefore && document.readyState === 'complete'");
    }
}
