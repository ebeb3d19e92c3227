using System.Diagnostics;
using Microsoft.Playwright;
using Portwright.Physics.Metering;
using Portwright.Shop.Record;

namespace Portwright.Web.Tests;

/// <summary>A porter with a page of his notebook and a workbench nobody has written anything into.</summary>
[Collection("browser")]
public sealed class FirstEveningTests(Chromium chromium, ITestOutputHelper output)
{
    private const string Page = "Intake 1, 28\"\n.100 - 62.1\n.200 - 121.4\n.300 - 160.2\n.400 - 184.3\n.500 - 194.9\n";

    [Fact]
    public async Task A_pasted_page_gives_its_first_right_number_within_a_minute_and_six_touches_and_the_question_is_asked_once()
    {
        using var workbench = await new RunningWorkbench().Start();
        var page = await chromium.Page(390, 844);
        var (since, touches) = (Stopwatch.StartNew(), 0);
        async Task Touch(string what)
        {
            touches++;
            await page.ClickAsync(what);
        }

        await page.GotoAsync(workbench.Url);
        await Touch("#f-notebook");
        await page.FillAsync("#f-notebook", Page);
        await page.Leads(() => Touch("text=Show what it says"));
        Assert.StartsWith($"{workbench.Url}/port/", page.Url, StringComparison.Ordinal);
        // With the other meaning in its doubt the last figure says nothing.
        Assert.Contains("195 ±", await Flow(page), StringComparison.Ordinal);
        await page.Leads(() => Touch("button[name=meaning][value=AtMeter]"));
        Assert.Contains("181.5 ±", await Flow(page), StringComparison.Ordinal);
        since.Stop();
        output.WriteLine($"{since.Elapsed.TotalSeconds:0.0} s, {touches} touches");
        Assert.InRange(since.Elapsed.TotalSeconds, 0, 60);
        Assert.InRange(touches, 1, 6);
        Assert.Equal(0, await page.Locator("button[name=meaning]").CountAsync());

        // Changed later, on the page of the bench: worked out anew, and said.
        var port = page.Url;
        await page.GotoAsync($"{workbench.Url}/bench");
        await page.Leads(() => page.ClickAsync("button[name=meaning][value=Restated]"));
        await page.GotoAsync(port);
        Assert.Contains("194.9 ±", await Flow(page), StringComparison.Ordinal);
        Assert.Contains("was taken to show what passes the meter; now it shows the flow already at 28", await page.TextContentAsync("main"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_first_page_of_a_port_says_what_makes_it_surer_and_what_would_tell_where_to_cut_after_the_caution()
    {
        using var workbench = await new RunningWorkbench().Start();
        var page = await Written(workbench, Page);
        var text = (await page.TextContentAsync("main"))!;
        Assert.Contains("What would make it surer", text, StringComparison.Ordinal);
        Assert.Contains("Not enough to say: flows tell what the port passes, not where it holds the air back. These three readings would tell.", text, StringComparison.Ordinal);
        Assert.Equal(3, await page.Locator(".part-where-to-cut dt").CountAsync());
        Assert.True(text.IndexOf("Grinding: eye, ear and dust protection", StringComparison.Ordinal) is > 0 and var caution && caution < text.IndexOf("Not enough to say", StringComparison.Ordinal));
        // The cheapest step stands first, and says what it brings.
        Assert.Matches(@"^\s*1 minute\s*Say whether the readout is already at 28.*Alone it makes of 195 ± \d+ cfm 194\.9 ± \d\.\d cfm", System.Text.RegularExpressions.Regex.Replace((await page.TextContentAsync(".part-surer"))!.Replace("What would make it surer", "", StringComparison.Ordinal), @"\s+", " "));
    }

    [Theory]
    [InlineData("194.9 at .500", "195 ±")]
    [InlineData("194.9 cfm at 28\", lift .500", "195 ±")]
    [InlineData("88.0 cfm at 10\" lift .450", "88 ±")]
    public async Task One_number_is_enough(string typed, string flow)
    {
        using var workbench = await new RunningWorkbench().Start();
        Assert.Contains(flow, await Flow(await Written(workbench, typed)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_flow_without_its_lift_asks_for_the_lift_and_nothing_else()
    {
        using var workbench = await new RunningWorkbench().Start();
        var page = await Written(workbench, "194.9");
        Assert.Equal("194.9", await page.InputValueAsync("#f-notebook"));
        await page.FillAsync("#f-lift", ".500");
        await page.Leads(() => page.ClickAsync("text=Show what it says"));
        Assert.Contains("195 ±", await Flow(page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_slip_on_the_page_is_asked_about_with_the_likely_number_first_and_one_touch_puts_it_right()
    {
        using var workbench = await new RunningWorkbench().Start();
        var page = await Written(workbench, Page.Replace("184.3", "1843", StringComparison.Ordinal));
        Assert.Contains("184.3?", await page.TextContentAsync(".question"), StringComparison.Ordinal);
        Assert.Empty(workbench.Read(j => j.ReadJobs()));
        await page.Leads(() => page.ClickAsync(".question button >> nth=0"));
        Assert.Contains("195 ±", await Flow(page), StringComparison.Ordinal);
        Assert.Equal(["62.1", "121.4", "160.2", "184.3", "194.9"], workbench.Read(j => Ledger.Of(j.ReadAll())).All<FlowReading>().Select(r => r.Fact.Reading.Text.Replace(" cfm", "", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_reading_kept_against_the_question_is_marked_so()
    {
        using var workbench = await new RunningWorkbench().Start();
        var page = await Written(workbench, Page.Replace("194.9", "1949", StringComparison.Ordinal));
        await page.Leads(() => page.ClickAsync("button[name=keep-row]"));
        var record = workbench.Read(j => Ledger.Of(j.ReadAll()));
        Assert.Equal("1949", Assert.Single(record.All<Confirmed>()).Fact.Text);
    }

    [Fact]
    public async Task Percent_ask_for_the_flow_at_the_full_mark_and_nothing_else()
    {
        using var workbench = await new RunningWorkbench().Start();
        var page = await Written(workbench, "lift %\n.100 21.5\n.200 40\n.300 55");
        await page.FillAsync("#f-full", "300");
        await page.Leads(() => page.ClickAsync("text=Show what it says"));
        Assert.StartsWith($"{workbench.Url}/port/", page.Url, StringComparison.Ordinal);
        var card = Assert.Single(workbench.Read(j => Ledger.Of(j.ReadShop())).All<BenchCard>()).Fact;
        Assert.True(card.Ranges[0].Meter is PercentCard { Scale: RangeScale.SquareRoot, DifferentialAssumed: true, PressureAssumed: true });
    }

    /// <summary>Every link of the first pages, and every link behind those: a page with a way on, and no error.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task No_link_of_the_first_pages_leads_nowhere(bool written)
    {
        using var workbench = await new RunningWorkbench().Start();
        var page = written ? await Written(workbench, Page) : await chromium.Page();
        var (left, seen, wrong) = (new Queue<string>(["/", "/bench", "/bench/range", "/bench/card", "/bench/plate", "/bench/morning", "/bench/calibrate", "/bench/set-ups", "/bench/ball", "/import", "/notebook", .. written ? [new Uri(page.Url).AbsolutePath] : Array.Empty<string>()]), new HashSet<string>(), new List<string>());
        while (left.TryDequeue(out var path) && seen.Count < 300)
        {
            if (!seen.Add(path)) continue;
            if (System.Text.RegularExpressions.Regex.IsMatch(path, @"\.(pdf|svg|png|csv|xlsx|html|json)(\?|$)"))
            {
                var file = await page.APIRequest.GetAsync(workbench.Url + path);
                if (!file.Ok) wrong.Add($"{path}: {file.Status}");
                continue;
            }

            var answer = await page.GotoAsync(workbench.Url + path);
            if (!answer!.Ok) wrong.Add($"{path}: {answer.Status}");
            var links = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('a[href]')].map(a => a.getAttribute('href')).filter(h => h.startsWith('/') && !h.startsWith('//'))");
            var ways = await page.Locator("main a[href], main button").CountAsync();
            if (ways == 0) wrong.Add($"{path}: no way on");
            foreach (var link in links) left.Enqueue(link.Split('#')[0]);
        }

        output.WriteLine($"{seen.Count} pages");
        Assert.Empty(wrong);
        Assert.True(seen.Count > 8);
    }

    /// <summary>The pages of the first evening: nothing in anybody's way, nothing wider than the smallest phone; pictures to look at where a folder is named for them.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_first_pages_can_be_used_and_read(bool written)
    {
        using var workbench = await new RunningWorkbench().Start();
        var page = written ? await Written(workbench, Page) : await chromium.Page();
        string[] paths = written
            ? [new Uri(page.Url).AbsolutePath, "/bench", "/", "/bench/range", "/sums?ask=0.202%20in2%20%C2%B1%200.002%20in2%20at%2028%20inH2O", "/sums?ask=194.9%20cfm%20at%20280%20to%2028"]
            : ["/", "/notebook", "/bench", "/bench/range", "/bench/range?kind=direct", "/bench/plate", "/bench/calibrate", "/import", "/sums"];
        var (wrong, folder) = (new List<string>(), Environment.GetEnvironmentVariable("PORTWRIGHT_SHOTS"));
        foreach (var path in paths)
        {
            await page.SetViewportSizeAsync(320, 640);
            await page.GotoAsync(workbench.Url + path);
            wrong.AddRange(await Axe.Wrong(page, path));
            var over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            if (over > 0) wrong.Add($"{path}: {over} px too wide at 320");
            foreach (var (width, height, scheme) in folder is null ? [] : new[] { (390, 844, ColorScheme.Light), (1280, 800, ColorScheme.Dark) })
            {
                await page.EmulateMediaAsync(new() { ColorScheme = scheme });
                await page.SetViewportSizeAsync(width, height);
                await page.ScreenshotAsync(new() { Path = Path.Combine(folder!, $"{width}{(written ? "w" : "e")}{System.Text.RegularExpressions.Regex.Replace(path, "[^a-z0-9]+", "_")}.png"), FullPage = true });
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    /// <summary>A sum asked in a sentence on the page: the terminal's number, with its doubt and working; a slip is asked about.</summary>
    [Fact]
    public async Task A_sum_is_asked_in_a_sentence_and_a_slip_in_it_is_put_right_by_one_touch()
    {
        using var workbench = await new RunningWorkbench().Start();
        var page = await chromium.Page(390, 844);
        await page.GotoAsync(workbench.Url);
        await page.Leads(() => page.ClickAsync("footer >> text=One sum"));
        await page.FillAsync("#f-ask", "194.9 cfm ± 1 % at 280 to 28");
        await page.Leads(() => page.PressAsync("#f-ask", "Enter"));
        Assert.Equal(0, await page.Locator(".sum").CountAsync());
        await page.Leads(() => page.ClickAsync(".question a >> nth=0"));
        Assert.Equal("194.9 cfm ± 1 % at 28 to 28", await page.InputValueAsync("#f-ask"));
        Assert.Contains("194.9 ± 1.9 cfm", await page.TextContentAsync(".sum"), StringComparison.Ordinal);
        await page.FillAsync("#f-ask", "88.0 cfm ± 1 % at 10 to 28");
        await page.Leads(() => page.PressAsync("#f-ask", "Enter"));
        Assert.Contains("143.6 ± 1.4 cfm", await page.TextContentAsync(".sum"), StringComparison.Ordinal);
        Assert.Contains("effective area", await page.TextContentAsync(".sum"), StringComparison.Ordinal);
        await page.Leads(() => page.ClickAsync("ul.sums a >> nth=2"));
        Assert.Contains("2.151 lb/min", await page.TextContentAsync(".sum .answers"), StringComparison.Ordinal);
    }

    private static async Task<string> Flow(IPage page) => (await page.TextContentAsync(".part-flow"))!;

    private async Task<IPage> Written(RunningWorkbench workbench, string text)
    {
        var page = await chromium.Page(390, 844);
        await page.GotoAsync(workbench.Url);
        await page.FillAsync("#f-notebook", text);
        await page.Leads(() => page.ClickAsync("text=Show what it says"));
        return page;
    }
}
