using Microsoft.Playwright;
using Portwright.Shop.Heads;
using Portwright.Shop.Record;

namespace Portwright.Web.Tests;

/// <summary>How a head lies is said by touch, and from then on left as the eye sees it is the right metal.</summary>
[Collection("pages")]
public sealed class HeadLayTests(Chromium chromium)
{
    /// <summary>
    /// Worked by hand on paper. A port that is not mirrored, head upright, from the flange: the centre side (3) lies right, so left is the cylinder wall (9).
    /// Walking round to the chamber exchanges left and right, turning the head over turns the clock by half and exchanges them again; a mirror image has every one the other way.
    /// </summary>
    private static readonly (string View, double Plain, double Mirrored)[] LeftAsSeen =
    [
        ("", 9, 3),
        ("&from=chamber", 3, 9),
        ("&lying=inverted", 3, 9),
        ("&from=chamber&lying=inverted", 9, 3),
    ];

    [Fact]
    public async Task An_end_cylinder_set_up_as_a_mirror_image_by_touch_keeps_left_as_seen_in_the_right_metal_in_all_four_views()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        await workbench.Start();
        var page = await NamingAnotherHead(workbench, seed);
        await page.Leads(() => page.GetByRole(AriaRole.Button, new() { Name = "Draw the head" }).ClickAsync());

        await page.Leads(() => page.GetByRole(AriaRole.Link, new() { Name = "Say how head B lies" }).ClickAsync());
        await page.Leads(() => page.Locator("[data-key='lie-i4']:visible").ClickAsync());
        Assert.Contains("mirror image of intake 1", await page.Locator("[data-key='lie-i4']:visible").GetAttributeAsync("aria-label"), StringComparison.Ordinal);
        await page.Leads(() => page.GetByRole(AriaRole.Button, new() { Name = "Save: it lies so" }).ClickAsync());
        await page.GetByText("It lies as drawn.").WaitForAsync();

        var ledger = Ledger.Of(workbench.Read(j => j.ReadJob(seed.Job).ToList()));
        var head = ledger.HeadsOf(seed.Job).Single(h => h.Fact.Name == "head B");
        Assert.Equal(new HeadLay(), head.Fact.Lay);
        var ports = ledger.PortsOf(head.Id);
        Assert.Equal(["intake 4"], ports.Where(p => p.Fact.Mirrored).Select(p => p.Fact.Name));
        foreach (var (name, mirrored) in new[] { ("intake 4", true), ("intake 3", false) })
        {
            var air = $"{workbench.Url}/port/{ports.Single(p => p.Fact.Name == name).Id}/air";
            await page.GotoAsync(air);
            await page.FillAsync("#f-distance", "1.8");
            await page.Leads(() => page.GetByText("Add the station").ClickAsync());
            await page.GotoAsync($"{air}?station=A&show=balls&place=new");
            await page.FillAsync("#f-ball", ".500");
            await page.FillAsync("#f-lift", ".300");
            await page.FillAsync("#f-pressure", "28");
            await page.Leads(() => page.Keyboard.PressAsync("Enter"));
            await Number(page, "60.0");
            foreach (var (view, plain, other) in LeftAsSeen)
            {
                await page.GotoAsync($"{air}?station=A&show=balls{view}");
                await page.Locator($".cross [data-key='{await Leftmost(page)}']:visible").ClickAsync();
                await Number(page, "58.0");
                var noted = workbench.Read(j => j.ReadJob(seed.Job).Select(e => e.Fact).OfType<BallReading>().Last());
                Assert.True(noted.Bearing == (mirrored ? other : plain), $"{name}{view}: left was kept as {noted.Bearing}");
            }
        }

        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task Turning_a_port_over_later_moves_no_noted_place_unless_it_is_said_and_keeps_the_first_beside_it()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        Guid seen, named;
        using (var journal = Store.Journal.Open(workbench.Data))
        {
            var station = Entry.About(Guid.CreateVersion7(), seed.Job, new Station(seed.Intake, "A", 0.04), Seed.Now);
            Entry[] walls = [.. new[] { 9.0, 2.0 }.Select(h => Entry.About(Guid.CreateVersion7(), seed.Job, new WallPoint(seed.Cut0, station.Subject, h, Shop.Units.Typed.Of(0.17, "in")), Seed.Now))];
            journal.Append([station, .. walls]);
            (seen, named) = (walls[0].Subject, walls[1].Subject);
        }

        await workbench.Start();
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/head/{seed.Head}");
        await page.Leads(() => page.Locator("[data-key='lie-i1']:visible").ClickAsync());
        await page.GetByText("2 places were noted while this port was drawn the other way round").WaitForAsync();
        await page.GetByText("9 o'clock (cylinder-wall side)").WaitForAsync();
        // Looked at only: nothing is saved, nothing has moved.
        Assert.False(Now(workbench, seed).Get<Port>(seed.Intake).Fact.Mirrored);
        await page.Locator($"[name='turn-{named:N}']").UncheckAsync();
        await page.Leads(() => page.GetByRole(AriaRole.Button, new() { Name = "As I saw them" }).ClickAsync());
        var ledger = Now(workbench, seed);
        Assert.True(ledger.Get<Port>(seed.Intake).Fact.Mirrored);
        Assert.Equal(3, ledger.Get<WallPoint>(seen).Fact.Bearing);
        Assert.Equal(2, ledger.Get<WallPoint>(named).Fact.Bearing);
        Assert.Equal((9.0, NotedPlace.Reason), (((WallPoint)ledger.History(seen)[0].Fact).Bearing, ledger.History(seen)[^1].Reason));

        // Back again, and this time they were noted by name: both stay.
        await page.Leads(() => page.Locator("[data-key='lie-i1']:visible").ClickAsync());
        await page.GetByText("One place was noted while this port was drawn the other way round").WaitForAsync();
        await page.Leads(() => page.GetByRole(AriaRole.Button, new() { Name = "By the side's name" }).ClickAsync());
        ledger = Now(workbench, seed);
        Assert.False(ledger.Get<Port>(seed.Intake).Fact.Mirrored);
        Assert.Equal(3, ledger.Get<WallPoint>(seen).Fact.Bearing);
    }

    [Fact]
    public async Task A_head_drawn_by_one_of_the_usual_patterns_has_its_mirror_images_from_the_start()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        await workbench.Start();
        var page = await NamingAnotherHead(workbench, seed);
        await page.CheckAsync("[name='mirrored'][value='EverySecond']");
        await page.SelectOptionAsync("#f-exhausts", nameof(ExhaustSide.WithIntakes));
        await page.Leads(() => page.GetByRole(AriaRole.Button, new() { Name = "Draw the head" }).ClickAsync());
        var ledger = Now(workbench, seed);
        var head = ledger.HeadsOf(seed.Job).Single(h => h.Fact.Name == "head B");
        Assert.Equal(new HeadLay(ExhaustSide.WithIntakes), head.Fact.Lay);
        Assert.Equal(
            ["exhaust 1", "intake 2", "exhaust 3", "intake 4"],
            ledger.PortsOf(head.Id).Where(p => p.Fact.Mirrored).Select(p => p.Fact.Name));
    }

    [Fact]
    public async Task The_page_of_a_head_and_the_form_of_a_new_one_can_be_used_by_anybody_and_never_scroll_sideways()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        await workbench.Start();
        foreach (var (width, height) in new[] { (320, 700), (390, 844), (820, 1180), (1280, 800) })
        {
            var page = await chromium.Page(width, height);
            foreach (var address in new[] { $"/head/{seed.Head}", $"/head/{seed.Head}?mirrored=i2.e1&exhausts=beside", $"/job/{seed.Job}" })
            {
                await page.GotoAsync($"{workbench.Url}{address}");
                if (address.StartsWith("/job", StringComparison.Ordinal)) await page.GetByText("Draw another head").ClickAsync();
                Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0, $"{address} at {width}");
                Assert.Empty(await Axe.Wrong(page, $"{address} at {width}"));
                var small = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('[data-key^=lie-]')].map(r => r.getBoundingClientRect()).filter(b => b.width > 0 && (b.width < 43.5 || b.height < 43.5)).map(b => `${b.width} by ${b.height}`)");
                Assert.Empty(small);
            }
        }
    }

    /// <summary>The place a finger finds at the left of the drawing.</summary>
    private static async Task<string> Leftmost(IPage page) => await page.EvaluateAsync<string>(
        """
        () => [...document.querySelectorAll('.cross [data-key^="bearing-"]')].filter(e => e.getBoundingClientRect().width > 0)
          .sort((a, b) => (a.getBoundingClientRect().left + a.getBoundingClientRect().right) - (b.getBoundingClientRect().left + b.getBoundingClientRect().right))[0].dataset.key
        """);

    /// <summary>The job's page, another head named and not drawn yet.</summary>
    private async Task<IPage> NamingAnotherHead(RunningWorkbench workbench, Seed seed)
    {
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/job/{seed.Job}");
        await page.GetByText("Draw another head").ClickAsync();
        await page.FillAsync("#f-head", "head B");
        return page;
    }

    private static Ledger Now(RunningWorkbench workbench, Seed seed) => Ledger.Of(workbench.Read(j => j.ReadJob(seed.Job).ToList()));

    private static async Task Number(IPage page, string text)
    {
        await page.WaitForFunctionAsync("() => document.activeElement?.id === 'f-reading'");
        await page.Keyboard.TypeAsync(text);
        await page.Leads(() => page.Keyboard.PressAsync("Enter"));
    }
}
