using Portwright.Physics.Uncertainty;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Findings;

/// <summary>Mean effective area while the cam holds the valve open.</summary>
public static class LiftEvent
{
    private const int Steps = 60;

    /// <summary>
    /// The plan knows the cam's lift and not its shape. A real cam lies between a haversine (sin^2, slow flanks) and half a sine (full flanks): the
    /// mean of the two is taken and half their distance is its rectangle's limit. Common practice, no source. Under the lowest tested lift
    /// the area is taken as growing straight with lift from nothing.
    /// </summary>
    /// <param name="camLift">Net lift, m, inside the tested range.</param>
    /// <returns>m2; null where the curve does not reach the cam's lift.</returns>
    public static Estimate? MeanArea(FlowCurve curve, double camLift)
    {
        ArgumentNullException.ThrowIfNull(curve);
        if (!(camLift > 0) || !curve.Covers(camLift) || curve.LowestLift >= camLift)
        {
            return null;
        }

        var (slow, full) = (Mean(curve, camLift, 2), Mean(curve, camLift, 1));
        return Estimate.Mean(slow, full).With(new Contribution(
            "shape of the cam", Math.Abs(full.Value - slow.Value) / 2 / Math.Sqrt(3), double.PositiveInfinity, ContributionKind.Other));
    }

    private static Estimate Mean(FlowCurve curve, double camLift, double power)
    {
        var lowest = curve.Points.First(p => p.Lift > 0);
        var terms = new (double, Estimate)[Steps];
        for (var i = 0; i < Steps; i++)
        {
            var lift = Math.Min(camLift * Math.Pow(Math.Sin(Math.PI * (i + 0.5) / Steps), power), curve.HighestLift);
            terms[i] = lift < lowest.Lift
                ? (lift / lowest.Lift / Steps, lowest.EffectiveArea)
                : (1.0 / Steps, curve.AreaAt(lift)!);
        }

        return Estimate.Combine(terms);
    }
}
