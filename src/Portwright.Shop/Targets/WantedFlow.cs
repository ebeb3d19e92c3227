using System.Globalization;
using Portwright.Engine.Cam;
using Portwright.Physics.Air;
using Portwright.Physics.Targets;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Targets;

/// <summary>Flow over lift that the engine asks of a port, from and to.</summary>
/// <param name="Rule">What it rests on.</param>
/// <param name="Words">As it is written at its end.</param>
/// <param name="Line">Lift (m), flows (m3/s restated as the port's own); lifts rising.</param>
public sealed record WantedFlow(TargetRule Rule, string Words, IReadOnlyList<(double Lift, double Least, double Most)> Line)
{
    private const int Steps = 80;

    /// <summary>Flows wanted at a lift, m3/s; null beyond the line.</summary>
    public UsualRange? At(double lift)
    {
        for (var i = 1; i < Line.Count; i++)
        {
            var (a, b) = (Line[i - 1], Line[i]);
            if (lift >= a.Lift - 1e-9 && lift <= b.Lift + 1e-9)
            {
                var share = Math.Clamp((lift - a.Lift) / (b.Lift - a.Lift), 0, 1);
                return new UsualRange(a.Least + share * (b.Least - a.Least), a.Most + share * (b.Most - a.Most));
            }
        }

        return null;
    }

    /// <summary>
    /// For an intake, what keeps the inlet Mach index in its knee's range at the plan's highest speed; drawn only where bore, stroke, that speed and the intake's lift are stated.
    /// For an exhaust, the usual share of what the cylinder's intakes flow at the same lift. Null where the plan or the record does not allow it.
    /// </summary>
    public static WantedFlow? Of(Reductions reductions, PortSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        ArgumentNullException.ThrowIfNull(sheet);
        return Of(PlanReading.Of(reductions, sheet.Job.Id).Plan, sheet, CylinderMate.Of(reductions, sheet.Port, sheet.Job.Fact.Plan));
    }

    /// <param name="plan">The job's, in full; null where it is no engine yet.</param>
    /// <param name="mates">The cylinder's other ports.</param>
    internal static WantedFlow? Of(PlanInFull? plan, PortSheet sheet, IReadOnlyList<CylinderMate> mates)
    {
        var (flow, bench) = (sheet.Flow, sheet.Bench?.Fact);
        if (bench is null && flow is null)
        {
            return null;
        }

        var (air, restated) = flow is { Curve: var own } ? (own.Air, own.RestatedAt) : (bench!.StandardAir.Air(), bench.RestatedAt);
        return sheet.Port.Fact.Kind == PortKind.Intake
            ? OfIntake(plan, sheet.Job.Fact.Plan, 1 + mates.Count(m => m.Port.Fact.Kind == PortKind.Intake), restated, air, flow?.Curve.Direction ?? FlowDirection.Draw)
            : flow is null ? null : OfExhaust(flow.Curve, mates, 1 + mates.Count(m => m.Port.Fact.Kind == PortKind.Exhaust));
    }

    private static WantedFlow? OfIntake(PlanInFull? plan, EnginePlan stated, int intakes, double restated, StandardAir air, FlowDirection direction)
    {
        if (stated is not { Bore: not null, Stroke: not null, HighestSpeed: not null } || stated.LiftOf(PortKind.Intake) is null || plan is null
            || Needed(plan, MachTargets.KneeRange.High) is not { } least || Needed(plan, MachTargets.KneeRange.Low) is not { } most)
        {
            return null;
        }

        var perArea = RestatedFlow.VolumeFlow(1, restated, air, direction) / intakes;
        var highest = plan.IntakeCam.Lift.Highest;
        return new WantedFlow(
            NeededArea.Rule,
            string.Create(CultureInfo.InvariantCulture, $"wanted at {stated.HighestSpeed:N0} rpm"),
            [.. Enumerable.Range(0, Steps + 1).Select(i => highest * i / Steps).Select(l => (l, perArea * least.At(l), perArea * most.At(l)))]);
    }

    /// <summary>Needed area over lift of all intakes of a cylinder at the plan's highest speed.</summary>
    public static NeededAreaOverLift? Needed(PlanInFull plan, double index)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ValveLift lift = plan.IntakeCam.Lift;
        return NeededAreaOverLift.Of(plan.Bore.Value, plan.Throw, lift.Opens, lift.Closes, lift.At, plan.HighestRevolutions, index, plan.Air.State.SpeedOfSound);
    }

    private static WantedFlow? OfExhaust(FlowCurve own, IReadOnlyList<CylinderMate> mates, int exhausts)
    {
        FlowCurve[] intakes = [.. mates.Where(m => m.Port.Fact.Kind == PortKind.Intake).Select(m => m.Flow?.Curve.RestatedLike(own)).OfType<FlowCurve>()];
        if (intakes.Length == 0 || intakes.Length < mates.Count(m => m.Port.Fact.Kind == PortKind.Intake))
        {
            return null;
        }

        var (from, to) = (intakes.Max(c => c.LowestLift), Math.Min(own.HighestLift, intakes.Min(c => c.HighestLift)));
        if (!(to > from))
        {
            return null;
        }

        return new WantedFlow(
            FlowBalance.Rule,
            string.Create(CultureInfo.InvariantCulture, $"{FlowBalance.Usual.Low * 100:0} to {FlowBalance.Usual.High * 100:0} % of intake"),
            [.. Enumerable.Range(0, Steps + 1).Select(i => from + (to - from) * i / Steps)
                .Select(l => (l, intakes.Sum(c => c.At(l)?.Value ?? 0) / exhausts))
                .Select(p => (p.l, FlowBalance.Usual.Low * p.Item2, FlowBalance.Usual.High * p.Item2))]);
    }
}
