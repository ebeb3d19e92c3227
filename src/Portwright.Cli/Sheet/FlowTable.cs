using System.Text;
using Portwright.Cli.Terminal;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;

namespace Portwright.Cli.Sheet;

/// <summary>Flow over lift as a table: what was measured, what the window allows, and this cut less the last with its verdict.</summary>
internal sealed class FlowTable(Page page, PortSheet sheet, UnitSystem units)
{
    public void Write()
    {
        var against = sheet.AgainstLast;
        var windows = sheet.Windows.Count > 0;
        var unit = Print.UnitName(Dimension.VolumeFlow, units);
        var top = new StringBuilder().Append("  ").Append("lift".PadRight(7)).Append(("flow, " + unit).PadRight(16));
        if (windows) top.Append("L/D".PadRight(6)).Append("Cd curtain, window, throat".PadRight(27));
        if (against is not null) top.Append("less cut ").Append(against.Last.Cut.Fact.Number);
        page.Line(top.ToString());
        foreach (var point in sheet.Flow!.Curve.Points)
        {
            var line = new StringBuilder().Append("  ").Append(Print.Bare(point.Lift, Dimension.Lift, units).PadRight(7)).Append(Bare(point.Flow, false).PadRight(16));
            if (windows)
            {
                var w = sheet.Windows.FirstOrDefault(w => Math.Abs(w.Lift - point.Lift) < 1e-7);
                line.Append((w is null ? "" : Print.Bare(w.Window.LiftOverDiameter, Dimension.Ratio, units, 3)).PadRight(6))
                    .Append((w is null ? "" : $"{Cd(w.OfCurtain)}   {Cd(w.OfWindow)}   {Cd(w.OfThroat)}").PadRight(27));
            }
            if (against?.Curves.Lifts.FirstOrDefault(l => Math.Abs(l.Lift - point.Lift) < 1e-7) is { } difference)
                line.Append(Bare(difference.Difference.Of, true).PadRight(12)).Append(Mark(difference.Difference));
            page.Line(line.ToString());
        }
        if (against is not null) page.Line("  " + "(+ real gain, - real loss, o inside the noise, ? not enough readings)");
    }

    private static string Cd(Estimate e) => Print.Bare(e.Value, Dimension.Ratio, UnitSystem.Si, 3);

    private string Bare(Estimate e, bool signed)
    {
        var text = Print.WithDoubt(e.Value, e.Expanded(), Dimension.VolumeFlow, units);
        text = text[..^(Print.UnitName(Dimension.VolumeFlow, units).Length + 1)];
        return signed && e.Value >= 0 ? "+" + text : text;
    }

    /// <summary>The verdict as one sign: its words stand under the table.</summary>
    private static string Mark(Difference difference) => difference.Verdict switch
    {
        Verdict.Real => difference.Of.Value >= 0 ? "+" : "-",
        Verdict.InsideTheNoise => "o",
        _ => "?",
    };
}
