using System.Globalization;
using Portwright.Shop.Record;
using Portwright.Store;

namespace Portwright.Web.Tests;

/// <summary>Stem, guide and boss are typed in the section's own form, judged like every number, drawn, and taken off.</summary>
[Collection("pages")]
public sealed class InAirTests(Chromium chromium)
{
    [Fact]
    public async Task A_stem_and_a_boss_typed_with_the_section_are_asked_about_drawn_and_taken_off()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        using (var journal = Journal.Open(workbench.Data))
        {
            journal.Append([Entry.About(Guid.CreateVersion7(), seed.Job, new Station(seed.Intake, "D", 0.07, Role: StationRole.Guide), Seed.Now)]);
        }

        await workbench.Start();
        var page = await chromium.Page();
        var air = $"{workbench.Url}/port/{seed.Intake}/air?station=D";
        await page.GotoAsync(air);
        await page.FillAsync("#f-readings", "1.200 1.600");
        await page.GetByText("What stands in it: stem, guide, boss").ClickAsync();
        await page.SelectOptionAsync("#f-air-kind-1", nameof(MetalInAirKind.Stem));
        // The valve's stem is 8 mm, .315; the point stands one place too far.
        await page.FillAsync("#f-air-sizes-1", "3.15");
        await page.SelectOptionAsync("#f-air-kind-2", nameof(MetalInAirKind.GuideBoss));
        await page.SelectOptionAsync("#f-air-form-2", nameof(SectionForm.Rectangle));
        await page.FillAsync("#f-air-sizes-2", ".500 .400");
        await page.Locator(".in-air", new() { Has = page.Locator("#f-air-kind-2") }).GetByText("Where it stands").ClickAsync();
        await page.FillAsync("#f-air-wall-2", ".500");
        await page.Leads(() => page.GetByText("Save section D").ClickAsync());
        Assert.Empty(Sections(workbench, seed));
        Assert.Contains("the valve's stem is", await page.Locator("#f-air-sizes-1-question p").TextContentAsync(), StringComparison.Ordinal);
        await page.Leads(() => page.Locator("#f-air-sizes-1-question button").First.ClickAsync());

        var section = Assert.Single(Sections(workbench, seed));
        Assert.Equal([".315", ".500", ".400"], section.InAir!.SelectMany(m => m.Sizes).Select(s => s.Text.TrimStart('0')));
        Assert.Equal(".500", section.InAir![1].OnWall!.Text);
        // On paper: 1.2 x 1.6 = 1.92; the stem pi/4 x .315^2 = .0779, the boss .5 x .4 = .2: open 1.642 in2. Wetted 5.6 + .990 + 1.8 - 1.0 = 7.390; 4 x 1.642 / 7.390 = .889 in.
        var facts = (await page.Locator("dl.facts").TextContentAsync())!;
        Assert.Contains("1.642", facts, StringComparison.Ordinal);
        Assert.Contains(".889", facts, StringComparison.Ordinal);
        Assert.Contains("stem", await page.Locator(".figure.section").TextContentAsync(), StringComparison.Ordinal);
        // What stood there still does when the section is measured again.
        await page.GetByText("Measure section D again").ClickAsync();
        Assert.StartsWith(".315", (await page.InputValueAsync("#f-air-sizes-1")).TrimStart('0'), StringComparison.Ordinal);
        await page.GotoAsync($"{workbench.Url}/port/{seed.Intake}");
        Assert.Contains("taken off its area", await page.Locator("main").TextContentAsync(), StringComparison.Ordinal);
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task The_form_can_be_used_by_anybody_and_never_scrolls_sideways()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        using (var journal = Journal.Open(workbench.Data))
        {
            var station = Entry.About(Guid.CreateVersion7(), seed.Job, new Station(seed.Intake, "D", 0.07, Role: StationRole.Guide), Seed.Now);
            Shop.Units.Typed In(double inches) => new(inches, "in", inches.ToString("0.000", CultureInfo.InvariantCulture));
            journal.Append([station, Entry.About(Guid.CreateVersion7(), seed.Job, new Section(seed.Cut0, station.Subject, SectionForm.Rectangle, [In(1.2), In(1.6)], InAir:
            [
                new MetalInAir(MetalInAirKind.Stem, SectionForm.Oval, [In(0.315)]), new MetalInAir(MetalInAirKind.GuideBoss, SectionForm.Rectangle, [In(0.5), In(0.4)], OnWall: In(0.5)),
            ]), Seed.Now)]);
        }

        await workbench.Start();
        foreach (var (width, height) in new[] { (320, 700), (820, 1180), (1280, 800) })
        {
            var page = await chromium.Page(width, height);
            await page.GotoAsync($"{workbench.Url}/port/{seed.Intake}/air?station=D");
            await page.GetByText("Measure section D again").ClickAsync();
            Assert.True(await page.Locator("#f-air-sizes-3").IsVisibleAsync());
            Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0, $"at {width}");
            Assert.Empty(await Axe.Wrong(page, $"at {width}"));
        }
    }

    private static List<Section> Sections(RunningWorkbench workbench, Seed seed) => workbench.Read(j => j.ReadJob(seed.Job).Select(e => e.Fact).OfType<Section>().ToList());
}
