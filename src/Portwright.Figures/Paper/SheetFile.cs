using System.Text;
using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>A port sheet, or its figure, as a file to take along: one rendering for the page's downloads and the command line.</summary>
/// <param name="Kind">The file's ending, without a point.</param>
/// <param name="MediaType">As a browser is told.</param>
/// <param name="Words">What it is, in a few words.</param>
public sealed record SheetFile(string Kind, string MediaType, string Words)
{
    /// <summary>The whole sheet on paper.</summary>
    public static SheetFile Pdf { get; } = new("pdf", "application/pdf", "the whole sheet as PDF, Letter or, in SI, A4");

    public static IReadOnlyList<SheetFile> Kinds { get; } =
    [
        Pdf,
        new("html", "text/html", "the whole sheet as one page that needs nothing else"),
        new("svg", "image/svg+xml", "the figure of flow over lift as SVG"),
        new("png", "image/png", "the figure of flow over lift as PNG"),
    ];

    /// <summary>The file's bytes.</summary>
    /// <param name="document">What the sheet says; the asker leaves out what is for the engineer.</param>
    /// <exception cref="InvalidOperationException">A figure of a cut that has no reading yet.</exception>
    public byte[] Render(PortAtCut port, Document document, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(port);
        return Kind switch
        {
            "pdf" => DocumentPaper.Pdf(document, port, PaperSize.Of(units), units),
            "html" => Encoding.UTF8.GetBytes(DocumentHtml.Render(document, port, units)),
            "svg" => Encoding.UTF8.GetBytes(Svg.Standalone(Drawn(port, document, units), Theme.White)),
            "png" => Png.Render(Drawn(port, document, units), Theme.White),
            _ => throw new InvalidOperationException($"A sheet is not written as {Kind}."),
        };
    }

    private static Drawing Drawn(PortAtCut port, Document document, UnitSystem units) =>
        document.Blocks.OfType<Figure>().FirstOrDefault(f => f.Kind == FigureKind.FlowOverLift) is { } figure
            ? SheetFigures.Draw(port, figure, units, FigureSize.Wide)
            : throw new InvalidOperationException($"{port.Sheet.Port.Fact.Name} has no reading at cut {port.Sheet.Cut.Fact.Number} yet: there is nothing to draw.");
}
