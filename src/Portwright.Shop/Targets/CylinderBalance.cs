using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Targets;

/// <summary>Flows of a cylinder's sides as the register's exhaust over intake means them: at each cam's lift, at one test pressure, the exhaust blown and the intake drawn.</summary>
internal static class CylinderBalance
{
    /// <summary>All ports of one kind together, m3/s; null where there is none, or one was not swept up to its cam's lift.</summary>
    /// <param name="mates">The cylinder's other ports.</param>
    /// <param name="restated">Pa.</param>
    public static Estimate? Side(PlanInFull plan, PortKind kind, PortSheet sheet, IReadOnlyList<CylinderMate> mates, double restated, StandardAir air)
    {
        var perArea = RestatedFlow.VolumeFlow(1, restated, air, kind == PortKind.Intake ? FlowDirection.Draw : FlowDirection.Blow);
        FlowCurve?[] curves = [.. mates.Where(m => m.Port.Fact.Kind == kind).Select(m => m.Flow?.Curve), .. sheet.Port.Fact.Kind == kind ? [sheet.Flow?.Curve] : Array.Empty<FlowCurve?>()];
        Estimate?[] each = [.. curves.Select(c => c?.AreaAt(plan.CamOf(kind).Lift.Highest))];
        return each.Length > 0 && Array.TrueForAll(each, e => e is { Value: > 0 }) ? Estimate.Combine([.. each.Select(e => (perArea, e!))]) : null;
    }

    /// <summary>The cams' lifts nobody stated: without both there is no balance.</summary>
    public static IReadOnlyList<PlanFigure> NotStated(PlanInFull plan) => [.. new[] { plan.IntakeCam.Highest, plan.ExhaustCam.Highest }.Where(f => f.IsAssumed)];
}
