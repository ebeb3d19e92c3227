using System.Diagnostics;
using System.IO.Compression;
using System.Text;
using CsCheck;
using Portwright.Shop.Bench;
using Portwright.Shop.Units;
using Portwright.Store.Import;

namespace Portwright.Store.Tests.Import;

/// <summary>Alone, so that the processor time and memory counted are the file's own.</summary>
[CollectionDefinition("measured", DisableParallelization = true)]
public sealed class MeasuredCollection;

/// <summary>Files made to harm, or broken on the way: each ends in one clear sentence, soon and small.</summary>
[Collection("measured")]
public sealed class HostileFileTests
{
    public static TheoryData<string, string> Files => new()
    {
        { "an archive that swells to a gigabyte", "unpacks to more than 32 MB" },
        { "an archive that lies about its size", "damaged" },
        { "an archive of many parts", "parts, more than" },
        { "an entity that grows", "document type" },
        { "an outside entity", "document type" },
        { "a cell of a megabyte", "row 1, column A: the cell holds" },
        { "a shared text of a megabyte", "row 1, column A: the cell holds" },
        { "a cell in column XFD", "more than 200 columns" },
        { "a cell in row 1048576", "more than 20,000 rows" },
        { "a sheet of a million rows", "unpacks to more than 32 MB" },
        { "a sheet of 300,000 cells", "cells in use" },
        { "a workbook cut short", "damaged" },
        { "a workbook with a byte changed", "damaged" },
        { "an archive without a workbook", "without a workbook" },
        { "an OpenDocument sheet", "OpenDocument" },
        { "an old or locked workbook", "old .xls workbook or one locked" },
        { "a web page named csv", "web page" },
        { "an XML named csv", "XML file" },
        { "a PDF named csv", "a PDF" },
        { "a picture named xlsx", "a picture" },
        { "random bytes", "not text" },
        { "nothing", "is empty" },
        { "blank lines", "nothing but blank lines" },
        { "a file over 20 MB", "more than the 20 MB" },
        { "a text of a million rows", "more than 20,000 rows" },
        { "a text of 20,000 columns", "more than 200 columns" },
        { "a text cell of a megabyte", "row 2, column B: the cell holds" },
        { "one line of 20 MB", "" },
        { "a quote never closed", "row 3: a quote mark is opened and never closed" },
        { "a quote never closed in a large file", "" },
        { "UTF-16 cut in the middle of a letter", "damaged" },
    };

    [Theory]
    [MemberData(nameof(Files))]
    public void Ends_in_a_clear_sentence_within_two_seconds_and_300_MB(string file, string says)
    {
        var bytes = Make(file);
        GC.Collect();
        var before = GC.GetTotalAllocatedBytes(true);
        var problem = "";
        var seconds = Seconds(() => problem = SampleFile.Refusal(bytes, "C:\\shop\\readings.csv"));
        var allocated = (GC.GetTotalAllocatedBytes(true) - before) / (1024.0 * 1024);
        Assert.StartsWith("readings.csv", problem, StringComparison.Ordinal);
        Assert.Contains(says, problem, StringComparison.Ordinal);
        Assert.EndsWith(".", problem, StringComparison.Ordinal);
        Assert.True(problem.Length < 400, problem);
        Assert.True(seconds < 2, $"took {seconds:F2} s");
        // All that was ever allocated, so the peak is below it.
        Assert.True(allocated < 300, $"allocated {allocated:F0} MB");
        TestContext.Current.TestOutputHelper?.WriteLine($"{file}: {seconds * 1000:F0} ms, {allocated:F0} MB: {problem}");
    }

    [Fact]
    public void Outside_references_macros_and_links_are_never_looked_at()
    {
        // Parts that would throw if anything parsed them.
        var broken = Encoding.UTF8.GetBytes("<!DOCTYPE x SYSTEM \"http://example.invalid/x.dtd\"><x>&out;");
        var bytes = WorkbookBytes.Of(WorkbookBytes.Sheet(["Lift", "CFM"], [0.1, 64.2]),
            ("xl/externalLinks/externalLink1.xml", broken), ("xl/vbaProject.bin", broken), ("xl/connections.xml", broken), ("xl/worksheets/_rels/sheet1.xml.rels", broken), ("../../evil.xml", broken));
        Assert.Single(SampleFile.Preview(bytes, "a.xlsx").Readings);
    }

    [Fact]
    public void A_formula_in_a_text_file_stays_text()
    {
        var p = SampleFile.Preview("Lift,CFM\n.1,=1+1\n.2,128.9\n"u8.ToArray(), "a.csv");
        Assert.Equal("row 2, column B", Assert.Single(p.Problems).Address);
        Assert.Equal("=1+1", p.Table[1, 1].Text);
    }

    [Fact]
    public void A_lone_bracket_under_a_heading_is_no_unit()
    {
        var p = SampleFile.Preview("Lift,CFM\n(,\n.1,64.2\n.2,128.9\n"u8.ToArray(), "a.csv");
        Assert.Equal(2, p.Readings.Count);
    }

    [Fact]
    public void The_largest_file_within_the_limits_is_read_in_time()
    {
        var text = new StringBuilder("Lift,CFM,CFM,CFM,CFM\n");
        for (var i = 1; i < ImportLimits.Rows; i++)
            text.Append(FormattableString.Invariant($"{i % 600 / 1000.0:F3},1.5,1.5,1.5,1.5\n"));
        var bytes = Encoding.ASCII.GetBytes(text.ToString());
        var readings = 0;
        var seconds = Seconds(() => readings = SampleFile.Preview(bytes, "a.csv").Readings.Count);
        Assert.Equal((ImportLimits.Rows - 1) * 4, readings);
        Assert.True(seconds < 2, $"took {seconds:F2} s");
    }

    [Fact]
    public void Damaged_samples_are_read_or_refused_and_never_half_taken() => Gen.Select(
        Gen.OneOf<byte[]>([.. SampleFile.Names.Select(SampleFile.Bytes), WorkbookBytes.Of(["Lift", "CFM"], [0.1, 64.2], ["7.6 mm", 128.9])]),
        Gen.Int[0, 4], Gen.Select(Gen.Int[0, 4000], Gen.Byte).Array[0, 12], Gen.Int[0, 600]).Sample((bytes, how, changes, cut) =>
        {
            var damaged = (byte[])bytes.Clone();
            foreach (var (at, value) in changes) damaged[at % damaged.Length] = value;
            if (how == 0) damaged = damaged[..Math.Max(0, damaged.Length - cut % damaged.Length)];
            if (how == 1) damaged = [.. damaged[(cut % damaged.Length)..], .. damaged];
            NeverThrows(damaged);
        }, iter: 3000);

    [Fact]
    public void Random_bytes_and_random_tables_never_throw()
    {
        Gen.Byte.Array[0, 400].Sample(NeverThrows, iter: 2000);
        Gen.String[Gen.Char["0123456789.,;\t|\"\r\n -=LiftCFMInEx@/()%#µ½\u00A0"], 0, 200].Sample(t => NeverThrows(Encoding.UTF8.GetBytes(t)), iter: 5000);
        Gen.OneOf<string>("Lift", "Lift (mm)", "CFM", "Int 1", "Ex", "run", "Avg", "Total", ".100", "7,6", "300", "12.x", "", "-", "=A1", "28\"", "½", "\"", "NaN", "1e308", "99999999999999999999").Array[0, 40]
            .Sample(cells => NeverThrows(Encoding.UTF8.GetBytes(string.Join("", cells.Select((c, i) => c + (i % 4 == 3 ? "\n" : ","))))), iter: 5000);
    }

    // Processor time where it is less than the clock's: on a busy machine the clock measures the others.
    private static double Seconds(Action work)
    {
        var cpu = Environment.CpuUsage.TotalTime;
        var clock = Stopwatch.StartNew();
        work();
        return Math.Min(clock.Elapsed.TotalSeconds, (Environment.CpuUsage.TotalTime - cpu).TotalSeconds);
    }

    private static void NeverThrows(byte[] bytes)
    {
        if (!TableFile.TryRead(bytes, "a.csv", null, out var table, out var problem))
        {
            Assert.NotEmpty(problem);
            return;
        }
        foreach (var system in Enum.GetValues<UnitSystem>())
        {
            var p = SweepTable.Guess(table, system);
            Assert.True(p.CanBeSaved || p.Problems.Count > 0);
            Assert.All(p.Readings, r => Assert.True(double.IsFinite(r.Lift.Si(Dimension.Lift)) && double.IsFinite(r.Reading.Si(r.Dimension))));
            Assert.Equal(p.Readings.Count, p.Readings.Select(r => (r.Row, r.Column)).Distinct().Count());
        }
    }

    private static byte[] Make(string file)
    {
        const string main = "xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"";
        var small = WorkbookBytes.Of(["Lift", "CFM"], [0.1, 64.2], [0.2, 128.9]);
        switch (file)
        {
            case "an archive that swells to a gigabyte": return Swelling();
            case "an archive that lies about its size": return Lying();
            case "an archive of many parts": return WorkbookBytes.Of(WorkbookBytes.Sheet(["Lift"]), [.. Enumerable.Range(0, 60_000).Select(i => ($"xl/media/{i}.png", Array.Empty<byte>()))]);
            case "an entity that grows":
                return WorkbookBytes.Of($"<!DOCTYPE w [<!ENTITY a \"aaaaaaaaaa\">{string.Concat(Enumerable.Range('b', 12).Select(c => $"<!ENTITY {(char)c} \"{string.Concat(Enumerable.Repeat($"&{(char)(c - 1)};", 10))}\">"))}]><worksheet {main}><sheetData><row><c t=\"inlineStr\"><is><t>&m;</t></is></c></row></sheetData></worksheet>");
            case "an outside entity":
                return WorkbookBytes.Of($"<!DOCTYPE w [<!ENTITY a SYSTEM \"file:///etc/passwd\">]><worksheet {main}><sheetData><row><c t=\"inlineStr\"><is><t>&a;</t></is></c></row></sheetData></worksheet>");
            case "a cell of a megabyte": return WorkbookBytes.Of([new string('x', 1_000_000)], ["Lift"]);
            case "a shared text of a megabyte":
                return WorkbookBytes.Of($"<worksheet {main}><sheetData><row r=\"1\"><c r=\"A1\" t=\"s\"><v>0</v></c></row></sheetData></worksheet>",
                    ("xl/sharedStrings.xml", WorkbookBytes.Utf8($"<sst {main}><si><t>{new string('x', 1_000_000)}</t></si></sst>")));
            case "a cell in column XFD": return WorkbookBytes.Of($"<worksheet {main}><sheetData><row r=\"1\"><c r=\"A1\"><v>1</v></c><c r=\"XFD1\"><v>1</v></c></row></sheetData></worksheet>");
            case "a cell in row 1048576": return WorkbookBytes.Of($"<worksheet {main}><sheetData><row r=\"1048576\"><c r=\"A1048576\"><v>1</v></c></row></sheetData></worksheet>");
            case "a sheet of a million rows": return WorkbookBytes.Of($"<worksheet {main}><sheetData>{string.Concat(Enumerable.Range(1, 1_000_000).Select(i => $"<row r=\"{i}\"><c r=\"A{i}\"/></row>"))}</sheetData></worksheet>");
            case "a sheet of 300,000 cells": return WorkbookBytes.Of($"<worksheet {main}><sheetData>{string.Concat(Enumerable.Range(1, 3000).Select(_ => $"<row>{string.Concat(Enumerable.Repeat("<c><v>1</v></c>", 100))}</row>"))}</sheetData></worksheet>");
            case "a workbook cut short": return small[..(small.Length * 2 / 3)];
            case "a workbook with a byte changed": small[900] ^= 0x55; small[901] ^= 0xAA; return small;
            case "an archive without a workbook": return WorkbookBytes.Pack([("readings.csv", "Lift,CFM"u8.ToArray())]);
            case "an OpenDocument sheet": return WorkbookBytes.Pack([("mimetype", []), ("content.xml", "<a/>"u8.ToArray())]);
            case "an old or locked workbook": return [0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1, .. new byte[4096]];
            case "a web page named csv": return "\uFEFF <!DOCTYPE html><html><table><tr><td>Lift"u8.ToArray();
            case "an XML named csv": return "<?xml version=\"1.0\"?><!DOCTYPE a SYSTEM \"http://example.invalid/\"><Workbook/>"u8.ToArray();
            case "a PDF named csv": return "%PDF-1.7\n"u8.ToArray();
            case "a picture named xlsx": return [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A];
            case "random bytes": var random = new byte[5000]; new Random(6).NextBytes(random); random[0] = 1; return random;
            case "nothing": return [];
            case "blank lines": return "\r\n  \r\n,,,\r\n"u8.ToArray();
            case "a file over 20 MB": return new byte[ImportLimits.FileBytes + 1];
            case "a text of a million rows": return Encoding.ASCII.GetBytes("Lift,CFM\n" + string.Concat(Enumerable.Repeat(".1,64.2\n", 1_000_000)));
            case "a text of 20,000 columns": return Encoding.ASCII.GetBytes("Lift" + string.Concat(Enumerable.Repeat(",1", 20_000)));
            case "a text cell of a megabyte": return Encoding.ASCII.GetBytes("Lift,CFM\n.1," + new string('6', 1_000_000) + "\n");
            case "one line of 20 MB": return [.. Enumerable.Repeat((byte)'a', ImportLimits.FileBytes)];
            case "a quote never closed": return "Lift,CFM\n.1,64.2\n.2,\"128.9\n.3,183.4\n"u8.ToArray();
            case "a quote never closed in a large file": return Encoding.ASCII.GetBytes("Lift,CFM\n.1,\"64.2\n" + string.Concat(Enumerable.Repeat(".1,64.2\n", 1_500_000)));
            case "UTF-16 cut in the middle of a letter": var utf16 = SampleFile.Bytes("03-millimetres-tab.txt"); return utf16[..^1];
            default: throw new ArgumentException(file, nameof(file));
        }
    }

    private static byte[] Swelling()
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, true))
        {
            using (var book = zip.CreateEntry("xl/workbook.xml").Open()) book.Write("<workbook/>"u8);
            using var part = zip.CreateEntry("xl/worksheets/sheet1.xml", CompressionLevel.SmallestSize).Open();
            var blank = new byte[1024 * 1024];
            Array.Fill(blank, (byte)' ');
            for (var i = 0; i < 1024; i++) part.Write(blank);
        }
        return bytes.ToArray();
    }

    // 40 MB inside, 10 bytes in the listing.
    private static byte[] Lying()
    {
        var bytes = WorkbookBytes.Of(new string(' ', 40_000_000));
        var honest = BitConverter.GetBytes(40_000_000);
        for (var i = 0; i + 4 <= bytes.Length; i++)
            if (bytes.AsSpan(i, 4).SequenceEqual(honest)) BitConverter.GetBytes(10).CopyTo(bytes, i);
        return bytes;
    }
}
