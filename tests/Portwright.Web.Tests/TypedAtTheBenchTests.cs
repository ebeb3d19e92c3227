using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Store;

namespace Portwright.Web.Tests;

/// <summary>Thermometers at the meter and in the plenum, the set-up study, and what cannot be: what is typed reaches the record, or is asked about where it was typed.</summary>
[Collection("browser")]
public sealed class TypedAtTheBenchTests(Chromium chromium, StandingWorkbench standing)
{
    [Fact]
    public async Task The_plenums_temperature_typed_once_holds_for_the_sweep_until_it_is_changed()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var bench = await new BenchPage(await chromium.Page(), workbench.Url, seed.Sweep).Open();
        // Folded away: the box keeps the cursor, and a reading costs no key more.
        await bench.Type("10");
        await bench.WaitUntilSaved();
        Assert.False(await bench.Page.Locator("#plenum-temperature").IsVisibleAsync());

        await bench.Page.GetByText("A thermometer at the meter or in the plenum?").ClickAsync();
        await bench.Page.Locator("#plenum-temperature").FillAsync("88.5");
        foreach (var text in new[] { "20", "30" })
        {
            await bench.Box.FocusAsync();
            await bench.Type(text);
            await bench.WaitUntilSaved();
        }

        // The page opened again still has it, with its unit.
        await bench.Page.ReloadAsync();
        await bench.Page.WaitForFunctionAsync("() => document.activeElement?.id === 'reading'");
        Assert.Equal("88.5 °F", await bench.Page.Locator("#plenum-temperature").InputValueAsync());
        await bench.Type("38");
        await bench.WaitUntilSaved();
        await bench.Page.Locator("#plenum-temperature").FillAsync("");
        await bench.Page.Locator("#meter-temperature").FillAsync("32 C");
        await bench.Box.FocusAsync();
        await bench.Type("46");
        await bench.WaitUntilSaved();

        var readings = workbench.Read(j => j.ReadJob(seed.Job).Select(e => e.Fact).OfType<FlowReading>().ToList());
        Assert.Equal([null, 88.5, 88.5, 88.5, null], readings.Select(r => r.PlenumTemperature?.Value));
        Assert.Equal([null, null, null, null, "°C"], readings.Select(r => r.MeterTemperature?.Unit));
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_temperature_that_is_none_is_said_and_a_reading_can_be_given_one_later()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var bench = await new BenchPage(await chromium.Page(), workbench.Url, seed.Sweep).Open();
        await bench.Page.GetByText("A thermometer at the meter or in the plenum?").ClickAsync();
        await bench.Page.Locator("#meter-temperature").FillAsync("8x");
        await bench.Box.FocusAsync();
        await bench.Type("10");
        await bench.Page.GetByText("Temperature at the meter \"8x\"").First.WaitForAsync();
        await bench.Page.Locator("#meter-temperature").FillAsync("");
        await bench.Box.FocusAsync();
        await bench.Page.Keyboard.PressAsync("Enter");
        await bench.WaitUntilSaved();

        var reading = workbench.Read(j => j.ReadJob(seed.Job).First(e => e.Fact is FlowReading).Subject);
        await bench.Page.GotoAsync($"{workbench.Url}/reading/{reading}");
        await bench.Page.GetByText("A thermometer at the meter or in the plenum?").ClickAsync();
        await bench.Page.Locator("#f-plenum-temperature").FillAsync("88");
        await bench.Page.Locator("#f-reason").FillAsync("not written down");
        await bench.Page.GetByText("Save the correction").ClickAsync();
        await bench.Page.GetByText("Flow by lift").First.WaitForAsync();
        Assert.Equal(88, workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job)).Get<FlowReading>(reading)).Fact.PlenumTemperature!.Value);
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_set_up_study_states_its_range_pressure_direction_and_air()
    {
        using var workbench = new RunningWorkbench();
        Seed.Put(workbench.Data);
        await workbench.Start();
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/bench/set-ups");
        await page.Locator("#f-head").FillAsync("head A, intake 1, .400");
        await page.Locator("#f-direction").SelectOptionAsync("Blow");
        await page.Locator("#f-pressure").FillAsync("20");
        await page.Locator("#f-set-ups").FillAsync("71.2 71.4\n70.8 70.9\n71.9 72.1");
        await page.GetByText("Its barometer and thermometer").ClickAsync();
        await page.Locator("#f-barometer").FillAsync("29.3");
        await page.Locator("#f-temperature").FillAsync("70");
        await page.Locator("#f-humidity").FillAsync("0.45");
        await page.GetByText("Save the study").ClickAsync();
        await page.GetByText("45? \"0.45\" was typed").WaitForAsync();
        await page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "45", Exact = true }).ClickAsync();
        await page.GetByText("The last study").WaitForAsync();

        var study = workbench.Read(j => j.ReadShop().Select(e => e.Fact).OfType<SetUpStudy>().Single());
        Assert.Equal(("large", FlowDirection.Blow, 20, 29.3), (study.Range, study.Direction, study.TestPressure!.Value, study.Air!.Barometer.Value));
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task What_cannot_be_is_said_beside_the_box_it_was_typed_in()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/port/{seed.Intake}/valve");
        await page.Locator("#f-throat").FillAsync("1.8x");
        await page.GetByText("Save valve and seat").ClickAsync();
        Assert.Contains("\"1.8x\"", await page.Locator("#f-throat-problem").TextContentAsync());
        await page.GotoAsync($"{workbench.Url}/port/{seed.Intake}/start");
        await page.Locator("#f-pressure").FillAsync("28 psi");
        await page.GetByText("Start the sweep").ClickAsync();
        Assert.Contains("\"28 psi\" was typed", await page.Locator("#f-pressure-question").TextContentAsync());
        Assert.Equal(0, await page.GetByText("Keep 28 psi").CountAsync());

        var bench = await new BenchPage(page, workbench.Url, seed.Sweep).Open();
        await bench.Type("0.2");
        await bench.WaitUntilSaved();
        await page.GetByText("is under what leaks with the port closed off").First.WaitForAsync();
        Assert.Empty(chromium.Complaints);
    }
}
