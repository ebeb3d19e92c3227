using System.IO.Compression;
using System.Text;
using CsCheck;
using Portwright.Shop.Units;
using Portwright.Store.Export;
using Portwright.Store.Import;

namespace Portwright.Store.Tests.Export;

public sealed class SheetFileTests
{
    private static readonly SheetTable Table = new("Readings", ["Notes above"], ["Lift (in)", "CFM", "Sound"],
    [
        [0.1, 64.2, "=HYPERLINK(\"http://example.invalid\")"],
        [0.2, 128.9, "'quoted"],
        [0.3, (double?)null, "-2, \"sharp\"\r\nsecond line"],
    ]);

    // OWASP, "CSV Injection": the characters that begin a formula.
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@SUM(A1)")]
    [InlineData("\tx")]
    [InlineData("\rx")]
    [InlineData("\n=x")]
    [InlineData("'=x")]
    [InlineData("'")]
    [InlineData("＝1")]
    [InlineData("plain")]
    [InlineData("")]
    public void Text_that_could_run_is_made_harmless_and_survives(string text)
    {
        var written = HarmlessText.Write(text);
        Assert.False(written.Length > 0 && "=+-@\t\r\n＝＋－＠".Contains(written[0], StringComparison.Ordinal));
        Assert.Equal(text, HarmlessText.Read(written));
    }

    [Fact]
    public void Any_text_survives_being_made_harmless() => Gen.String.Sample(t => Assert.Equal(t, HarmlessText.Read(HarmlessText.Write(t))));

    [Fact]
    public void CSV_has_a_byte_order_mark_and_CR_LF_and_keeps_numbers_as_numbers()
    {
        var bytes = CsvFile.Write(Table);
        Assert.Equal([0xEF, 0xBB, 0xBF], bytes[..3]);
        Assert.StartsWith("Notes above\r\nLift (in),CFM,Sound\r\n0.1,64.2,\"'=HYPERLINK(\"\"http://example.invalid\"\")\"\r\n0.2,128.9,''quoted\r\n0.3,,\"'-2,", Encoding.UTF8.GetString(bytes[3..]), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_exported_as_CSV_imports_again()
    {
        Assert.True(TableFile.TryRead(CsvFile.Write(Table), "out.csv", null, out var back, out var problem), problem);
        for (var r = 0; r < Table.Rows.Count; r++) Assert.Equal(Table.Rows[r][2].Text, HarmlessText.Read(back[r + 2, 2].Text));
        Assert.Equal([64.2, 128.9], SweepTable.Guess(back, UnitSystem.UsCustomary).Readings.Select(x => x.Reading.Value));
    }

    [Fact]
    public async Task A_workbook_holds_the_text_letter_for_letter_and_no_formula()
    {
        var bytes = await XlsxFile.WriteAsync([Table, Table with { Name = "Flow: [reduced] of a port with a long name" }]);
        Assert.True(TableFile.TryRead(bytes, "out.xlsx", null, out var back, out var problem), problem);
        // XML reads every line end as LF.
        for (var r = 0; r < Table.Rows.Count; r++) Assert.Equal(Table.Rows[r][2].Text!.ReplaceLineEndings("\n"), back[r + 2, 2].Text.ReplaceLineEndings("\n"));
        Assert.Equal(2, back.Sheets.Count);
        Assert.Equal([64.2, 128.9], SweepTable.Guess(back, UnitSystem.UsCustomary).Readings.Select(x => x.Reading.Value));
        using var zip = new ZipArchive(new MemoryStream(bytes));
        foreach (var part in zip.Entries.Where(e => e.FullName.StartsWith("xl/worksheets/", StringComparison.Ordinal)))
        {
            using var reader = new StreamReader(part.Open());
            Assert.DoesNotContain("<f>", await reader.ReadToEndAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Two_sheets_of_one_name_are_a_programmers_mistake() =>
        await Assert.ThrowsAsync<ArgumentException>(() => XlsxFile.WriteAsync([Table, Table]));
}
