using Portwright.Engine.Cam;
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

    /// <summary>The same over a lift that is known over crank angle; null where the curve does not reach its highest.</summary>
    public static Estimate? MeanArea(FlowCurve curve, ValveLift lift)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(lift);
        return lift.Highest > 0 && curve.Covers(lift.Highest) && curve.LowestLift < lift.Highest
            ? Mean(curve, share => lift.At(lift.Opens + share * (lift.Closes - lift.Opens)))
            : null;
    }

    private static Estimate Mean(FlowCurve curve, double camLift, double power) => Mean(curve, share => camLift * Math.Pow(Math.Sin(Math.PI * share), power));

    /// <param name="liftAt">Lift (m) at a share of the event, 0 to 1.</param>
    private static Estimate Mean(FlowCurve curve, Func<double, double> liftAt)
    {
        var lowest = curve.Points.First(p => p.Lift > 0);
        var terms = new (double, Estimate)[Steps];
        for (var i = 0; i < Steps; i++)
        {
            var lift = Math.Min(liftAt((i + 0.5) / Steps), curve.HighestLift);
            terms[i] = lift < lowest.Lift
                ? (lift / lowest.Lift / Steps, lowest.EffectiveArea)
                : (1.0 / Steps, curve.AreaAt(lift)!);
        }

        return Estimate.Combine(terms);
    }
}
