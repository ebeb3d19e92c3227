using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Portwright.Shop.Ports;
using Portwright.Shop.Units;

namespace Portwright.Figures.Tests;

public sealed class SheetFileTests
{
    private static readonly PortAtCut Port = new InventedShop().AtCut();

    [Fact]
    public void A_sheet_is_written_in_four_ways_and_no_other()
    {
        var first = SheetFile.Kinds.ToDictionary(k => k.Kind, k => Encoding.Latin1.GetString(k.Render(Port, PortDocument.Of(Port), UnitSystem.Si).AsSpan(0, 60)));
        Assert.StartsWith("%PDF-", first["pdf"], StringComparison.Ordinal);
        Assert.StartsWith("<!doctype html>", first["html"], StringComparison.Ordinal);
        Assert.StartsWith("<svg ", first["svg"], StringComparison.Ordinal);
        Assert.Contains("PNG", first["png"], StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => (SheetFile.Pdf with { Kind = "doc" }).Render(Port, PortDocument.Of(Port), UnitSystem.Si));
    }

    [Fact]
    public void A_sheet_without_a_reading_still_prints_and_says_what_is_missing()
    {
        var shop = new InventedShop(cuts: 0, mornings: false);
        var port = shop.AtCut(shop.Bench.Cut(0));
        var document = PortDocument.Of(port);
        Assert.All(DocumentPaper.Pages(document, port, PaperSize.A4), p => DrawingChecks.IsReadable(p, 6));
        Assert.Contains("No reading at this cut yet", DocumentHtml.Render(document, port), StringComparison.Ordinal);
        var problem = Assert.Throws<InvalidOperationException>(() => SheetFile.Kinds[2].Render(port, document, UnitSystem.Si));
        Assert.Equal("intake 2 has no reading at cut 0 yet: there is nothing to draw.", problem.Message);
    }

    [Fact]
    public void The_fonts_are_inside_the_pdf()
    {
        var pdf = PdfWords.Raw(SheetFile.Pdf.Render(Port, PortDocument.Of(Port), UnitSystem.UsCustomary));
        var fonts = Regex.Matches(pdf, @"/BaseFont /(\S+)").Select(m => m.Groups[1].Value).Distinct().ToList();
        Assert.NotEmpty(fonts);
        Assert.All(fonts, f => Assert.Contains("IBMPlexSans", f, StringComparison.Ordinal));
        Assert.Equal(Regex.Count(pdf, "/Type /FontDescriptor"), Regex.Count(pdf, @"/FontFile2 \d+ 0 R"));
        Assert.Contains("/MediaBox [0 0 612 792]", pdf, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_sheet_gives_the_same_file() =>
        Assert.Equal(SheetFile.Pdf.Render(Port, PortDocument.Of(Port), UnitSystem.Si), SheetFile.Pdf.Render(Port, PortDocument.Of(Port), UnitSystem.Si));

    [Fact]
    public void The_html_file_fetches_nothing_and_lets_nothing_in_but_its_own_style()
    {
        var html = DocumentHtml.Render(PortDocument.Of(Port), Port);
        var css = Regex.Match(html, "<style>(.*?)</style>", RegexOptions.Singleline).Groups[1].Value;
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(css)));
        Assert.Contains($"default-src 'none'; style-src 'sha256-{hash}'; font-src data:", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch(@"\sstyle=", html);
        Assert.DoesNotMatch(@"(src|href)=""?https?:", html);
        Assert.DoesNotMatch(@"url\((?!data:|#)", html);
        Assert.DoesNotContain("\r", css, StringComparison.Ordinal);
    }
}
