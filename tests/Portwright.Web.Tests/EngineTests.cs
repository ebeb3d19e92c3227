using Microsoft.Playwright;
using Portwright.Shop.Record;
using Portwright.Store;
using Portwright.Store.Demo;

namespace Portwright.Web.Tests;

/// <summary>The engine run in the workbench, with the demo's plan and ports.</summary>
[Collection("pages")]
public sealed class EngineTests(Chromium chromium, EngineTests.DemoEngine demo) : IClassFixture<EngineTests.DemoEngine>
{
    private readonly RunningWorkbench _workbench = demo.Bench;

    /// <summary>The demo shop, running.</summary>
    public sealed class DemoEngine : IAsyncLifetime
    {
        public RunningWorkbench Bench { get; } = new();

        public async ValueTask InitializeAsync()
        {
            using (var journal = Journal.Open(Bench.Data))
            {
                DemoShop.Load(journal);
                // One slow speed: few runs, each long enough that a button can be pressed meanwhile.
                var job = Ledger.Of(journal.ReadAll()).Get<Job>(DemoShop.Job);
                var plan = job.Fact.Plan with { LowestSpeed = 700, HighestSpeed = 700, SpeedWeights = [new(700, 1)] };
                journal.Append(Amend.Correct(job, job.Fact with { Plan = plan }, DateTimeOffset.UnixEpoch.AddYears(60), "test"));
            }

            await Bench.Start();
        }

        public ValueTask DisposeAsync()
        {
            Bench.Dispose();
            return ValueTask.CompletedTask;
        }
    }

    private string Engine => $"{_workbench.Url}/job/{DemoShop.Job}/engine";

    [Fact]
    public async Task A_run_that_was_stopped_keeps_what_was_done_goes_on_and_its_result_outlives_the_page()
    {
        var page = await chromium.Page(390, 844);
        page.SetDefaultTimeout(180_000);
        await page.GotoAsync(Engine);
        await page.GetByRole(AriaRole.Button, new() { Name = "Run the engine" }).ClickAsync();
        await page.WaitForFunctionAsync("() => Number(document.querySelector('[data-engine-bar]')?.value) > 5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop" }).ClickAsync();
        await page.GetByText("runs are kept from before").WaitForAsync();
        Assert.Empty(await Axe.Wrong(page, "stopped"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Go on with the run" }).ClickAsync();
        await page.GetByText("best torque").WaitForAsync();
        var said = await page.Locator(".engine-facts").InnerTextAsync();
        await page.GotoAsync(Engine);
        Assert.Equal(said, await page.Locator(".engine-facts").InnerTextAsync());
        Assert.Contains("not a dynamometer", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(await Axe.Wrong(page, "result"));
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0);
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task The_crank_is_turned_by_the_keyboard_and_everything_moves_with_it()
    {
        var page = await chromium.Page();
        await page.GotoAsync($"{Engine}/cycle?rpm=4500");
        await page.Locator("#crank").FocusAsync();
        var before = await page.Locator("[data-cycle-words]").InnerTextAsync();
        var piston = await page.Locator(".pw-wide [data-key=piston]").GetAttributeAsync("transform");
        for (var i = 0; i < 12; i++) await page.Keyboard.PressAsync("ArrowRight");
        Assert.NotEqual(before, await page.Locator("[data-cycle-words]").InnerTextAsync());
        Assert.NotEqual(piston, await page.Locator(".pw-wide [data-key=piston]").GetAttributeAsync("transform"));
        Assert.Contains("48° after top", await page.Locator("#crank").GetAttributeAsync("aria-valuetext"), StringComparison.Ordinal);
        Assert.Empty(await Axe.Wrong(page, "cycle"));
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_cycle_says_something_without_any_script()
    {
        using var client = new HttpClient();
        var html = System.Net.WebUtility.HtmlDecode(await client.GetStringAsync(new Uri($"{Engine}/cycle?rpm=4500")));
        Assert.Contains("Pressure along the pipes", html, StringComparison.Ordinal);
        Assert.Contains("intake stroke, 0° after top: intake port", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_study_is_laid_out_in_the_porters_units_run_and_its_best_is_named()
    {
        var page = await chromium.Page(390, 844);
        page.SetDefaultTimeout(120_000);
        await page.GotoAsync($"{Engine}/study");
        await page.FillAsync("#f-from1", "5.9");
        await page.FillAsync("#f-to1", "200 mm");
        await page.FillAsync("#f-steps1", "2");
        await page.GetByRole(AriaRole.Button, new() { Name = "Lay out the study" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Run the study" }).ClickAsync();
        await page.Locator("table.study").WaitForAsync();
        Assert.Equal(["5.90", "7.87"], await page.Locator("table.study tbody th").AllInnerTextsAsync());
        Assert.Equal(1, await page.Locator("table.study td b").CountAsync());
        Assert.Empty(await Axe.Wrong(page, "study"));
        await page.GotoAsync($"{Engine}/study?vary1=runner&from1=8&to1=5&steps1=2");
        await page.GetByText("To must lie above From").WaitForAsync();
        Assert.Empty(chromium.Complaints);
    }
}
