using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>What flows: in one glance, then lift by lift.</summary>
internal static class FlowSaid
{
    public static Part? Of(PortAtCut port)
    {
        var sheet = port.Sheet;
        if (sheet.Flow is not { } flow)
            return new Part("flow", $"What flows", [new Paragraph("not-tested", $"No reading at this cut yet: sweep the port.")]);
        var rows = new List<NamedValue>
        {
            sheet.Cam is { Flow: { } atCam } cam
                ? new("at-cam-lift", $"at the cam's lift {Quantity.Lift(cam.Lift)}", $"{Quantity.Flow(atCam).By(PortNumber.FlowKey(AsTested(flow, cam.Lift)))}")
                : new("at-highest-lift", $"at {Quantity.Lift(flow.Curve.HighestLift)}, the highest tested", $"{Quantity.Flow(flow.Curve.Points[^1].Flow).By(PortNumber.FlowKey(flow.Curve.HighestLift))}"),
        };
        if (sheet.Mean is { } mean) rows.Add(new("mean", $"mean from {Quantity.Lift(mean.From)} to {Quantity.Lift(mean.To)}", $"{Quantity.Flow(mean.Flow).By(PortNumber.MeanKey)}"));
        foreach (var against in new[] { sheet.AgainstLast, sheet.AgainstFirst }.OfType<CutComparison>())
        {
            var number = against.Last.Cut.Fact.Number;
            rows.Add(new($"against-cut-{number}", $"whole curve against cut {number}{(against == sheet.AgainstFirst ? ", the first tested" : "")}", VerdictWords.Said(against.Curves.WholeCurve, budget: PortNumber.LessKey(against)), VerdictWords.ShapeOf(against.Curves.WholeCurve)));
        }

        return new Part("flow", $"What flows", [new Values("headline", rows), new Paragraph("basis", Basis(flow))]);
    }

    public static Part? OverLift(PortAtCut port) => port.Sheet.Flow is null ? null
        : new Part("over-lift", $"Flow over lift", [new Figure("flow-over-lift", FigureKind.FlowOverLift, Drawn(port.Sheet, port.Sheet.Flow)), Lifts(port.Sheet, port.Sheet.Flow)]);

    /// <summary>What the figures are: which pressure, which air, which way, how many readings, what the ± is.</summary>
    private static Sentence Basis(CutFlow flow)
    {
        var curve = flow.Curve;
        Sentence at = curve.Direction == FlowDirection.Draw
            ? (Sentence)$"Drawn through the port: the far side {Quantity.Pressure(curve.RestatedAt)} under standard air ahead of it"
            : $"Blown through the port: {Quantity.Pressure(curve.RestatedAt)} over standard air ahead of it, standard air behind it";
        return $"{at} ({AirWords(curve.Air)}). {Count(flow.Sweeps.Count, "sweep")}, {Count(curve.Points.Sum(p => p.Readings.Count), "reading")}. ± is half of a 95 percent interval.";
    }

    public static Sentence AirWords(StandardAir air)
    {
        Sentence moist = air.RelativeHumidity > 0 ? (Sentence)$"{Quantity.Share(air.RelativeHumidity)} humid" : $"dry";
        return $"{new Quantity(air.Pressure, Dimension.Barometer)}, {new Quantity(air.Temperature, Dimension.Temperature)}, {moist}";
    }

    private static Table Lifts(PortSheet sheet, CutFlow flow)
    {
        var against = sheet.AgainstLast;
        List<Column> columns = [new("lift", $"lift", Dimension.Lift), new("flow", $"flow", Dimension.VolumeFlow, Strong: true)];
        if (against is not null) columns.AddRange([new("less", $"less cut {against.Last.Cut.Fact.Number}", Dimension.VolumeFlow), new("verdict", $"verdict")]);
        var rows = flow.Curve.Points.Select(p =>
        {
            List<Cell> row = [new($"{Quantity.Lift(p.Lift)}"), new($"{Quantity.Flow(p.Flow).By(PortNumber.FlowKey(p.Lift))}")];
            if (against is not null)
            {
                row.AddRange(against.Curves.Lifts.FirstOrDefault(l => LiftGroups.Same(l.Lift, p.Lift))?.Difference is { } less
                    ? [new($"{Quantity.Difference(less.Of, Dimension.VolumeFlow).By(PortNumber.LessKey(against, p.Lift))}"), new(Sentence.Plain(VerdictWords.Of(less)), VerdictWords.ShapeOf(less))]
                    : [Cell.Empty, Cell.Empty]);
            }

            return (IReadOnlyList<Cell>)row;
        });
        return new Table("lifts", $"Flow by lift", columns, [.. rows], against is null ? Sentence.Empty
            : $"The verdicts are held so that all lifts together are wrong in at most 5 sheets of 100; each ± is of its lift alone.");
    }

    /// <summary>The figure in words: where it is drawn they stand under it, where it is not they stand for it.</summary>
    private static Sentence Drawn(PortSheet sheet, CutFlow flow)
    {
        var points = flow.Curve.Points;
        var most = points.MaxBy(p => p.Flow.Value)!;
        Sentence words = points.Count == 1
            ? (Sentence)$"One lift read, {Quantity.Lift(points[0].Lift)}: {Quantity.Flow(points[0].Flow).By(PortNumber.FlowKey(points[0].Lift))}."
            : $"{points.Count} lifts read from {Quantity.Lift(points[0].Lift)} to {Quantity.Lift(points[^1].Lift)}; most at {Quantity.Lift(most.Lift)}, {Quantity.Flow(most.Flow).By(PortNumber.FlowKey(most.Lift))}.";
        if (sheet.AgainstLast is { } against)
        {
            var counts = against.Curves.Lifts.GroupBy(l => VerdictWords.Of(l.Difference)).Select(g => (Sentence)$"{g.Key} at {g.Count()}");
            words = $"{words} Against cut {against.Last.Cut.Fact.Number}, by lifts: {Sentence.Join(", ", counts)}.";
        }

        return words;
    }

    /// <summary>The lift as it was tested where it was, so that both name one number.</summary>
    private static double AsTested(CutFlow flow, double lift) => flow.Curve.PointAt(lift)?.Lift ?? lift;

    public static string Count(int number, string one) => number == 1 ? $"1 {one}" : FormattableString.Invariant($"{number} {one}s");
}
