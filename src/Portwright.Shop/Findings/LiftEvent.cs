using Portwright.Engine.Cam;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Findings;

/// <summary>Mean effective area while the cam holds the valve open.</summary>
public static class LiftEvent
{
    private const int Steps = 60;

    /// <summary>
    /// Over the plan's own lift curve. Where the plan states one of two durations the flanks are assumed: half the distance between the slowest and the steepest
    /// is a rectangle's limit. Under the lowest tested lift the area is taken as growing straight with lift from nothing.
    /// </summary>
    /// <returns>m2; null where the curve does not reach the cam's highest lift.</returns>
    public static Estimate? MeanArea(FlowCurve curve, CamInFull cam)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(cam);
        var highest = cam.Lift.Highest;
        if (!(highest > 0) || !curve.Covers(highest) || curve.LowestLift >= highest)
        {
            return null;
        }

        var mean = Mean(curve, cam.Lift);
        double[] flanks = [.. cam.Flanks.Select(f => Mean(curve, f).Value), mean.Value];
        var half = (flanks.Max() - flanks.Min()) / 2;
        return half > 0 ? mean.With(new Contribution(Sources.CamShape, half / Math.Sqrt(3), Shape: InputShape.Rectangular)) : mean;
    }

    private static Estimate Mean(FlowCurve curve, ValveLift cam)
    {
        var lowest = curve.Points.First(p => p.Lift > 0);
        var terms = new (double, Estimate)[Steps];
        for (var i = 0; i < Steps; i++)
        {
            var lift = Math.Min(cam.At(cam.Opens + (i + 0.5) / Steps * (cam.Closes - cam.Opens)), curve.HighestLift);
            terms[i] = lift < lowest.Lift
                ? (lift / lowest.Lift / Steps, lowest.EffectiveArea)
                : (1.0 / Steps, curve.AreaAt(lift)!);
        }

        return Estimate.Combine(terms);
    }
}
