using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures.Tests;

public sealed class PortSheetTests
{
    private const string Hostile = " <img src=x onerror=alert(1)> \"quoted\" & 'so' on, a name longer than anyone would ever put into a field of a form";

    private static readonly PortSurvey Survey = new InventedShop().Survey();

    private static readonly PortSheet Sheet = Survey.Sheet;

    public static TheoryData<int, int, string, bool> Shops => new()
    {
        { 12, 4, "", true }, { 1, 1, "", true }, { 3, 2, Hostile, false }, { 40, 6, Hostile, true }, { 90, 1, "", false },
    };

    [Theory]
    [MemberData(nameof(Shops))]
    public void No_text_on_paper_is_cut_off_or_lies_over_another(int lifts, int cuts, string words, bool valve)
    {
        var survey = new InventedShop(lifts, words, lifts, cuts, valve: valve).Survey();
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            foreach (var units in Enum.GetValues<UnitSystem>())
            {
                var pages = PortSheetPaper.Pages(survey, paper, units);
                Assert.All(pages, p => DrawingChecks.IsReadable(p, 6));
                Assert.All(pages, (p, i) => Assert.Contains(p.Texts(), t => t.Words == $"{i + 1} of {pages.Count}"));
                if (lifts >= 40) Assert.True(pages.Count >= 3);
            }
        }
    }

    [Fact]
    public void A_sheet_without_a_reading_still_prints_and_says_what_is_missing()
    {
        var shop = new InventedShop(cuts: 0, mornings: false);
        var cut = shop.Bench.Cut(0);
        var survey = PortSurvey.Of(shop.Bench.Ledger, shop.Bench.PortId, cut);
        Assert.All(PortSheetPaper.Pages(survey, PaperSize.A4), p => DrawingChecks.IsReadable(p, 6));
        Assert.Contains("No reading", PortSheetHtml.Render(survey.Sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void Paper_page_and_figure_say_the_same_numbers()
    {
        var content = SheetContent.Of(Sheet);
        var paper = Flat(PdfWords.Of(PortSheetPaper.Pdf(Survey, PaperSize.A4)));
        var page = Flat(System.Net.WebUtility.HtmlDecode(Regex.Replace(PortSheetHtml.Render(Sheet), "<style>.*?</style>|<[^>]+>", " ", RegexOptions.Singleline)));
        Assert.Equal(12, content.Rows.Count);
        foreach (var row in content.Rows)
        {
            foreach (var cell in row.Cells().Where(c => c.Length > 0))
            {
                Assert.Contains(Flat(cell), page, StringComparison.Ordinal);
                Assert.Contains(Flat(cell), paper, StringComparison.Ordinal);
            }
        }

        foreach (var field in content.Headline.Concat(content.TitleBlock))
        {
            Assert.Contains(Flat(field.Value), page, StringComparison.Ordinal);
            Assert.Contains(Flat(field.Value), paper, StringComparison.Ordinal);
        }

        foreach (var sentence in content.Sections.SelectMany(s => s.Sentences))
        {
            Assert.Contains(Flat(sentence), page, StringComparison.Ordinal);
            Assert.Contains(Flat(sentence), paper, StringComparison.Ordinal);
        }

        var last = $"{content.Rows[^1].Flow} cfm";
        Assert.Contains(FlowOverLift.Draw(FlowPlot.Of(Sheet), FigureSize.Narrow).Texts(), t => t.Words == last);
        Assert.Contains(Flat(last), paper, StringComparison.Ordinal);
    }

    [Fact]
    public void The_fonts_are_inside_the_pdf()
    {
        var pdf = PdfWords.Raw(PortSheetPaper.Pdf(Survey, PaperSize.Letter));
        var fonts = Regex.Matches(pdf, @"/BaseFont /(\S+)").Select(m => m.Groups[1].Value).Distinct().ToList();
        Assert.NotEmpty(fonts);
        Assert.All(fonts, f => Assert.Contains("IBMPlexSans", f, StringComparison.Ordinal));
        Assert.Equal(Regex.Count(pdf, "/Type /FontDescriptor"), Regex.Count(pdf, @"/FontFile2 \d+ 0 R"));
        Assert.Contains("/MediaBox [0 0 612 792]", pdf, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_sheet_gives_the_same_file() =>
        Assert.Equal(PortSheetPaper.Pdf(Survey, PaperSize.A4), PortSheetPaper.Pdf(Survey, PaperSize.A4));

    [Fact]
    public void Raw_readings_stand_on_the_sheet_as_they_were_typed()
    {
        var typed = Sheet.Flow!.Curve.Points[3].Readings.Select(r => r.Reading.Fact.Reading.Text).ToList();
        Assert.Equal(2, typed.Count);
        Assert.Equal(string.Join(", ", typed), SheetContent.Of(Sheet).Rows[3].Readings);
    }

    [Fact]
    public void The_plain_rule_stands_beside_with_what_it_is_off()
    {
        var row = SheetContent.Of(new InventedShop(testPressure: 10).Sheet()).Rows[^1];
        // Between 10 and 28 inH2O the plain rule reads about 2.5 percent high (Heywood, appendix C).
        Assert.Matches(@"^\d+\.\d, \+\d+\.\d$", row.PlainRule);
        var off = double.Parse(row.PlainRule.Split('+')[1], System.Globalization.CultureInfo.InvariantCulture);
        var flow = double.Parse(row.Flow.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(off / flow, 0.015, 0.035);
    }

    [Fact]
    public void The_html_file_fetches_nothing_and_lets_nothing_in_but_its_own_style()
    {
        var html = PortSheetHtml.Render(Sheet);
        var css = Regex.Match(html, "<style>(.*?)</style>", RegexOptions.Singleline).Groups[1].Value;
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(css)));
        Assert.Contains($"default-src 'none'; style-src 'sha256-{hash}'; font-src data:", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch(@"\sstyle=", html);
        Assert.DoesNotMatch(@"(src|href)=""?https?:", html);
        Assert.DoesNotMatch(@"url\((?!data:)", html);
        Assert.DoesNotContain("\r", css, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_is_markup_stays_a_name()
    {
        var html = PortSheetHtml.Render(new InventedShop(words: Hostile).Sheet());
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;img src=x onerror=alert(1)&gt;", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Standard_air_bench_and_program_are_stated()
    {
        var block = SheetContent.Of(Sheet).TitleBlock.ToDictionary(f => f.Name, f => f.Value);
        Assert.Equal("29.92 inHg, 68.0 °F, dry; drawn at 28.00 inH2O", block["standard air"]);
        Assert.Equal("shop bench", block["bench"]);
        Assert.StartsWith("Portwright ", block["program"], StringComparison.Ordinal);
    }

    /// <summary>Words without the spaces that a line's end puts in or takes out.</summary>
    private static string Flat(string words) => Regex.Replace(words, @"\s", "");
}
