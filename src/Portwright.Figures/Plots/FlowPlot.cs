using System.Collections.Immutable;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Targets;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>One reading on the figure.</summary>
/// <param name="Lift">m.</param>
/// <param name="Flow">m3/s.</param>
/// <param name="Doubt">Expanded uncertainty at 95 percent, m3/s.</param>
public readonly record struct FlowDot(double Lift, double Flow, double Doubt);

/// <summary>One cut on the figure.</summary>
/// <param name="Name">As written at its end: <c>cut 2</c>.</param>
/// <param name="Dots">The readings, lifts rising.</param>
/// <param name="Line">The drawn line, (lift m, flow m3/s), lifts rising; never past the readings.</param>
public sealed record FlowLine(string Name, IReadOnlyList<FlowDot> Dots, IReadOnlyList<(double Lift, double Flow)> Line)
{
    /// <summary>The curve of one cut.</summary>
    public static FlowLine Of(CutFlow cut) => new(
        $"cut {cut.Cut.Fact.Number}",
        [.. cut.Curve.Points.Select(p => new FlowDot(p.Lift, p.Flow.Value, p.Flow.Expanded()))],
        cut.Curve.Line());
}

/// <summary>What a figure of flow over lift shows.</summary>
/// <param name="Name">The cut being shown: <c>cut 3</c>.</param>
/// <param name="Now">Its readings; null before the first.</param>
/// <param name="Earlier">Earlier cuts, oldest first.</param>
/// <param name="Less">This cut less the last of <paramref name="Earlier"/>, lift by lift; empty where they cannot be compared yet.</param>
/// <param name="CamLift">Net lift of the engine's own cam, m.</param>
/// <param name="Planned">Lifts the sweep asks for, m.</param>
/// <param name="Basis">What the flow is stated in: <c>standard air, 28.0 inH2O</c>.</param>
/// <param name="Wanted">What the engine asks for, drawn behind; null where the plan does not say.</param>
/// <param name="Closing">What the passes with the valve closing showed by themselves, (lift m, flow m3/s), lifts rising; empty where there was none.</param>
public sealed record FlowPlot(
    string Name,
    FlowLine? Now,
    IReadOnlyList<FlowLine> Earlier,
    ImmutableArray<LiftDifference> Less,
    double? CamLift,
    IReadOnlyList<double> Planned,
    string Basis,
    WantedFlow? Wanted = null,
    IReadOnlyList<(double Lift, double Flow)>? Closing = null)
{
    /// <summary>What a port sheet shows.</summary>
    /// <param name="wanted">What the engine asks of the port; null: nothing is drawn behind.</param>
    /// <param name="planned">Lifts asked for, m; null takes them from the sheet's last sweep.</param>
    public static FlowPlot Of(PortSheet sheet, WantedFlow? wanted, IReadOnlyList<double>? planned = null, UnitSystem units = UnitSystem.UsCustomary)
    {
        var flow = sheet.Flow;
        // A port drawn through and blown through answers two questions; only cuts tested the same way lie on one figure.
        var earlier = sheet.Earlier.Where(c => flow is null || c.Curve.Direction == flow.Curve.Direction).ToList();
        planned ??= flow is null ? [] : [.. flow.Sweeps[^1].Sweep.Fact.Lifts.Select(l => l.Si(Dimension.Lift))];
        var restated = flow?.Curve.RestatedAt ?? sheet.Bench?.Fact.RestatedAt;
        return new FlowPlot(
            $"cut {sheet.Cut.Fact.Number}",
            flow is null ? null : FlowLine.Of(flow),
            [.. earlier.Select(FlowLine.Of)],
            sheet.AgainstLast?.Curves.Lifts ?? [],
            sheet.Cam?.Lift,
            planned,
            restated is { } pressure ? $"standard air, {Print.Number(pressure, Dimension.Pressure, units, units == UnitSystem.UsCustomary ? 1 : 2)}" : "standard air",
            wanted);
    }

    /// <summary>More ghosts than this are a bundle: the last, the one before and the first are drawn.</summary>
    internal const int MostGhosts = 3;

    /// <summary>The last cut before this one.</summary>
    public FlowLine? Last => Earlier.Count > 0 ? Earlier[^1] : null;

    /// <summary>The earlier cuts that are drawn, the last one first.</summary>
    internal IReadOnlyList<FlowLine> Ghosts() => Earlier.Count <= MostGhosts
        ? [.. Earlier.Reverse()]
        : [Earlier[^1], Earlier[^2], Earlier[0]];

    internal IEnumerable<FlowLine> Drawn() => Now is null ? Ghosts() : Ghosts().Prepend(Now);
}
