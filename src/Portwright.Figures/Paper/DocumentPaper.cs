using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>Documents on paper: as many sheets as they need, a title block at the foot of each, numbered through.</summary>
public static class DocumentPaper
{
    private const double Margin = 34, Under = 8;

    /// <summary>A port's document as a PDF.</summary>
    /// <param name="created">The date in the file; null leaves it out, so that the same document gives the same file.</param>
    public static byte[] Pdf(Document document, PortAtCut port, PaperSize paper, UnitSystem units = UnitSystem.UsCustomary, DateTimeOffset? created = null) =>
        Figures.Pdf.Render(Pages(document, port, paper, units), Theme.White, created);

    /// <summary>The same as drawings, one a sheet.</summary>
    public static IReadOnlyList<Drawing> Pages(Document document, PortAtCut port, PaperSize paper, UnitSystem units = UnitSystem.UsCustomary) => Bound([(document, port)], paper, units);

    /// <summary>Several documents as one, numbered through; each begins a sheet.</summary>
    internal static IReadOnlyList<Drawing> Bound(IReadOnlyList<(Document Document, PortAtCut? Port)> documents, PaperSize paper, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(paper);
        var width = paper.Width - 2 * Margin;
        List<(Document Of, TitleBlock Foot, Pen Pen)> sheets = [];
        foreach (var (document, port) in documents)
        {
            var foot = new TitleBlock(document.TitleBlock, units, width);
            var column = new PaperColumn(Margin, paper.Height - Margin - foot.Height - Under);
            new PaperBlocks(column, port, units, Margin, width).Write(document);
            sheets.AddRange(column.Pages.Select(pen => (document, foot, pen)));
        }

        return
        [
            .. sheets.Select((s, i) =>
            {
                s.Foot.Draw(s.Pen, Margin, paper.Height - Margin - s.Foot.Height, i + 1, sheets.Count);
                return s.Pen.Done(paper.Width, paper.Height, s.Of.Title.In(units), s.Of.Place.In(units));
            }),
        ];
    }
}
