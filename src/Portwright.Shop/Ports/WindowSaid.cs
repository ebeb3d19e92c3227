using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>What the valve lets through, and how much of it the air uses.</summary>
internal static class WindowSaid
{
    public static Part? Of(PortAtCut port)
    {
        var sheet = port.Sheet;
        if (sheet.Windows.Count == 0) return null;
        List<Block> blocks = [];
        if (sheet.Windows.Count > 1)
        {
            var most = sheet.Windows.MaxBy(w => w.OfWindow.Value)!;
            blocks.Add(new Figure("coefficients", FigureKind.Coefficients, $"Discharge coefficients over lift by diameter; on the window most at {Quantity.Lift(most.Lift)}, {Quantity.Of(most.OfWindow, Dimension.Ratio)}."));
        }

        blocks.Add(new Table(
            "window",
            $"Flow over what a loss-free nozzle of that section would pass",
            [
                new("lift", $"lift", Dimension.Lift), new("lift-over-diameter", $"L/D"), new("smallest", $"smallest section"),
                new("of-curtain", $"Cd curtain"), new("of-window", $"Cd window", Strong: true), new("of-throat", $"Cd throat"),
            ],
            [.. sheet.Windows.Select(w => (IReadOnlyList<Cell>)
            [
                new($"{Quantity.Lift(w.Lift)}"), new($"{w.Window.LiftOverDiameter:0.000}"), new(w.Window.Regime switch { 1 => $"1, seat", 2 => $"2, curtain", _ => $"3, throat" }),
                new($"{Quantity.Of(w.OfCurtain, Dimension.Ratio)}"), new($"{Quantity.Of(w.OfWindow, Dimension.Ratio)}"), new($"{Quantity.Of(w.OfThroat, Dimension.Ratio)}"),
            ])],
            sheet.ThroatTakesOver is { } over ? $"Past a lift of {Quantity.Lift(over)} the throat is the smallest section: more lift opens nothing there." : Sentence.Empty));
        return new Part("window", $"What the valve lets through", blocks, Reader.Engineer);
    }
}
