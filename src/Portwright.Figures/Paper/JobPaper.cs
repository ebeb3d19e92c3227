using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>A whole job as one PDF: its own page, then its ports' sheets.</summary>
public static class JobPaper
{
    /// <param name="created">The date in the file; null leaves it out.</param>
    public static byte[] Pdf(Document jobPage, IReadOnlyList<(PortAtCut Port, Document Document)> sheets, PaperSize paper, UnitSystem units = UnitSystem.UsCustomary, DateTimeOffset? created = null)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        return Figures.Pdf.Render(DocumentPaper.Bound([(jobPage, null), .. sheets.Select(s => (s.Document, (PortAtCut?)s.Port))], paper, units), Theme.White, created);
    }
}
