using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Web.Tests;

[Collection("browser")]
public sealed class NextCutTests(Chromium chromium, StandingWorkbench standing)
{
    [Theory]
    [InlineData("2,5", 9000)]
    [InlineData("90 min", 5400)]
    [InlineData("", null)]
    public async Task The_hours_at_a_cut_are_kept_as_typed_and_stand_on_its_sheet(string typed, int? seconds)
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/port/{seed.Intake}/next-cut");
        await page.FillAsync("#f-done", "bowl blended");
        await page.FillAsync("#f-hours", typed);
        await page.GetByText("Save the cut", new() { Exact = true }).ClickAsync();
        await page.WaitForURLAsync($"**/port/{seed.Intake}");
        var cut = workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job)).CutsOf(seed.Intake))[^1].Fact;
        Assert.Equal(seconds, cut.Hours?.Si(Dimension.Duration));
        Assert.Equal(typed.Length > 0 ? typed : null, cut.Hours?.Text);
        Assert.Equal(typed.Length > 0 ? 1 : 0, await page.GetByText("hours at it").CountAsync());
    }

    [Fact]
    public async Task Hours_that_are_no_number_are_refused_at_their_box()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/port/{seed.Intake}/next-cut");
        await page.FillAsync("#f-done", "bowl blended");
        await page.FillAsync("#f-hours", "long");
        await page.GetByText("Save the cut", new() { Exact = true }).ClickAsync();
        Assert.Contains("Hours at it \"long\"", await page.Locator("#f-hours-problem").TextContentAsync(), StringComparison.Ordinal);
        Assert.Single(workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job)).CutsOf(seed.Intake)));
    }
}
