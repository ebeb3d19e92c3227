using Portwright.Store.Import;

namespace Portwright.Store.Tests.Import;

public sealed class WorkbookTests
{
    [Fact]
    public void A_workbook_is_read_with_its_formulas_left_where_they_are()
    {
        var p = SampleFile.Preview(WorkbookBytes.Of(
            ["Bench B, draw, 28 inH2O"],
            [null],
            ["Lift", "Int 1 run 1", "Int 1 run 2", "Mean"],
            [0.1, 64.2, 64.5, new WorkbookBytes.Formula("AVERAGE(B4:C4)", 64.35)],
            [0.2, 128.9, 129.4, new WorkbookBytes.Formula("AVERAGE(B5:C5)", 129.15)],
            [0.30000000000000004, 183.4, 183.1, new WorkbookBytes.Formula("AVERAGE(B6:C6)", 183.25)],
            [new WorkbookBytes.Formula("MAX(A4:A6)", 0.3), new WorkbookBytes.Formula("MAX(B4:B6)", 183.4), new WorkbookBytes.Formula("MAX(C4:C6)", 183.1)]), "a.xlsx");
        Assert.True(p.CanBeSaved, string.Join("\n", p.Problems.Select(x => x.Text)));
        Assert.Equal(6, p.Readings.Count);
        Assert.Equal(("0.3", 183.4, 1, "row 6, column B"), (p.Readings[4].Lift.Text, p.Readings[4].Reading.Value, p.Readings[4].Repeat, p.Readings[4].Address));
        Assert.Equal("row 7", Assert.Single(p.LeftOut).Row);
        Assert.All(p.Readings, r => Assert.Equal(28, r.TestPressure!.Value));
    }

    [Fact]
    public void A_percentage_reads_as_it_is_shown()
    {
        var p = SampleFile.Preview(WorkbookBytes.Of(["Lift", "% of range"], [0.1, new WorkbookBytes.Percent(0.415)], [0.2, new WorkbookBytes.Percent(0.832)]), "a.xlsx");
        Assert.Equal([41.5, 83.2], p.Readings.Select(r => r.Reading.Value));
    }

    [Fact]
    public void Dates_and_errors_are_named_with_their_cure()
    {
        var p = SampleFile.Preview(WorkbookBytes.Of(["Lift", "CFM"], [0.1, 64.2], [new WorkbookBytes.Date(45293), 128.9], [0.3, new WorkbookBytes.Error("#DIV/0!")]), "a.xlsx");
        Assert.Equal(["row 3, column A", "row 4, column B"], p.Problems.Select(x => x.Address));
        Assert.Contains("date", p.Problems[0].Text, StringComparison.Ordinal);
        Assert.Contains("#DIV/0!", p.Problems[1].Text, StringComparison.Ordinal);
        Assert.False(p.CanBeSaved);
    }

    [Fact]
    public void A_workbook_named_as_text_is_still_a_workbook() =>
        Assert.Equal(2, SampleFile.Preview(WorkbookBytes.Of(["Lift", "CFM"], [0.1, 64.2], [0.2, 128.9]), "readings.csv").Readings.Count);

    [Fact]
    public void Cells_that_only_carry_a_colour_do_not_make_a_sheet_large()
    {
        var sheet = WorkbookBytes.Sheet(["Lift", "CFM"], [0.1, 64.2], [0.2, 128.9]).Replace("</sheetData>", "<row r=\"1048576\"><c r=\"XFD1048576\" s=\"1\"/></row></sheetData>", StringComparison.Ordinal);
        Assert.Equal(2, SampleFile.Preview(WorkbookBytes.Of(sheet), "a.xlsx").Readings.Count);
    }

    [Fact]
    public void A_sheet_that_is_not_there_is_refused_with_those_that_are()
    {
        Assert.False(TableFile.TryRead(WorkbookBytes.Of(["Lift", "CFM"], [0.1, 64.2]), "a.xlsx", "Exhaust", out _, out var problem));
        Assert.Contains("It has Sweep.", problem, StringComparison.Ordinal);
    }
}
