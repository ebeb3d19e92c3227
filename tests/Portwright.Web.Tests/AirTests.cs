using Microsoft.Playwright;
using Portwright.Shop.Record;
using Portwright.Store;
using Portwright.Store.Demo;

namespace Portwright.Web.Tests;

/// <summary>The port as the form: touch the metal, type the number.</summary>
[Collection("pages")]
public sealed class AirTests(Chromium chromium, AirTests.DemoPorts demo) : IClassFixture<AirTests.DemoPorts>
{
    private readonly RunningWorkbench _workbench = demo.Bench;

    /// <summary>The demo shop, running; tests add to it and count from what they found.</summary>
    public sealed class DemoPorts : IAsyncLifetime
    {
        public RunningWorkbench Bench { get; } = new();

        public async ValueTask InitializeAsync()
        {
            using (var journal = Journal.Open(Bench.Data))
            {
                DemoShop.Load(journal);
            }

            await Bench.Start();
        }

        public ValueTask DisposeAsync()
        {
            Bench.Dispose();
            return ValueTask.CompletedTask;
        }
    }

    private string Air => $"{_workbench.Url}/port/{DemoShop.Featured}/air";

    [Fact]
    public async Task A_nine_place_ball_check_takes_at_most_two_touches_and_one_number_a_place()
    {
        var before = Balls().Count;
        var page = await chromium.Page();
        await page.GotoAsync($"{Air}?station=C&show=balls&place=new");
        await page.FillAsync("#f-ball", ".500");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("First without the ball.").WaitForAsync();
        await Number(page, "82.0");
        foreach (var (letter, hours) in new[] { ("C", new[] { 12, 3, 6, 9 }), ("D", [12, 3, 6, 9]), ("E", [6]) })
        {
            foreach (var hour in hours)
            {
                var touches = 0;
                if (!(await page.Locator("[data-place-words]").TextContentAsync())!.StartsWith(letter, StringComparison.Ordinal) && !page.Url.Contains($"station={letter}", StringComparison.Ordinal))
                {
                    await page.Locator($".long [data-key='station-{Station(letter):N}']:visible").ClickAsync();
                    await page.WaitForURLAsync($"**station={letter}**");
                    touches++;
                }

                await page.Locator($".cross [data-key='bearing-{hour}']:visible").ClickAsync();
                touches++;
                Assert.True(touches <= 2);
                await Number(page, $"{80 + hour / 10.0:0.0}");
            }
        }

        await page.Locator("[data-place='out']").ClickAsync();
        await Number(page, "82.0");
        var balls = Balls().Skip(before).ToList();
        Assert.Equal(11, balls.Count);
        var stations = new Dictionary<Guid, string> { [Station("C")] = "C", [Station("D")] = "D", [Station("E")] = "E" };
        Assert.Equal(
            ["", "C12", "C3", "C6", "C9", "D12", "D3", "D6", "D9", "E6", ""],
            balls.Select(b => b.Station is { } s ? $"{stations[s]}{b.Bearing}" : ""));
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task The_same_metal_is_meant_however_the_head_lies()
    {
        var page = await chromium.Page();
        foreach (var view in new[] { "", "&from=chamber", "&lying=inverted", "&from=chamber&lying=inverted" })
        {
            var before = Walls().Count;
            await page.GotoAsync($"{Air}?station=D&show=metal{view}");
            await page.Locator(".cross [data-key='bearing-9']:visible").ClickAsync();
            Assert.Contains("cylinder-wall side", await page.Locator("[data-place-words]").TextContentAsync(), StringComparison.Ordinal);
            await page.FillAsync("#f-thickness", ".171");
            await page.Leads(() => page.Keyboard.PressAsync("Enter"));
            var wall = Assert.Single(Walls().Skip(before));
            Assert.Equal(9, wall.Bearing);
            Assert.Equal(Station("D"), wall.Station);
        }
    }

    [Fact]
    public async Task A_station_a_section_and_a_ring_are_recorded_on_a_port_nobody_looked_into()
    {
        var port = _workbench.Read(j => Ledger.Of(j.ReadJob(DemoShop.Job)).All<Port>().First(p => p.Id != DemoShop.Featured && p.Fact.Kind == PortKind.Intake)).Id;
        var page = await chromium.Page();
        await page.GotoAsync($"{_workbench.Url}/port/{port}/air");
        await page.FillAsync("#f-distance", "1.8");
        await page.GetByText("Add the station").ClickAsync();
        await page.FillAsync("#f-readings", "1.25 1.95");
        await page.GetByText("Save section A").ClickAsync();
        await page.GetByText("of the valve, by area").WaitForAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "air speeds" }).ClickAsync();
        await page.GetByText("Start the ring at A").ClickAsync();
        // A point left out is asked back, and the answer is one key.
        await page.Locator(".cross [data-key='bearing-middle']:visible").ClickAsync();
        await Number(page, "151");
        Assert.Equal("15.1", (await page.Locator("#f-reading-question button").First.TextContentAsync())!.Trim());
        Assert.DoesNotContain(_workbench.Read(j => Ledger.Of(j.ReadJob(DemoShop.Job)).All<ProbeReading>()), r => r.Fact.Reading.Text.StartsWith("151", StringComparison.Ordinal));
        await page.Leads(() => page.Locator("#f-reading-question button").First.ClickAsync());
        foreach (var (key, text) in new[] { ("middle", "15.1"), ("12", "14.2"), ("3", "14.8"), ("6", "11.0"), ("9", "14.4") })
        {
            await page.Locator($".cross [data-key='bearing-{key}']:visible").ClickAsync();
            await Number(page, text);
        }

        await page.GetByText("agrees with the bench").WaitForAsync();
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_photo_chosen_for_a_flag_is_kept_with_it_at_once_and_a_clip_as_well()
    {
        byte[] png = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");
        var clip = new byte[64];
        Convert.FromHexString("000000206674797069736F6D00000200").CopyTo(clip, 0);
        var page = await chromium.Page(390, 844);
        await page.GotoAsync($"{Air}?station=D&show=flags");
        await page.Locator(".cross [data-key='bearing-6']:visible").ClickAsync();
        await page.Leads(() => page.Locator(".steady button").First.ClickAsync());
        var flag = _workbench.Read(j => Ledger.Of(j.ReadJob(DemoShop.Job)).All<FlagReading>()[^1]);
        foreach (var (name, type, bytes) in new[] { ("floor.png", "image/png", png), ("floor.mp4", "video/mp4", clip) })
        {
            await page.Locator("details.more summary", new() { HasText = "As held" }).ClickAsync();
            await page.Leads(() => page.SetInputFilesAsync($"#photo-{flag.Id:N}", new FilePayload { Name = name, MimeType = type, Buffer = bytes }));
            Assert.Contains("station=D", page.Url, StringComparison.Ordinal);
        }

        Assert.Equal(["image/png", "video/mp4"], _workbench.Read(j => Ledger.Of(j.ReadJob(DemoShop.Job)).PhotosOf(flag.Id)).Select(p => p.Fact.MediaType));
        Assert.Equal(1, await page.Locator(".places img").CountAsync());
        Assert.Equal(1, await page.Locator(".places video").CountAsync());
    }

    [Fact]
    public async Task A_number_that_cannot_be_is_refused_at_its_place_and_nothing_is_saved()
    {
        var before = Balls().Count;
        var page = await chromium.Page();
        await page.GotoAsync($"{Air}?station=D&show=balls");
        await page.Locator(".cross [data-key='bearing-6']:visible").ClickAsync();
        await page.WaitForFunctionAsync("() => document.activeElement?.id === 'f-reading'");
        await page.Keyboard.TypeAsync("eighty");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Alert).WaitForAsync();
        Assert.Equal(before, Balls().Count);
    }

    [Fact]
    public async Task A_suggestion_refused_without_a_reason_asks_for_one()
    {
        var page = await chromium.Page();
        await page.GotoAsync($"{_workbench.Url}/port/{DemoShop.Featured}/cut/1/air");
        await page.GetByRole(AriaRole.Button, new() { Name = "No", Exact = true }).First.ClickAsync();
        await page.GetByText("Say in a few words why not").WaitForAsync();
        await page.GetByLabel("Reason").First.FillAsync("the short side has no metal left");
        await page.GetByRole(AriaRole.Button, new() { Name = "No", Exact = true }).First.ClickAsync();
        await page.GetByText("the short side has no metal left").First.WaitForAsync();
    }

    [Fact]
    public async Task The_air_of_a_port_can_be_used_by_anybody_and_never_scrolls_sideways()
    {
        // Each panel once, the widths in turn, and the fullest at all three.
        foreach (var (show, width, height) in new[]
        {
            ("balls", 360, 740), ("balls", 820, 1180), ("balls", 1280, 800), ("shape", 360, 740), ("speeds", 360, 740), ("flags", 820, 1180), ("metal", 1280, 800),
        })
        {
            var page = await chromium.Page(width, height);
            await page.GotoAsync($"{Air}?station=D&show={show}");
            Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0, $"{show} at {width}");
            Assert.Empty(await Axe.Wrong(page, $"{show} at {width}"));
        }
    }

    private static async Task Number(IPage page, string text)
    {
        // A hand types once the box stands ready.
        await page.WaitForFunctionAsync("() => document.activeElement?.id === 'f-reading'");
        await page.Keyboard.TypeAsync(text);
        await page.Leads(() => page.Keyboard.PressAsync("Enter"));
    }

    private Guid Station(string letter) =>
        _workbench.Read(j => Ledger.Of(j.ReadJob(DemoShop.Job)).All<Station>().First(s => s.Fact.Port == DemoShop.Featured && s.Fact.Letter == letter)).Id;

    private List<BallReading> Balls() => _workbench.Read(j => j.ReadJob(DemoShop.Job).Select(e => e.Fact).OfType<BallReading>().ToList());

    private List<WallPoint> Walls() => _workbench.Read(j => j.ReadJob(DemoShop.Job).Select(e => e.Fact).OfType<WallPoint>().ToList());
}
