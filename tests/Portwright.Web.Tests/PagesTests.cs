using Microsoft.Playwright;
using Portwright.Shop.Record;
using Portwright.Store;

namespace Portwright.Web.Tests;

/// <summary>Every page, in both themes, at every width: it can be used, and it can be read.</summary>
[Collection("pages")]
public sealed class PagesTests(Chromium chromium, PagesTests.ReadPort port) : IClassFixture<PagesTests.ReadPort>
{
    private readonly RunningWorkbench _workbench = port.Bench;
    private readonly Seed _seed = port.Seed;

    /// <summary>A job with a baseline read to its end and a second cut read half way; no test changes it.</summary>
    public sealed class ReadPort : IAsyncLifetime
    {
        public RunningWorkbench Bench { get; } = new();

        public Seed Seed { get; private set; } = null!;

        public async ValueTask InitializeAsync()
        {
            Seed = Seed.Put(Bench.Data);
            using (var journal = Journal.Open(Bench.Data))
            {
                Seed.Readings(journal, Seed.Job, Seed.Sweep, 12);
                var cut1 = Entry.About(Guid.CreateVersion7(), Seed.Job, new Cut(Seed.Intake, 1, "short side laid back", DateOnly.FromDateTime(DateTime.Now)), Seed.Now);
                journal.Append(cut1);
                var second = Seed.NewSweep(journal, Seed.Job, Seed.Bench, cut1.Subject, 12);
                Seed.Readings(journal, Seed.Job, second, 7, 46);
                Seed = Seed with { Sweep = second };
            }

            await Bench.Start();
        }

        public ValueTask DisposeAsync()
        {
            Bench.Dispose();
            return ValueTask.CompletedTask;
        }
    }

    private IEnumerable<string> Pages()
    {
        var reading = _workbench.Read(j => j.ReadJob(_seed.Job).First(e => e.Fact is FlowReading).Subject);
        return
        [
            "/", $"/job/{_seed.Job}", $"/job/{_seed.Job}/plan", $"/job/{_seed.Job}/targets", $"/port/{_seed.Intake}", $"/port/{_seed.Intake}/cut/0", $"/port/{_seed.Intake}/start",
            $"/port/{_seed.Intake}/next-cut", $"/port/{_seed.Intake}/valve", $"/sweep/{_seed.Sweep}", $"/sweep/{_seed.Sweep}/set-up", $"/reading/{reading}",
            "/bench", "/bench/card", "/bench/range", "/bench/range?name=4", "/bench/plate", "/bench/morning", "/bench/calibrate", "/bench/set-ups", "/import", "/notebook", "/sums", "/sums?ask=194.9%20cfm%20at%2010%20to%2028", "/nowhere",
        ];
    }

    [Fact]
    public async Task Nothing_stands_in_the_way_of_anybody_by_axe()
    {
        var page = await chromium.Page();
        var wrong = new List<string>();
        foreach (var path in Pages())
        {
            await page.GotoAsync(_workbench.Url + path);
            wrong.AddRange(await Axe.Wrong(page, path));
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        Assert.Empty(chromium.Complaints);
    }

    [Theory]
    [InlineData(360, 740)]
    [InlineData(820, 1180)]
    [InlineData(1280, 800)]
    public async Task No_page_scrolls_sideways(int width, int height)
    {
        var page = await chromium.Page(width, height);
        var wide = new List<string>();
        foreach (var path in Pages())
        {
            await page.GotoAsync(_workbench.Url + path);
            var over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            if (over > 0)
            {
                wide.Add($"{path}: {over} px");
            }
        }

        Assert.True(wide.Count == 0, string.Join('\n', wide));
    }

    [Fact]
    public async Task Targets_are_large_enough_for_dirty_hands()
    {
        var page = await chromium.Page(390, 844);
        var small = new List<string>();
        foreach (var path in Pages())
        {
            await page.GotoAsync(_workbench.Url + path);
            var least = path.StartsWith("/sweep/", StringComparison.Ordinal) && !path.EndsWith("set-up", StringComparison.Ordinal) ? 56 : 44;
            small.AddRange((await page.EvaluateAsync<string[]>(
                """
                least => [...document.querySelectorAll('main button, main select, main input:not([type=hidden]):not([type=checkbox]):not([type=radio]), main a.button, main summary')]
                  .filter(e => e.checkVisibility() && e.getBoundingClientRect().height < least - 0.5 && !e.closest('svg'))
                  .map(e => e.outerHTML.slice(0, 90) + ' ' + e.getBoundingClientRect().height)
                """,
                least)).Select(s => $"{path}: {s}"));
        }

        Assert.True(small.Count == 0, string.Join('\n', small));
    }

    [Fact]
    public async Task No_page_asks_the_internet_for_anything()
    {
        var page = await chromium.Page();
        var foreign = new List<string>();
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(_workbench.Url, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal) && !request.Url.StartsWith("ws://127.0.0.1", StringComparison.Ordinal))
            {
                foreign.Add(request.Url);
            }
        };
        foreach (var path in Pages())
        {
            await page.GotoAsync(_workbench.Url + path);
        }

        Assert.Empty(foreign);
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task No_page_carries_an_inline_style_or_script()
    {
        using var client = new HttpClient();
        foreach (var path in Pages())
        {
            using var answer = await client.GetAsync(_workbench.Url + path);
            var html = await answer.Content.ReadAsStringAsync();
            Assert.DoesNotContain(" style=\"", html, StringComparison.Ordinal);
            Assert.DoesNotContain("<style", html, StringComparison.Ordinal);
            Assert.DoesNotMatch("<script(?![^>]*\\bsrc=)(?![^>]*type=\"application/json\")", html);
            Assert.DoesNotMatch("\\son[a-z]+=\"", html);
        }
    }

    [Fact]
    public async Task A_page_from_elsewhere_cannot_open_the_live_connection()
    {
        using var elsewhere = new ForeignPage();
        var page = await chromium.Page();
        await page.GotoAsync(elsewhere.Url);
        var opened = await page.EvaluateAsync<string>(
            """
            port => new Promise(done => {
              const socket = new WebSocket(`ws://127.0.0.1:${port}/_blazor`);
              socket.onopen = () => done('open'); socket.onerror = () => done('refused');
            })
            """,
            _workbench.Port);
        Assert.Equal("refused", opened);
        var ours = await chromium.Page();
        await ours.GotoAsync(_workbench.Url);
        Assert.Equal("open", await ours.EvaluateAsync<string>(
            "port => new Promise(done => { const s = new WebSocket(`ws://127.0.0.1:${port}/_blazor`); s.onopen = () => done('open'); s.onerror = () => done('refused'); })",
            _workbench.Port));
    }

    [Theory]
    [InlineData("paper", "rgb(243, 241, 234)")]
    [InlineData("lamp", "rgb(20, 24, 27)")]
    public async Task The_light_can_be_chosen_and_is_remembered(string theme, string ground)
    {
        var page = await chromium.Page(scheme: theme == "paper" ? ColorScheme.Dark : ColorScheme.Light);
        await page.GotoAsync(_workbench.Url);
        await page.Locator($"button[value={theme}]").ClickAsync();
        await page.WaitForFunctionAsync("theme => document.documentElement.dataset.theme === theme", theme);
        await page.GotoAsync($"{_workbench.Url}/bench");
        Assert.Equal(ground, await page.EvaluateAsync<string>("() => getComputedStyle(document.documentElement).backgroundColor"));
    }

    /// <summary>Pictures to look at, where a folder is named for them.</summary>
    [Fact]
    public async Task Every_page_can_be_drawn_at_every_width()
    {
        var folder = Environment.GetEnvironmentVariable("PORTWRIGHT_SHOTS");
        foreach (var (width, height) in new[] { (390, 844), (820, 1180), (1280, 800) })
        {
            foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
            {
                if (folder is null && (width != 390 || scheme != ColorScheme.Dark))
                {
                    continue;
                }

                var page = await chromium.Page(width, height, scheme);
                foreach (var path in Pages())
                {
                    var answer = await page.GotoAsync(_workbench.Url + path);
                    Assert.True(answer!.Status is 200 || path == "/nowhere", $"{path}: {answer.Status}");
                    if (folder is null)
                    {
                        continue;
                    }

                    await page.EvaluateAsync("() => document.fonts.ready");
                    var name = System.Text.RegularExpressions.Regex.Replace(path, "[0-9a-f]{8}-[0-9a-f-]{27}", "x").Replace('/', '_').Replace('?', '_');
                    await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{width}{(scheme == ColorScheme.Dark ? "d" : "l")}{name}.png"), FullPage = !path.StartsWith("/sweep", StringComparison.Ordinal) || width > 900 });
                }
            }
        }
    }
}
