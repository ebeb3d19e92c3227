using System.Text;
using Portwright.Shop.Runs;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

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
    /// <exception cref="InvalidOperationException">A figure of a cut that has no reading yet.</exception>
    /// <param name="engine">The port in its engine, as far as it was run; null: the sheet does not speak of it.</param>
    public byte[] Render(PortSurvey survey, UnitSystem units, PortInEngine? engine = null)
    {
        ArgumentNullException.ThrowIfNull(survey);
        var sheet = survey.Sheet;
        return Kind switch
        {
            "pdf" => PortSheetPaper.Pdf(survey, units == UnitSystem.Si ? PaperSize.A4 : PaperSize.Letter, units, engine: engine),
            "html" => Encoding.UTF8.GetBytes(PortSheetHtml.Render(sheet, units, engine)),
            "svg" => Encoding.UTF8.GetBytes(Svg.Standalone(Figure(sheet, units), Theme.White)),
            "png" => Png.Render(Figure(sheet, units), Theme.White),
            _ => throw new InvalidOperationException($"A sheet is not written as {Kind}."),
        };
    }

    private static Drawing Figure(PortSheet sheet, UnitSystem units) => sheet.Flow is null
        ? throw new InvalidOperationException($"{sheet.Port.Fact.Name} has no reading at cut {sheet.Cut.Fact.Number} yet: there is nothing to draw.")
        : FlowOverLift.Draw(FlowPlot.Of(sheet, units: units), FigureSize.Wide, units);
}
