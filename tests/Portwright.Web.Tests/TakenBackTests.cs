using Microsoft.Playwright;
using Portwright.Shop.Record;
using Portwright.Store;

namespace Portwright.Web.Tests;

/// <summary>What was taken back is put back from the top of the page it was taken back on.</summary>
[Collection("pages")]
public sealed class TakenBackTests(Chromium chromium)
{
    [Fact]
    public async Task A_whole_cut_goes_with_its_readings_after_it_was_said_what_goes_and_comes_back_at_one_touch()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        var sweep = seed.NextCut(workbench.Data, seed.Sweep);
        using (var journal = Journal.Open(workbench.Data)) Seed.Readings(journal, seed.Job, sweep, 3);
        await workbench.Start();
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/port/{seed.Intake}");
        await page.Leads(() => page.GetByRole(AriaRole.Link, new() { Name = "Take cut 1 back" }).ClickAsync());
        await page.GetByText("1 sweep", new() { Exact = true }).WaitForAsync();
        await page.GetByText("3 readings", new() { Exact = true }).WaitForAsync();
        Assert.Empty(await Axe.Wrong(page, "take back"));
        await page.Leads(() => page.GetByRole(AriaRole.Button, new() { Name = "Take cut 1 back" }).ClickAsync());
        var ledger = Now(workbench, seed);
        Assert.Equal([0], ledger.CutsOf(seed.Intake).Select(c => c.Fact.Number));
        Assert.Empty(ledger.All<FlowReading>());
        Assert.Empty(await Axe.Wrong(page, "taken back"));
        await page.Leads(() => page.GetByRole(AriaRole.Button, new() { Name = "Put cut 1 back" }).ClickAsync());
        ledger = Now(workbench, seed);
        Assert.Equal([0, 1], ledger.CutsOf(seed.Intake).Select(c => c.Fact.Number));
        Assert.Equal(3, ledger.All<FlowReading>().Count);
    }

    [Fact]
    public async Task A_wall_point_taken_back_is_put_back_within_a_few_Tabs_of_the_top()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        using (var journal = Journal.Open(workbench.Data))
        {
            var station = Entry.About(Guid.CreateVersion7(), seed.Job, new Station(seed.Intake, "A", 0.04), Seed.Now);
            journal.Append([station, Entry.About(Guid.CreateVersion7(), seed.Job, new WallPoint(seed.Cut0, station.Subject, 9, Shop.Units.Typed.Of(0.17, "in")), Seed.Now)]);
        }

        await workbench.Start();
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/port/{seed.Intake}/air?station=A&show=metal");
        await page.GetByText("As measured, to take back").ClickAsync();
        await page.Leads(() => page.GetByRole(AriaRole.Button, new() { Name = "Take back", Exact = true }).ClickAsync());
        Assert.Empty(Now(workbench, seed).All<WallPoint>());
        var put = page.GetByRole(AriaRole.Button, new() { Name = "Put it back" });
        await page.GetByText("Taken back: metal 0.17 in at 9 o'clock (cylinder-wall side).").WaitForAsync();
        await page.EvaluateAsync("() => { document.activeElement?.blur(); }");
        var tabs = 0;
        while (!await put.EvaluateAsync<bool>("b => b === document.activeElement") && tabs < 40)
        {
            await page.Keyboard.PressAsync("Tab");
            tabs++;
        }

        Assert.True(tabs <= 12, $"{tabs} Tabs to put back");
        await page.Leads(() => page.Keyboard.PressAsync("Enter"));
        Assert.Single(Now(workbench, seed).All<WallPoint>());
    }

    private static Ledger Now(RunningWorkbench workbench, Seed seed) => Ledger.Of(workbench.Read(j => j.ReadJob(seed.Job).ToList()));
}
