using System.Globalization;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>One lift of the sheet's table, every cell as printed.</summary>
/// <param name="Readings">Raw, as typed, with their unit.</param>
/// <param name="PlainRule">By the plain square-root rule, and how far that is off.</param>
/// <param name="Change">Against the last cut; empty where it was not tested there.</param>
/// <param name="Verdict">Of the change; null where there is none.</param>
/// <param name="Gain">Sign of the change, for the verdict's shape.</param>
/// <param name="Window">Regime of the valve window, in words.</param>
public sealed record SheetRow(
    string Lift,
    string Readings,
    string TestPressure,
    string Flow,
    string PlainRule,
    string Change,
    Verdict? Verdict,
    double Gain,
    string LiftOverDiameter,
    string Window,
    string OnWindow)
{
    /// <summary>Where the flow, the verdict and the raw readings stand among the columns: results first, evidence after.</summary>
    internal const int FlowColumn = 1, VerdictColumn = 3, ReadColumn = 4;

    /// <summary>Heads of the columns, the unit under the name.</summary>
    public static IReadOnlyList<(string Name, string Unit)> Heads(UnitSystem units)
    {
        var flow = Print.UnitName(Dimension.VolumeFlow, units);
        return
        [
            ("lift", Print.UnitName(Dimension.Lift, units)),
            ("flow", $"{flow}, 95 %"),
            ("change", flow),
            ("verdict", ""),
            ("read", "as typed"),
            ("pressure", Print.UnitName(Dimension.Pressure, units)),
            ("plain rule", $"{flow}, off"),
            ("L/D", ""),
            ("window", ""),
            ("Cd window", "95 %"),
        ];
    }

    /// <summary>The words of the verdict.</summary>
    public string VerdictWords => Verdict is { } v ? VerdictMark.Words(v, Gain) : "";

    /// <summary>The cells in the order of <see cref="Heads"/>.</summary>
    public IReadOnlyList<string> Cells() =>
        [Lift, Flow, Change, VerdictWords, Readings, TestPressure, PlainRule, LiftOverDiameter, Window, OnWindow];

    internal static IReadOnlyList<SheetRow> Of(PortSheet sheet, UnitSystem units) =>
        sheet.Flow is null ? [] : [.. sheet.Flow.Curve.Points.Select(p => Of(p, sheet, units))];

    private static SheetRow Of(LiftPoint point, PortSheet sheet, UnitSystem units)
    {
        var less = sheet.AgainstLast?.Curves.Lifts.FirstOrDefault(d => Math.Abs(d.Lift - point.Lift) < 1e-7)?.Difference;
        var window = sheet.Windows.FirstOrDefault(w => Math.Abs(w.Lift - point.Lift) < 1e-7);
        var doubt = point.Flow.Expanded() / Unit.Default(Dimension.VolumeFlow, units).Factor;
        var decimals = doubt > 0 ? Math.Clamp(Print.DecimalsOfDoubt(doubt), 0, 3) : 1;
        return new SheetRow(
            Print.Bare(point.Lift, Dimension.Lift, units),
            string.Join(", ", point.Readings.Select(r => Raw(r.Reading.Fact.Reading))),
            string.Join(", ", point.Readings.Select(r => Print.Bare(r.TestPressure, Dimension.Pressure, units)).Distinct()),
            WithoutUnit(SheetContent.Flow(point.Flow, units), units),
            PlainRuleWords(point, units, decimals),
            less is null ? "" : FlowReadout.Difference(less, units),
            less?.Verdict,
            less?.Of.Value ?? 0,
            window is null ? "" : window.Window.LiftOverDiameter.ToString("F3", CultureInfo.InvariantCulture),
            window is null ? "" : Regime(window.Window.Regime),
            window is null ? "" : $"{window.OfWindow.Value.ToString("F3", CultureInfo.InvariantCulture)} ± {window.OfWindow.Expanded().ToString("F3", CultureInfo.InvariantCulture)}");
    }

    /// <summary>What was typed, with the unit where the typing left it out.</summary>
    private static string Raw(Typed typed)
    {
        var text = Lettering.Clean(typed.Text).Trim();
        return typed.Unit.Length == 0 || text.EndsWith(typed.Unit, StringComparison.OrdinalIgnoreCase) ? text : $"{text} {typed.Unit}";
    }

    private static string Regime(int regime) => regime switch { 1 => "1, seat", 2 => "2, curtain", _ => "3, throat" };

    private static string PlainRuleWords(LiftPoint point, UnitSystem units, int decimals)
    {
        var off = point.PlainRuleFlow - point.Flow.Value;
        var number = Print.Bare(Math.Abs(off), Dimension.VolumeFlow, units, decimals);
        var sign = number.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? "" : off < 0 ? "−" : "+";
        return $"{Print.Bare(point.PlainRuleFlow, Dimension.VolumeFlow, units, decimals)}, {sign}{number}";
    }

    private static string WithoutUnit(string words, UnitSystem units)
    {
        var unit = " " + Print.UnitName(Dimension.VolumeFlow, units);
        return words.EndsWith(unit, StringComparison.Ordinal) ? words[..^unit.Length] : words;
    }
}
