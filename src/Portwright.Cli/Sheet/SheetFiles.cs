using Portwright.Cli.Terminal;
using Portwright.Figures;
using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Cli.Sheet;

/// <summary>The port sheet, or its figure, written to a file of the person's choice.</summary>
internal static class SheetFiles
{
    public static void Write(SheetFile file, string path, PortAtCut port, Document document, UnitSystem units)
    {
        var sheet = port.Sheet;
        if (sheet.Flow is null)
        {
            throw new Refusal($"{sheet.Port.Fact.Name} has no reading at cut {sheet.Cut.Fact.Number} yet: there is nothing to print.");
        }

        File.WriteAllBytes(path, file.Render(port, document, units));
    }
}
