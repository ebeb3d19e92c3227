using System.Globalization;
using Portwright.Engine.Runs;
using Portwright.Physics.Air;
using Portwright.Physics.Curves;
using Portwright.Physics.Targets;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Findings;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Targets;

/// <summary>Flow over lift that the engine asks of a port, from and to.</summary>
/// <param name="Rule">What it rests on.</param>
/// <param name="Words">As it is written at its end.</param>
/// <param name="Line">Lift (m), flows (m3/s restated as the port's own); lifts rising. One place alone for an exhaust, whose rule speaks of its cam's lift and of no other.</param>
public sealed record WantedFlow(TargetRule Rule, string Words, IReadOnlyList<(double Lift, double Least, double Most)> Line)
{
    /// <summary>Enough that the line's corners are not seen.</summary>
    private const int Steps = 120;

    /// <summary>A lift pays where a percent of area there is worth this share of what it is worth where it pays most; judgement, no source.</summary>
    private const double Pays = 0.2;

    /// <summary>Flows wanted at a lift, m3/s; null beyond the line.</summary>
    public UsualRange? At(double lift)
    {
        if (Line is [var only])
        {
            return LiftGroups.Same(lift, only.Lift) ? new UsualRange(only.Least, only.Most) : null;
        }

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
    /// For an intake, the share of what this valve passes at best that brings the inlet Mach index to its knee at the plan's highest speed, from the knee's upper end to its lower: past that more
    /// gives nothing, and does no harm. Drawn from a tenth of the valve's diameter of lift to the cam's, and only where speed, cam and valve are stated and the valve can.
    /// For an exhaust, the usual share of what the cylinder's intakes flow, each at its cam's lift. Null where the plan or the record does not allow it.
    /// </summary>
    public static WantedFlow? Of(Reductions reductions, PortSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        ArgumentNullException.ThrowIfNull(sheet);
        return Of(PlanReading.Of(reductions, sheet.Job.Id).Plan, sheet, CylinderMate.Of(reductions, sheet.Port));
    }

    /// <param name="plan">The job's, in full; null where it is no engine yet.</param>
    /// <param name="mates">The cylinder's other ports.</param>
    internal static WantedFlow? Of(PlanInFull? plan, PortSheet sheet, IReadOnlyList<CylinderMate> mates)
    {
        var (flow, bench) = (sheet.Flow, sheet.Bench?.Fact);
        if (plan is null || (bench is null && flow is null))
        {
            return null;
        }

        var (air, restated) = flow is { Curve: var own } ? (own.Air, own.RestatedAt) : (bench!.StandardAir.Air(), bench.RestatedAt);
        return sheet.Port.Fact.Kind == PortKind.Intake
            ? OfIntake(new InletMach(plan, 1 + mates.Count(m => m.Port.Fact.Kind == PortKind.Intake), null, sheet.Port.Fact.Valve), restated, air, flow?.Curve.Direction ?? FlowDirection.Draw)
            : OfExhaust(plan, sheet, mates, restated, air);
    }

    /// <summary>The same with the engine's answer: where a percent more area is worth little, less is enough, down to nothing where it is worth nothing. Null where more pays at no lift.</summary>
    /// <param name="worth">Of this port's side, lifts rising.</param>
    public WantedFlow? ShapedBy(IReadOnlyList<LiftWorth> worth)
    {
        ArgumentNullException.ThrowIfNull(worth);
        if (Line.Count < 2 || worth.Count < 2)
        {
            return this;
        }

        var most = worth.Max(w => w.Torque);
        if (!(most > 0))
        {
            return null;
        }

        var curve = new MonotoneCubic([.. worth.Select(w => w.Lift)], [.. worth.Select(w => w.Torque / most)]);
        double Counts(double lift)
        {
            var x = Math.Clamp(curve.At(Math.Clamp(lift, worth[0].Lift, worth[^1].Lift)).Value / Pays, 0, 1);
            return x * x * (3 - 2 * x);
        }

        return this with { Words = $"{Words}, by the engine run", Line = [.. Line.Select(p => (p.Lift, p.Least * Counts(p.Lift), p.Most))] };
    }

    private static WantedFlow? OfIntake(InletMach inlet, double restated, StandardAir air, FlowDirection direction)
    {
        if (inlet.NotStated.Count > 0 || inlet.Valve is not { } valve || inlet.ShareOfBest is not { Low: < 1 } share)
        {
            return null;
        }

        var (from, to) = (NamedLimits.LeastLift.Limits.Middle * valve.HeadDiameter, inlet.Plan.IntakeCam.Lift.Highest);
        if (!(to > from))
        {
            return null;
        }

        var (perArea, seat) = (RestatedFlow.VolumeFlow(1, restated, air, direction), valve.Seat());
        return new WantedFlow(
            ValveAtBest.Rule,
            string.Create(CultureInfo.InvariantCulture, $"wanted at {inlet.Plan.HighestRevolutions * 60:N0} rpm"),
            [.. Enumerable.Range(0, Steps + 1).Select(i => from + (to - from) * i / Steps)
                .Select(l => (Lift: l, Best: perArea * ValveAtBest.At(seat, l)))
                .Select(p => (p.Lift, share.Low * p.Best, Math.Min(1, share.High) * p.Best))]);
    }

    private static WantedFlow? OfExhaust(PlanInFull plan, PortSheet sheet, IReadOnlyList<CylinderMate> mates, double restated, StandardAir air)
    {
        if (CylinderBalance.NotStated(plan).Count > 0 || CylinderBalance.Side(plan, PortKind.Intake, sheet, mates, restated, air) is not { Value: var intake })
        {
            return null;
        }

        var (rule, exhausts) = (NamedLimits.ExhaustOverIntake, 1 + mates.Count(m => m.Port.Fact.Kind == PortKind.Exhaust));
        return new WantedFlow(
            FlowBalance.Rule, $"{rule.Numbers} % of intake",
            [(plan.ExhaustCam.Lift.Highest, rule.Limits.Low * intake / exhausts, rule.Limits.High * intake / exhausts)]);
    }
}
