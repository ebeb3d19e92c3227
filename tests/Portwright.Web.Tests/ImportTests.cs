using System.Text;
using Microsoft.Playwright;
using Portwright.Shop.Record;

namespace Portwright.Web.Tests;

/// <summary>A spreadsheet through the page's door: shown, changed where need be, saved whole or not at all.</summary>
[Collection("browser")]
public sealed class ImportTests(Chromium chromium)
{
    private const string Sheet = """
        Back bench, intake one; 28" water

        Lift (in);% run 1;% run 2;notes
        .100;17,9;18,0;
        .200;37,0;37,4;
        .300;55,2;55,6;whistles
        Average;36,7;37,0;
        """;

    [Fact]
    public async Task A_sheet_with_notes_a_decimal_comma_and_an_average_is_shown_and_saved()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        await workbench.Start();
        var page = await Send(workbench, "intake-1.csv", Sheet);
        Assert.Equal("6 readings of intake-1.csv", await page.TextContentAsync("h1"));
        Assert.Contains("\"Average\": not a reading", await page.TextContentAsync("main"), StringComparison.Ordinal);

        await page.SelectOptionAsync("select[name=port-0]", new SelectOptionValue { Label = "head A intake 1" });
        await page.ClickAsync("button[value=save]");
        await page.WaitForURLAsync($"**/port/{seed.Intake}");

        var ledger = workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job)));
        var saved = ledger.All<FlowReading>();
        Assert.Equal(["17,9", "18,0", "37,0", "37,4", "55,2", "55,6"], saved.Select(r => r.Fact.Reading.Text));
        Assert.Equal([17.9, 18.0, 37.0, 37.4, 55.2, 55.6], saved.Select(r => r.Fact.Reading.Value));
        Assert.All(saved, r => Assert.StartsWith("intake-1.csv, row ", r.Entry.Source, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_same_file_sent_twice_is_saved_once()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        await workbench.Start();
        for (var i = 0; i < 2; i++)
        {
            var page = await Send(workbench, "intake-1.csv", Sheet);
            await page.SelectOptionAsync("select[name=port-0]", new SelectOptionValue { Label = "head A intake 1" });
            await page.ClickAsync("button[value=save]");
            await page.WaitForURLAsync($"**/port/{seed.Intake}");
        }

        Assert.Equal(6, workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job))).All<FlowReading>().Count);
    }

    [Fact]
    public async Task A_damaged_cell_is_named_by_row_and_column_and_nothing_is_saved()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        await workbench.Start();
        var page = await Send(workbench, "intake-1.csv", Sheet.Replace("55,2", "5x,2", StringComparison.Ordinal));
        Assert.Contains("row 6, column B", await page.TextContentAsync("main .note"), StringComparison.Ordinal);
        Assert.Equal(0, await page.Locator("button[value=save]").CountAsync());
        Assert.Empty(workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job))).All<FlowReading>());
    }

    [Fact]
    public async Task A_column_guessed_wrong_is_read_as_the_person_says()
    {
        using var workbench = new RunningWorkbench();
        Seed.Put(workbench.Data);
        await workbench.Start();
        var page = await Send(workbench, "two.csv", "Lift;A;B\n0.1;17.9;18.0\n0.2;37.0;37.4\n0.3;55.2;55.6\n");
        await page.Locator("details.more summary").ClickAsync();
        await page.SelectOptionAsync("select[name=role-2]", "LeftOut");
        await page.ClickAsync("button[value=look]");
        await page.WaitForFunctionAsync("() => document.querySelector('h1').textContent.startsWith('3 readings')");
    }

    [Fact]
    public async Task A_file_that_is_no_table_ends_in_a_sentence()
    {
        using var workbench = new RunningWorkbench();
        Seed.Put(workbench.Data);
        await workbench.Start();
        var page = await Send(workbench, "sweep.xlsx", "\u0000\u0001\u0002 not a workbook at all \u0003");
        var said = await page.TextContentAsync("main");
        Assert.Contains("sweep.xlsx", said, StringComparison.Ordinal);
        Assert.Contains("Nothing was saved.", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_brought_to_an_empty_record_becomes_a_job_in_place()
    {
        using var workbench = await new RunningWorkbench().Start();
        var page = await Send(workbench, "two.csv", "Lift;intake 2;exhaust 2\n0.1;62.1;48.0\n0.2;121.4;91.0\n0.3;160.2;120.0\n");
        await page.Leads(() => page.ClickAsync("button[value=new]"));
        Assert.StartsWith($"{workbench.Url}/port/", page.Url, StringComparison.Ordinal);
        var record = workbench.Read(j => Ledger.Of(j.ReadAll()));
        Assert.Equal(6, record.All<FlowReading>().Count);
        Assert.Equal(["intake 1", "exhaust 1", "intake 2", "exhaust 2"], record.PortsOf(Assert.Single(record.All<Head>()).Id).Select(p => p.Fact.Name));
        Assert.Equal([Physics.TestPiece.FlowDirection.Draw, Physics.TestPiece.FlowDirection.Blow], record.All<Sweep>().Select(s => s.Fact.Direction));
    }

    [Fact]
    public async Task Enter_in_a_box_of_the_preview_saves()
    {
        using var workbench = new RunningWorkbench();
        var seed = Seed.Put(workbench.Data);
        await workbench.Start();
        var page = await Send(workbench, "intake-1.csv", Sheet);
        await page.SelectOptionAsync("select[name=port-0]", new SelectOptionValue { Label = "head A intake 1" });
        await page.Leads(() => page.PressAsync("input[name=cut-0]", "Enter"));
        Assert.Equal($"{workbench.Url}/port/{seed.Intake}", page.Url);
        Assert.Equal(6, workbench.Read(j => Ledger.Of(j.ReadJob(seed.Job))).All<FlowReading>().Count);
    }

    private async Task<IPage> Send(RunningWorkbench workbench, string name, string content)
    {
        var page = await chromium.Page();
        await page.GotoAsync($"{workbench.Url}/import");
        await page.SetInputFilesAsync("#file", new FilePayload { Name = name, MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(content) });
        await page.Leads(() => page.ClickAsync("main button.main"));
        return page;
    }
}
