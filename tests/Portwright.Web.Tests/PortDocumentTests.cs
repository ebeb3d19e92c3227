using System.Net;
using System.Text.RegularExpressions;
using Portwright.Shop.Budgets;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;
using Portwright.Store.Demo;
using Portwright.Store.Runs;

namespace Portwright.Web.Tests;

/// <summary>The port page says what the port's document says, and says it in reach.</summary>
[Collection("pages")]
public sealed partial class PortDocumentTests(Chromium chromium, AirTests.DemoPorts demo) : IClassFixture<AirTests.DemoPorts>
{
    private readonly RunningWorkbench _workbench = demo.Bench;

    private string Port => $"{_workbench.Url}/port/{DemoShop.Featured}";

    [Theory]
    [InlineData("us", UnitSystem.UsCustomary)]
    [InlineData("si", UnitSystem.Si)]
    public async Task Every_sentence_of_the_document_stands_on_the_page(string cookie, UnitSystem units)
    {
        var text = await Text(Port, cookie);
        var document = PortDocument.Of(At());
        Assert.True(document.Blocks.Count() > 20);
        // Cells under a head that names their unit stand without it; job, head, port and cut are the words over the page.
        var bare = document.Blocks.OfType<Table>().SelectMany(t => t.Rows.SelectMany(r => r.Zip(t.Columns).Where(c => c.Second.Dimension is not null).Select(c => c.First.Text))).ToHashSet(ReferenceEqualityComparer.Instance);
        var missing = document.Parts.SelectMany(p => new[] { p.Heading }.Concat(p.Blocks.SelectMany(Document.Of)))
            .Select(s => Plain(bare.Contains(s) ? s.BareIn(units) : s.In(units)))
            .Where(s => !text.Contains(s, StringComparison.Ordinal)).ToList();
        Assert.True(missing.Count == 0, string.Join('\n', missing));
    }

    [Fact]
    public async Task What_is_for_the_engineer_stands_behind_one_fold_and_nowhere_else()
    {
        var page = await chromium.Page();
        await page.GotoAsync(Port);
        var fold = Assert.Single(await page.Locator("details.engineer").AllAsync());
        Assert.Null(await fold.GetAttributeAsync("open"));
        foreach (var part in PortDocument.Of(At()).Parts.Where(p => p.For == Reader.Engineer))
        {
            Assert.Equal(1, await fold.Locator($"#part-{part.Key}").CountAsync());
            Assert.False(await page.Locator($"#part-{part.Key}").IsVisibleAsync());
        }
    }

    [Fact]
    public async Task The_fullest_sheet_with_its_folds_open_stands_in_nobodys_way_by_axe()
    {
        var page = await chromium.Page(390, 844);
        await page.GotoAsync(Port);
        await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(d => d.open = true)");
        Assert.Empty(await Axe.Wrong(page, "the featured port"));
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0);
    }

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task A_doubt_on_the_sheet_leads_to_where_it_comes_from_down_to_what_was_typed(int width, int height)
    {
        var page = await chromium.Page(width, height);
        await page.GotoAsync(Port);
        var why = page.Locator(".part-flow a.why").First;
        Assert.Contains("/budget?of=", (await why.GetAttributeAsync("href"))!, StringComparison.Ordinal);
        await why.ClickAsync();
        await page.GetByText("What was typed").WaitForAsync();
        var text = Plain((await page.Locator("main").TextContentAsync())!);
        var first = PortNumber.First(At())!;
        foreach (var table in DoubtSaid.Alone(At(), first, BudgetDetail.Main).Blocks.OfType<Table>())
        {
            Assert.Contains(Plain(table.Caption.In(UnitSystem.UsCustomary)), text, StringComparison.Ordinal);
            Assert.All(table.Rows, r => Assert.Contains(Plain(r[0].Text.In(UnitSystem.UsCustomary)), text, StringComparison.Ordinal));
        }

        Assert.Empty(await Axe.Wrong(page, "a budget"));
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0);
        await page.GetByText("Every cause by itself").ClickAsync();
        await page.GetByText("Small causes together").WaitForAsync();
        Assert.Equal(first.Estimate.Contributions.Length, await page.Locator(".part-doubt tbody tr").CountAsync());
    }

    [Fact]
    public async Task No_name_of_a_theory_stands_on_the_porters_line()
    {
        var page = await chromium.Page();
        foreach (var path in new[] { $"/port/{DemoShop.Featured}", $"/port/{DemoShop.Featured}/air", $"/job/{DemoShop.Job}", $"/job/{DemoShop.Job}/targets", $"/job/{DemoShop.Job}/engine", "/bench" })
        {
            await page.GotoAsync(_workbench.Url + path);
            // All folds but those for the engineer are opened first: what a porter may read without asking for more.
            await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(d => d.open = d.querySelector('summary').textContent.trim() !== 'For the engineer')");
            Assert.DoesNotMatch(Theory(), await page.Locator("main").InnerTextAsync());
            if (path == $"/port/{DemoShop.Featured}") Assert.Matches(Theory(), (await page.Locator("main").TextContentAsync())!);
        }
    }

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task The_sheet_is_printed_and_the_air_seen_without_scrolling(int width, int height)
    {
        var page = await chromium.Page(width, height);
        await page.GotoAsync(Port);
        foreach (var words in new[] { "Print this sheet", "See the air", " findings" })
        {
            var box = await page.GetByRole(Microsoft.Playwright.AriaRole.Link, new() { Name = words }).First.BoundingBoxAsync();
            Assert.True(box!.Y + box.Height <= height, $"{words} ends at {box.Y + box.Height}");
        }

        using var client = new HttpClient();
        var sheet = await client.GetAsync(new Uri(_workbench.Url + await page.GetByText("Print this sheet").GetAttributeAsync("href")));
        Assert.Equal("application/pdf", sheet.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task One_touch_prints_every_sheet_of_the_job_and_asking_for_more_prints_the_engineers_parts()
    {
        var page = await chromium.Page(390, 844);
        await page.GotoAsync($"{_workbench.Url}/job/{DemoShop.Job}");
        var link = page.GetByRole(Microsoft.Playwright.AriaRole.Link, new() { Name = "Print all sheets" });
        Assert.True((await link.BoundingBoxAsync())!.Y < 844);
        var all = await Pages(await link.GetAttributeAsync("href"));
        var one = await Pages($"/port/{DemoShop.Featured}/cut/3/sheet.pdf");
        var full = await Pages($"/port/{DemoShop.Featured}/cut/3/sheet.pdf?full=1");
        var ports = _workbench.Read(j => Ledger.Of(j.ReadJob(DemoShop.Job)).All<Port>().Count);
        Assert.True(all > ports, $"{all} pages for {ports} ports and the job's own");
        Assert.True(full > one, $"{full} pages in full, {one} for the porter");

        async Task<int> Pages(string? path)
        {
            using var client = new HttpClient();
            using var answer = await client.GetAsync(new Uri(_workbench.Url + path));
            Assert.Equal("application/pdf", answer.Content.Headers.ContentType!.MediaType);
            return Page().Count(System.Text.Encoding.Latin1.GetString(await answer.Content.ReadAsByteArrayAsync()));
        }
    }

    private PortAtCut At() => _workbench.Read(j => PortAtCut.Of(new Reductions(Ledger.Of(j.ReadJobAndShop(DemoShop.Job))), DemoShop.Featured, null, new KeptRuns(null)));

    private static async Task<string> Text(string url, string units)
    {
        using var client = new HttpClient();
        client.DefaultRequestHeaders.Add("Cookie", $"portwright.units={units}");
        return Plain(WebUtility.HtmlDecode(Tag().Replace(await client.GetStringAsync(url), "")));
    }

    private static string Plain(string text) => Space().Replace(text, " ");

    [GeneratedRegex("/Type\\s*/Page\\b")]
    private static partial Regex Page();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("\\s+")]
    private static partial Regex Space();

    [GeneratedRegex("docs/theory|Bonferroni|Jeffreys|Fieller|Welch|Student's|JCGM|\\bISO \\d")]
    private static partial Regex Theory();
}
