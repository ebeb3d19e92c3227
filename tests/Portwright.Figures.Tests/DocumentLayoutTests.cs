using System.Text.RegularExpressions;
using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures.Tests;

/// <summary>Page, file and paper show every block of the document they are given.</summary>
public sealed class DocumentLayoutTests
{
    private const string Hostile = " <img src=x onerror=alert(1)> \"quoted\" & 'so' on, a name longer than anyone would ever put into a field of a form";

    private static readonly PortAtCut Shop = new InventedShop().AtCut();

    public static TheoryData<string, UnitSystem> Documents
    {
        get
        {
            var all = new TheoryData<string, UnitSystem>();
            foreach (var units in Enum.GetValues<UnitSystem>())
            {
                foreach (var which in new[] { "every kind", "swept", "surveyed" }) all.Add(which, units);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public void Every_block_stands_in_the_file_and_on_paper(string which, UnitSystem units)
    {
        var (document, port) = Of(which);
        var page = Flat(System.Net.WebUtility.HtmlDecode(Regex.Replace(DocumentHtml.Render(document, port, units), "<style>.*?</style>|<[^>]+>", " ", RegexOptions.Singleline)));
        var paper = Flat(PdfWords.Of(DocumentPaper.Pdf(document, port, PaperSize.Of(units), units)));
        var texts = DocumentOfEveryKind.Texts(document, units).Where(t => t.Length > 0).ToList();
        Assert.True(texts.Count > 40);
        Assert.All(texts, t => Assert.Contains(Flat(t), page, StringComparison.Ordinal));
        Assert.All(texts, t => Assert.Contains(Flat(t), paper, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Documents))]
    public void No_text_on_paper_is_cut_off_or_lies_over_another(string which, UnitSystem units)
    {
        var (document, port) = Of(which);
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            var pages = DocumentPaper.Pages(document, port, paper, units);
            // The hours round a section are the smallest letters.
            Assert.All(pages, p => DrawingChecks.IsReadable(p, 5.2));
            Assert.All(pages, (p, i) => Assert.Contains(p.Texts(), t => t.Words == $"{i + 1} of {pages.Count}"));
        }
    }

    [Theory]
    [InlineData(1, 1, "", true)]
    [InlineData(3, 2, Hostile, false)]
    [InlineData(40, 6, Hostile, true)]
    [InlineData(90, 1, "", false)]
    public void Long_names_and_many_lifts_find_their_room(int lifts, int cuts, string words, bool valve)
    {
        var port = new InventedShop(lifts, words, lifts, cuts, valve: valve).AtCut();
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            var pages = DocumentPaper.Pages(PortDocument.Of(port), port, paper);
            Assert.All(pages, p => DrawingChecks.IsReadable(p, 6));
            if (lifts >= 40) Assert.True(pages.Count >= 3);
        }

        var html = DocumentHtml.Render(PortDocument.Of(port), port);
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
        if (words.Length > 0) Assert.Contains("&lt;img src=x onerror=alert(1)&gt;", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_swept_port_takes_two_sheets_at_most()
    {
        var document = PortDocument.ForThePorter(Shop, new DateOnly(2026, 1, 2));
        foreach (var units in Enum.GetValues<UnitSystem>())
            Assert.InRange(DocumentPaper.Pages(document, Shop, PaperSize.Of(units), units).Count, 1, 2);
    }

    [Fact]
    public void Sound_metal_alone_has_no_drawing_and_stands_in_the_table()
    {
        var (document, port) = Of("surveyed");
        var drawn = document.Blocks.OfType<Figure>().Where(f => f.Kind == FigureKind.Section).Select(f => f.Station).ToHashSet();
        var alone = port.Survey.Stations.Where(s => s.Ring is null && s.Balls.Count == 0 && s.Flags.Count == 0 && !s.Walls.Any(w => w.Stops)).ToList();
        Assert.NotEmpty(alone);
        Assert.All(port.Survey.Stations, s => Assert.NotEqual(alone.Contains(s), drawn.Contains(s.Station.Id)));
        var walls = document.Blocks.OfType<Table>().Single(t => t.Key == "walls");
        Assert.All(alone, s => Assert.Contains(walls.Rows, r => r[0].Text.In(UnitSystem.Si).StartsWith($"{s.Letter}, ", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_first_sheet_says_what_it_is_what_flows_and_what_to_leave_alone()
    {
        var port = DocumentOfEveryKind.Port;
        var document = PortDocument.Of(port);
        var first = Flat(string.Join(' ', DocumentPaper.Pages(document, port, PaperSize.Letter)[0].Texts().Select(t => t.Words)));
        Assert.Contains(port.Findings, f => f.Kind == FindingKind.Stop);
        foreach (var key in new[] { "sheet", "flow", "findings" })
        {
            var part = document.Parts.Single(p => p.Key == key);
            Assert.All(part.Blocks.SelectMany(Document.Of).Take(key == "findings" ? 3 : 99), s => Assert.Contains(Flat(s.In(UnitSystem.UsCustomary)), first, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_is_for_the_engineer_is_folded_away_under_one_heading()
    {
        var html = DocumentHtml.Render(DocumentOfEveryKind.Document, DocumentOfEveryKind.Port);
        var fold = Regex.Match(html, "<details><summary>For the engineer</summary>(.*?)</details>", RegexOptions.Singleline);
        Assert.Contains("The engineer's sentence.", fold.Groups[1].Value, StringComparison.Ordinal);
        Assert.DoesNotContain("A paragraph with", fold.Groups[1].Value, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(DocumentHtml.Render(PortDocument.Of(Shop), Shop), "<details>"));
        Assert.DoesNotContain("<details>", DocumentHtml.Render(PortDocument.ForThePorter(Shop), Shop), StringComparison.Ordinal);
    }

    [Fact]
    public void A_kind_that_is_not_known_is_never_passed_over()
    {
        var port = DocumentOfEveryKind.Port;
        Assert.Throws<ArgumentOutOfRangeException>(() => DocumentHtml.Fragment(new Unheard(), port, UnitSystem.Si));
        Assert.Throws<ArgumentOutOfRangeException>(() => SheetFigures.Draw(port, new Figure("x", (FigureKind)99, $"x"), UnitSystem.Si, FigureSize.Wide));
        var document = DocumentOfEveryKind.Document with { Parts = [new Part("x", $"x", [new Unheard()])] };
        Assert.Throws<ArgumentOutOfRangeException>(() => DocumentPaper.Pages(document, port, PaperSize.A4));
        Assert.Throws<InvalidOperationException>(() => SheetFigures.Draw(Shop, new Figure("x", FigureKind.TorqueAndPower, $"x"), UnitSystem.Si, FigureSize.Wide));
        Assert.Throws<InvalidOperationException>(() => SheetFigures.Draw(Shop, new Figure("x", FigureKind.Section, $"x", Guid.NewGuid()), UnitSystem.Si, FigureSize.Wide));
    }

    [Fact]
    public void The_same_blocks_are_written_for_a_page_of_the_workbench()
    {
        var port = DocumentOfEveryKind.Port;
        var blocks = DocumentOfEveryKind.Document.Blocks.Select(b => DocumentHtml.Fragment(b, port, UnitSystem.Si)).ToList();
        var html = DocumentHtml.Render(DocumentOfEveryKind.Document, port, UnitSystem.Si);
        Assert.All(blocks, b => Assert.Contains(b, html, StringComparison.Ordinal));
        foreach (var kind in new[] { "<p class=\"caution\">", "<dl class=\"values\">", "<article class=\"finding stop\">", "<div class=\"table\" tabindex=\"0\"", "<figure class=\"figure\">" })
            Assert.Contains(blocks, b => b.StartsWith(kind, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_verdict_has_its_shape_beside_its_words()
    {
        var table = DocumentOfEveryKind.Document.Blocks.OfType<Table>().Single();
        Assert.Equal(4, Regex.Count(DocumentHtml.Fragment(table, Shop, UnitSystem.Si), "class=\"mark\""));
        var marks = Enum.GetValues<VerdictShape>().Where(s => s != VerdictShape.None).Select(s => Svg.Page(VerdictMark.Draw(s, "same words"))).ToList();
        Assert.Equal(4, marks.Distinct().Count());
        Assert.Throws<ArgumentOutOfRangeException>(() => VerdictMark.Draw(VerdictShape.None, ""));
    }

    [Fact]
    public void A_job_is_one_file_of_its_page_and_its_sheets()
    {
        var shop = new InventedShop();
        var document = PortDocument.ForThePorter(Shop);
        var job = JobPageDocument.Of(shop.Bench.Ledger, shop.Bench.JobId, [shop.AtCut()], new DateOnly(2026, 1, 2));
        var pages = DocumentPaper.Bound([(job, null), (document, Shop)], PaperSize.A4, UnitSystem.Si);
        Assert.Equal(1 + DocumentPaper.Pages(document, Shop, PaperSize.A4, UnitSystem.Si).Count, pages.Count);
        Assert.All(pages, (p, i) => Assert.Contains(p.Texts(), t => t.Words == $"{i + 1} of {pages.Count}"));
        var words = Flat(PdfWords.Of(JobPaper.Pdf(job, [(Shop, document)], PaperSize.A4, UnitSystem.Si)));
        Assert.All(DocumentOfEveryKind.Texts(job, UnitSystem.Si), t => Assert.Contains(Flat(t), words, StringComparison.Ordinal));
        var ports = job.Blocks.OfType<Table>().Single(t => t.Key == "ports");
        Assert.Equal(8, ports.Rows.Count);
        Assert.Equal(7, ports.Rows.Count(r => r[1].Text.In(UnitSystem.Si) == "not started"));
        var row = ports.Rows.Single(r => r[0].Text.In(UnitSystem.Si).EndsWith(" intake 2", StringComparison.Ordinal));
        var against = Shop.Sheet.AgainstFirst!;
        Assert.Equal(VerdictWords.ShapeOf(against.Curves.WholeCurve), row[5].Shape);
        Assert.Contains("cut 0", row[5].Text.In(UnitSystem.Si), StringComparison.Ordinal);
        Assert.NotEmpty(job.Blocks.OfType<Caution>());
        Assert.All(job.Blocks.OfType<Caution>(), c => Assert.Contains(document.Blocks.OfType<Caution>(), d => d.Text.Equals(c.Text)));
    }

    private static (Document Document, PortAtCut Port) Of(string which) => which switch
    {
        "every kind" => (DocumentOfEveryKind.Document, DocumentOfEveryKind.Port),
        "swept" => (PortDocument.Of(Shop, new DateOnly(2026, 1, 2)), Shop),
        _ => (PortDocument.Of(DocumentOfEveryKind.Port, new DateOnly(2026, 1, 2)), DocumentOfEveryKind.Port),
    };

    /// <summary>Words without the spaces that a line's end puts in or takes out.</summary>
    private static string Flat(string words) => Regex.Replace(words, @"\s", "");

    private sealed record Unheard() : Block("unheard");
}
