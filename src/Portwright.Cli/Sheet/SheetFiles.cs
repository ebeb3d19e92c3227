using System.Text;
using Portwright.Cli.Terminal;
using Portwright.Figures;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;

namespace Portwright.Cli.Sheet;

/// <summary>The port sheet, or its figure, as a file.</summary>
internal static class SheetFiles
{
    public static IReadOnlyList<(string Kind, string Words)> All { get; } =
    [
        ("svg", "write the figure of flow over lift as SVG"),
        ("png", "write the figure of flow over lift as PNG"),
        ("pdf", "write the whole sheet as PDF, Letter; A4 with --si"),
        ("html", "write the whole sheet as one page that needs nothing else"),
    ];

    public static void Write(string kind, string path, PortSheet sheet, UnitSystem units)
    {
        var bytes = kind switch
        {
            "svg" => Encoding.UTF8.GetBytes(Svg.Standalone(Figure(sheet, units), Theme.White)),
            "png" => Png.Render(Figure(sheet, units), Theme.White),
            "pdf" => PortSheetPaper.Pdf(sheet, units == UnitSystem.Si ? PaperSize.A4 : PaperSize.Letter, units),
            "html" => Encoding.UTF8.GetBytes(PortSheetHtml.Render(sheet, units)),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, string.Join(", ", All.Select(a => a.Kind))),
        };
        File.WriteAllBytes(path, bytes);
    }

    private static Drawing Figure(PortSheet sheet, UnitSystem units) => sheet.Flow is null
        ? throw new Refusal($"{sheet.Port.Fact.Name} has no reading at cut {sheet.Cut.Fact.Number} yet: there is nothing to draw.")
        : FlowOverLift.Draw(FlowPlot.Of(sheet, units: units), FigureSize.Wide, units);
}
