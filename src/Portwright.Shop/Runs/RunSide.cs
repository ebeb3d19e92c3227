using Portwright.Engine.Gas.Ends;
using Portwright.Engine.Runs;
using Portwright.Physics.Targets;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Runs;

/// <summary>One side of the cylinder as the engine run takes it, with what is in doubt about its areas.</summary>
/// <param name="Areas">Effective area of the side's valves together at each lift of <paramref name="Side"/>, m2.</param>
/// <param name="Remarks">What was assumed, in sentences.</param>
public sealed record RunSide(ValveSide Side, IReadOnlyList<Estimate> Areas, IReadOnlyList<Sentence> Remarks)
{
    /// <summary>Length of cells, m: an exhaust's gas is faster, so its cells may be longer for the same time step.</summary>
    private const double IntakeCell = 0.010, ExhaustCell = 0.020;

    /// <summary>Walls, K, and roughness, m. Common practice, no source.</summary>
    private const double IntakeWall = 330, ExhaustWall = 700, Roughness = 25e-6;

    /// <summary>Nearer together than this two stations of a pipe are one, m.</summary>
    private const double Apart = 0.002;

    /// <summary>Exhaust over intake at the same share of the valve's lift, where one of them was not swept.</summary>
    private static UsualRange UsualBalance => NamedLimits.ExhaustOverIntake.Limits;

    /// <param name="port">Swept, of the kind asked for.</param>
    internal static RunSide Of(PlanInFull plan, PortKind kind, PortSurvey port)
    {
        var count = (kind == PortKind.Intake ? plan.Ports.Intake : plan.Ports.Exhaust).Count;
        var flow = port.Sheet.Flow!;
        var with = kind == PortKind.Intake ? FlowDirection.Draw : FlowDirection.Blow;
        // Swept both ways, the way the engine's stream goes comes first, whichever was swept last.
        FlowCurve[] curves = [flow.Curve, .. flow.Apart.Reverse().Select(s => s.Curve).Where(c => c.Points.Count(p => p.Lift > 0) >= 3)];
        var curve = curves.FirstOrDefault(c => c.Direction == with) ?? flow.Curve;
        var points = curve.Points.Where(p => p.Lift > 0).ToList();
        List<Sentence> remarks = [];
        if (curve.Direction != with)
            remarks.Add($"The {Name(kind)} was swept {(with == FlowDirection.Draw ? "blowing" : "drawing")}, against the engine's stream: a port flows otherwise backwards.");
        if (count > 1) remarks.Add($"Both ports of a cylinder are taken alike: {port.Sheet.Port.Fact.Name} stands for {count}.");
        var highest = plan.CamOf(kind).Lift.Highest;
        if (highest > points[^1].Lift + 1e-6)
            remarks.Add($"The cam lifts the {Name(kind)} valve {Quantity.Lift(highest)}, it was swept to {Quantity.Lift(points[^1].Lift)}: above that its area is held, not measured.");
        // A leak larger than the flow leaves less than nothing at a low lift.
        Estimate[] areas = [.. points.Select(p => p.EffectiveArea * count).Select(a => a.Value > 0 ? a : new Estimate(0, a.Contributions))];
        var backwards = curves.FirstOrDefault(c => c.Direction != curve.Direction);
        var measured = new MeasuredAreas(
            [.. points.Select(p => p.Lift)], [.. areas.Select(a => a.Value)],
            backwards is null ? null : [.. points.Select(p => count * (Math.Max(0, backwards.AreaAt(Math.Clamp(p.Lift, backwards.LowestLift, backwards.HighestLift))!.Value)))]);
        if (backwards is not null) remarks.Add($"The {Name(kind)} was swept both ways: gas pushed back passes by the area measured that way.");
        return new(new(Timing(plan, kind), measured, TractOf(plan, kind, port, count, remarks)), areas, remarks);
    }

    /// <summary>A side that was not swept: by the usual balance to the other side, at the same share of the valve's diameter.</summary>
    internal static RunSide Unswept(PlanInFull plan, PortKind kind, RunSide other)
    {
        var (own, others) = kind == PortKind.Exhaust ? (plan.ExhaustValve.Value, plan.IntakeValve.Value) : (plan.IntakeValve.Value, plan.ExhaustValve.Value);
        var balance = kind == PortKind.Exhaust ? UsualBalance.Middle : 1 / UsualBalance.Middle;
        List<Sentence> remarks = [$"No {Name(kind)} was swept: its areas are taken as {balance:0.00} of the other side's, common practice. Sweep one."];
        // The rule says a range: a rectangle, the same for every lift.
        var areas = other.Areas.Select(a => (a * balance).With(new Contribution("usual balance of exhaust and intake", a.Value * balance * UsualBalance.HalfWidth / UsualBalance.Middle / Math.Sqrt(3), Shape: InputShape.Rectangular))).ToList();
        var measured = new MeasuredAreas([.. other.Side.Areas.Lifts.Select(l => l * own / others)], [.. areas.Select(a => a.Value)]);
        return new(new(Timing(plan, kind), measured, TractOf(plan, kind, null, (kind == PortKind.Intake ? plan.Ports.Intake : plan.Ports.Exhaust).Count, remarks)), areas, remarks);
    }

    private static ValveTiming Timing(PlanInFull plan, PortKind kind) => plan.CamOf(kind) is { Card: { } card }
        ? new() { Card = card }
        : new() { TableCrank = [.. plan.CamOf(kind).Table.Select(r => r.Crank)], TableLift = [.. plan.CamOf(kind).Table.Select(r => r.Lift)] };

    /// <summary>Seat, the port's measured sections, its flange, and what is bolted on.</summary>
    private static Tract TractOf(PlanInFull plan, PortKind kind, PortSurvey? port, int count, List<Sentence> remarks)
    {
        var valve = (kind == PortKind.Intake ? plan.IntakeValve : plan.ExhaustValve).Value;
        // A usual port is 2.3 valve diameters long (common practice, no source) with a throat in the middle of the usual.
        var length = port?.Centreline.Length ?? 2.3 * valve;
        var throat = port?.Sheet.Port.Fact.Valve?.ThroatDiameter is > 0 and var measured ? measured : NamedLimits.ThroatOverValve.Limits.Middle * valve;
        var circle = Math.PI / 4;
        List<TractStation> stations = [new(0, count * circle * throat * throat)];
        var sections = port?.Stations.Where(s => s.Section is not null).OrderByDescending(s => s.Distance).ToList() ?? [];
        if (sections.Count == 0) remarks.Add($"No section of the {Name(kind)} port was measured: it tapers evenly from throat to flange.");
        foreach (var s in sections)
            if (length - s.Distance > stations[^1].Distance + Apart && s.Distance > Apart) stations.Add(new(length - s.Distance, count * s.Section!.Area.Value));

        double cell, wall, correction;
        if (kind == PortKind.Intake)
        {
            // The port's own flange at this cut, where the plan does not say another.
            var flange = plan.Intake.FlangeArea.IsAssumed && sections is [.., { Section: { } last } nearest] && nearest.Distance <= valve / 10 ? count * last.Area.Value : plan.Intake.FlangeArea.Value;
            stations.Add(new(length, flange));
            stations.Add(new(length + plan.Intake.RunnerLength.Value, plan.Intake.FarArea.Value));
            (cell, wall, correction) = (IntakeCell, IntakeWall, EndCorrection.InWall(Math.Sqrt(plan.Intake.FarArea.Value / Math.PI)));
        }
        else
        {
            var primary = circle * plan.Exhaust.PrimaryDiameter.Value * plan.Exhaust.PrimaryDiameter.Value;
            stations.Add(new(length, primary));
            stations.Add(new(length + plan.Exhaust.PrimaryLength.Value, primary));
            (cell, wall, correction) = (ExhaustCell, ExhaustWall, EndCorrection.Plain(plan.Exhaust.PrimaryDiameter.Value / 2));
        }

        return new(stations, cell, wall, Roughness, EndCorrection: correction);
    }

    private static string Name(PortKind kind) => kind == PortKind.Intake ? "intake" : "exhaust";
}
