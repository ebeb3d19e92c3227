using Microsoft.Playwright;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Store;

namespace Portwright.Web.Tests;

/// <summary>A test is a run: passes, lifts and pressures are asked one after another, by one number and Enter each.</summary>
[Collection("browser")]
public sealed class RunTests(Chromium chromium, StandingWorkbench standing, ITestOutputHelper output)
{
    private static readonly double[] TenLifts = [.. Enumerable.Range(1, 10).Select(i => Math.Round(i * .05, 3))];

    [Fact]
    public async Task Thirty_readings_in_three_passes_with_two_lifts_at_another_pressure_are_numbers_and_enter_alone()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var run = TestRun.Of(Lifts(TenLifts), PassPattern.UpDownUp, [new(Lifts(.3, .5), Typed.Of(15, "inH2O"))]);
        var sweep = Put(workbench, seed, run);
        var bench = await new BenchPage(await chromium.Page(), workbench.Url, sweep).Open();
        await Count(bench.Page);
        foreach (var (step, i) in run.Steps.Select((s, i) => (s, i)))
        {
            await bench.Page.WaitForFunctionAsync("n => document.querySelector('[data-progress]').textContent === `${n} of 30`", i);
            Assert.Equal(Print.Bare(step.Lift.Si(Dimension.Lift), Dimension.Lift, UnitSystem.UsCustomary), (await bench.Asked())!.Trim());
            Assert.Equal(step.TestPressure is not null, await bench.Page.GetByText("again, at 15.0").IsVisibleAsync());
            Assert.Equal(run.WayOf(step) == PassWay.Closing, (await bench.Page.TextContentAsync("[data-label]")) == "Close the valve to");
            await bench.Type(Number(step));
            await bench.WaitUntilSaved();
        }

        await bench.Page.GetByText("Every lift is read.").WaitForAsync();
        await bench.Page.Locator("[data-apart]").WaitForAsync();
        Assert.StartsWith("Opening and closing agree within their doubt.", await bench.Page.TextContentAsync("[data-apart]"), StringComparison.Ordinal);
        var (keys, touches) = await Counted(bench.Page);
        output.WriteLine($"30 readings: {keys} keys, {touches} touches");
        Assert.InRange(keys, 60, 200);
        Assert.Equal(0, touches);
        Assert.Empty(await Axe.Wrong(bench.Page, "a run of passes"));
        var walk = Walk(workbench, seed, sweep);
        Assert.All(walk.Steps, s => Assert.Single(s.Readings));
        Assert.Equal(run.Steps.Select(s => s.TestPressure?.WithUnit), walk.Steps.Select(s => s.Readings[0].Fact.TestPressure?.WithUnit));
        Assert.Empty(chromium.Complaints);
    }

    /// <summary>A list of old, without passes: the page stood still at its keys, and called the test done at the top of the lift.</summary>
    [Fact]
    public async Task A_list_that_holds_a_lift_twice_is_done_when_its_last_is_read()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var sweep = seed.SweepAt(workbench.Data, "large", .1, .2, .3, .2, .1);
        var bench = await new BenchPage(await chromium.Page(), workbench.Url, sweep).Open();
        Assert.Equal(5, await bench.Page.Locator("[data-jump]").CountAsync());
        foreach (var number in new[] { "20", "38.5", "55", "38.3" }) await bench.Type(number);
        await bench.WaitUntilSaved();
        await bench.Page.WaitForFunctionAsync("() => document.querySelector('[data-progress]').textContent === '4 of 5'");
        Assert.Equal(".100", (await bench.Asked())!.Trim());
        Assert.True(await bench.Page.GetByText("closing, 2 of 2").First.IsVisibleAsync());
        await bench.Type("20.1");
        await bench.Page.GetByText("Every lift is read.").WaitForAsync();
        await bench.WaitUntilSaved();
        Assert.All(Walk(workbench, seed, sweep).Steps, s => Assert.Single(s.Readings));
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task The_line_is_cut_and_the_page_loaded_again_in_the_middle_of_a_run_and_the_next_step_is_right()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var run = TestRun.Of(Lifts(.1, .2, .3), PassPattern.UpDownUp, []);
        var sweep = Put(workbench, seed, run);
        var page = await chromium.Page();
        var bench = await new BenchPage(page, workbench.Url, sweep).Open();
        foreach (var step in run.Steps.Take(2)) await bench.Type(Number(step));
        await bench.WaitUntilSaved();
        await page.Context.RouteAsync("**/reading", r => r.AbortAsync());
        foreach (var step in run.Steps.Skip(2).Take(3)) await bench.Type(Number(step));
        await page.WaitForFunctionAsync("() => document.querySelectorAll('[data-pending] li').length === 3");
        // Closing .100 is held: the third pass begins at .200.
        Assert.Equal(".200", (await bench.Asked())!.Trim());
        await page.ReloadAsync();
        await page.WaitForFunctionAsync("() => document.activeElement?.id === 'reading'");
        Assert.Equal((".200", "Open the valve to"), ((await bench.Asked())!.Trim(), await page.TextContentAsync("[data-label]")));
        await page.Context.UnrouteAsync("**/reading");
        await bench.WaitUntilSaved();
        // One pass more: what was read twice is told from what was asked twice, over the reload.
        await page.Keyboard.PressAsync("*");
        await bench.Type(Number(run.Steps[4]));
        await bench.WaitUntilSaved();
        Assert.Equal(".200", (await bench.Asked())!.Trim());
        foreach (var step in run.Steps.Skip(5)) await bench.Type(Number(step));
        await bench.WaitUntilSaved();
        Assert.Equal([1, 1, 1, 1, 2, 1, 1], Walk(workbench, seed, sweep).Steps.Select(s => s.Readings.Count));

        // The last taken back is asked for again, in its own pass.
        await page.Keyboard.PressAsync("Control+z");
        await page.WaitForFunctionAsync("() => document.querySelector('[data-asked-lift]').textContent.trim() === '.300'");
        Assert.Contains("opening, 3 of 3", await page.TextContentAsync("[data-pass]"), StringComparison.Ordinal);
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_run_is_typed_kept_by_its_name_and_offered_first_the_next_time()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/port/{seed.Intake}/start");
        await page.Locator("#f-lifts").FillAsync(".1 .2 .3");
        await page.Locator("#f-passes").SelectOptionAsync("UpAndDown");
        await page.Locator("#f-again").FillAsync(".2 @ 150");
        await page.GetByText("Keep it as a usual run").ClickAsync();
        await page.Locator("#f-keep-as").FillAsync("short, both ways");
        await page.GetByText("Start the sweep").ClickAsync();
        await page.GetByText("Keep .2 @ 150").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = ".2 @ 15", Exact = true }).ClickAsync();
        await page.WaitForURLAsync("**/sweep/*");
        var ledger = workbench.Read(j => Ledger.Of(j.ReadJobAndShop(seed.Job)));
        var usual = Assert.Single(ledger.All<UsualRun>(), u => u.Fact.Name == "short, both ways");
        Assert.Equal("1:0.1 1:0.2 1:0.3 2:0.2 2:0.1 3:0.2@15 inH2O", string.Join(' ', usual.Fact.Steps.Select(s => FormattableString.Invariant($"{s.Pass}:{s.Lift.Value}{(s.TestPressure is { } p ? "@" + p.WithUnit : "")}"))));
        Assert.Equal(usual.Fact.Steps, ledger.All<Sweep>()[^1].Fact.Steps);

        await page.GotoAsync($"{workbench.Url}/port/{seed.Intake}/start");
        Assert.Equal("true", await page.GetByText("short, both ways").GetAttributeAsync("aria-current"));
        Assert.Equal(("UpAndDown", ".200 @ 15 inH2O"), (await page.Locator("#f-passes").InputValueAsync(), await page.Locator("#f-again").InputValueAsync()));
        // What was shown and not touched is the same run again.
        await page.GetByText("Start the sweep").ClickAsync();
        await page.WaitForURLAsync("**/sweep/*");
        Assert.Equal(usual.Fact.Steps, workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job))).All<Sweep>()[^1].Fact.Steps);
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_pressure_after_the_at_is_judged_and_the_reading_beside_it_is_not_lost()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var bench = await new BenchPage(await chromium.Page(), workbench.Url, seed.Sweep).Open();
        await bench.Type("10 @279");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "10 @27.9" }).WaitForAsync();
        Assert.Equal(0, await bench.Page.Locator("[data-press=keep]").CountAsync());
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "10 @27.9" }).ClickAsync();
        await bench.WaitUntilSaved();
        await bench.Type("20 @2.7");
        await bench.Page.Locator("[data-press=keep]").ClickAsync();
        await bench.WaitUntilSaved();
        await bench.Page.WaitForFunctionAsync("() => !document.querySelector('[data-question]').hidden || document.querySelector('[data-progress]').textContent.startsWith('2 of')");
        // A pressure kept keeps no reading with it: 20 at a tenth of the pressure is far too much, and is asked about by itself.
        await bench.Page.Locator("[data-press=keep]").ClickAsync();
        await bench.WaitUntilSaved();
        await bench.Page.WaitForFunctionAsync("() => document.querySelector('[data-progress]').textContent.startsWith('2 of')");
        var ledger = workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job)));
        Assert.Equal([("10", "27.9 inH2O"), ("20", "2.7 inH2O")], ledger.ReadingsOf(seed.Sweep).Select(r => (r.Fact.Reading.Text, r.Fact.TestPressure!.WithUnit)));
        Assert.Equal(["Test pressure", "Reading"], ledger.All<Confirmed>().Select(c => c.Fact.Field));
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_correction_is_judged_as_at_the_bench()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        using (var journal = Journal.Open(workbench.Data)) Seed.Readings(journal, seed.Job, seed.Sweep, 12);
        var reading = workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job))).ReadingsOf(seed.Sweep)[2];
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/reading/{reading.Id}");
        await page.Locator("#f-reading").FillAsync($"{reading.Fact.Reading.Value * 2:0.0} %");
        await page.Locator("#f-pressure").FillAsync("279");
        await page.Locator("#f-reason").FillAsync("misread");
        await page.GetByText("Save the correction").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "27.9", Exact = true }).ClickAsync();
        // Now the number itself is in question: twice what stands around it.
        await page.Locator("#f-reading-question").WaitForAsync();
        Assert.Equal(reading.Fact.Reading, workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job))).Get<FlowReading>(reading.Id).Fact.Reading);
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Keep") }).ClickAsync();
        await page.WaitForURLAsync("**/cut/0", new() { WaitUntil = WaitUntilState.Commit });
        var ledger = workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job)));
        var corrected = ledger.Get<FlowReading>(reading.Id).Fact;
        Assert.Equal((27.9, Math.Round(reading.Fact.Reading.Value * 2, 1)), (corrected.TestPressure!.Value, corrected.Reading.Value));
        Assert.Equal("Reading", Assert.Single(ledger.All<Confirmed>()).Fact.Field);
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_morning_of_six_leaks_and_nine_plates_is_one_number_and_enter_each()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        string[] ranges = ["small", "middle", "large"];
        var card = Seed.Card() with
        {
            Ranges = [.. ranges.Select(r => Seed.Card().Ranges[0] with { Name = r })],
            Plates = [.. Enumerable.Range(1, 3).Select(i => new CheckPlate($"plate {i}", 0.0008, 0.000002))],
        };
        Append(workbench, Entry.About(seed.Bench, null, card, Seed.Now));
        await workbench.Start();
        var page = await chromium.Page();
        // The first morning: leaks at two pressures on three ranges, and nine of the eighteen plates that makes; the others are passed over.
        await page.GotoAsync($"{workbench.Url}/bench/morning?pressures=28+15");
        await page.Locator("#f-barometer").FocusAsync();
        await Fill(page, ["29.3", "70", "45", "0.6", "0.5", "0.6", "0.5", "0.6", "0.5", .. Enumerable.Range(0, 9).SelectMany(i => new[] { $"3{i}.5", "" })]);
        Assert.Equal("Read: 6 leaks, 9 plates.", await page.TextContentAsync("[data-count]"));
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/bench");

        // The next: the run of the last, box after box; loaded again in its middle, nothing typed is lost.
        await page.GotoAsync($"{workbench.Url}/bench/morning");
        await page.Locator("#f-barometer").FocusAsync();
        await Count(page);
        await Fill(page, ["29.2", "68", "50", "0.6", "0.5", "0.6"]);
        var (before, touchesBefore) = await Counted(page);
        await page.ReloadAsync();
        Assert.Equal("0.6", await page.Locator("#f-b2").InputValueAsync());
        await page.Locator("#f-b3").FocusAsync();
        await Count(page);
        await Fill(page, ["0.5", "0.6", "0.5", .. Enumerable.Range(0, 9).Select(i => $"3{i}.6")]);
        Assert.Equal("Read: 6 leaks, 9 plates.", await page.TextContentAsync("[data-count]"));
        var (keys, touches) = await Counted(page);
        output.WriteLine($"air, 6 leaks and 9 plates: {before + keys} keys, {touchesBefore + touches} touches");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/bench");
        Assert.InRange(before + keys, 30, 100);
        Assert.Equal(0, touchesBefore + touches);
        var checks = workbench.Read(j => Ledger.Of(j.ReadShop()).All<MorningCheck>());
        Assert.All(checks, c => Assert.Equal((6, 9), (c.Fact.Leaks.Count(), c.Fact.Plates.Count)));
        Assert.Equal(ranges.SelectMany(r => new[] { (r, 28.0), (r, 15.0) }), checks[^1].Fact.Leaks.Select(l => (l.Range, l.TestPressure.Value)));
        Assert.Equal(Enumerable.Range(0, 9).Select(i => ($"plate {i / 3 + 1}", ranges[i % 3], $"3{i}.6")), checks[^1].Fact.Plates.Select(p => (p.Plate, p.Range, p.Reading.Text)));
        Assert.Empty(chromium.Complaints);
    }

    private static async Task Fill(IPage page, IEnumerable<string> texts)
    {
        foreach (var text in texts)
        {
            await page.Keyboard.TypeAsync(text);
            await page.Keyboard.PressAsync("Enter");
        }
    }

    private static async Task Count(IPage page) => await page.EvaluateAsync(
        "() => { window.keys = 0; window.touches = 0; addEventListener('keydown', () => { window.keys++; }, true); addEventListener('pointerdown', () => { window.touches++; }, true); }");

    private static async Task<(int Keys, int Touches)> Counted(IPage page)
    {
        var counted = await page.EvaluateAsync<int[]>("() => [window.keys, window.touches]");
        return (counted[0], counted[1]);
    }

    private static Typed[] Lifts(params double[] lifts) => [.. lifts.Select(l => Typed.Of(l, "in"))];

    /// <summary>What a port would show, a little otherwise at each pass; at a lower pressure the meter shows less by its root.</summary>
    private static string Number(RunStep step)
    {
        var full = Seed.Value((int)Math.Round(step.Lift.Value / .05), 12) + .1 * (step.Pass % 2);
        return FormattableString.Invariant($"{full * Math.Sqrt((step.TestPressure?.Value ?? 28) / 28):0.0}");
    }

    private static Guid Put(RunningWorkbench workbench, Seed seed, TestRun run)
    {
        var sweep = seed.SweepAt(workbench.Data, "large");
        Append(workbench, Entry.About(sweep, seed.Job, run.On(new Sweep(seed.Cut0, seed.Bench, FlowDirection.Draw, "large", Typed.Of(28, "inH2O"), [])), Seed.Now));
        return sweep;
    }

    private static void Append(RunningWorkbench workbench, Entry entry)
    {
        using var journal = Journal.Open(workbench.Data);
        journal.Append([entry]);
    }

    private static RunWalk Walk(RunningWorkbench workbench, Seed seed, Guid sweep)
    {
        var ledger = workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job)));
        return RunWalk.Of(ledger, ledger.Get<Sweep>(sweep));
    }
}
