using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Findings;

/// <summary>What mending a loss in the port should bring, by the losses of valve window and port in series.</summary>
/// <remarks>
/// At a test pressure the bench holds, losses in series add as 1/Ae^2 = 1/(C Aw)^2 + 1/Ap^2, with Aw the valve window, Ae the measured
/// effective area and Ap the port's. Taking a share phi off the port's part gives Ae' = Ae / sqrt(1 - (1 - x) phi) with
/// x = (Ae/(C Aw))^2. C is the best a window passes (<see cref="NamedLimits.BestOfWindow"/>). It is a first guess, and its doubt says so: the
/// running score of past advice tells how good it is on this shop's ports.
/// </remarks>
public static class ExpectedGain
{
    /// <summary>The best discharge coefficient of a valve window, as the register has it.</summary>
    public static double BestWindow => NamedLimits.BestOfWindow.Limits.High;

    /// <summary>Gain of mean flow (m3/s restated) over the tested lifts from <paramref name="fromLift"/> to <paramref name="toLift"/>.</summary>
    /// <param name="port">With a sweep; without valve data the whole loss is the port's.</param>
    /// <param name="shareOfPortLoss">What share of the port's loss goes, 0 to 1, with its doubt.</param>
    /// <returns>Null where nothing was swept over that range.</returns>
    public static Estimate? OfPort(PortSurvey port, Estimate shareOfPortLoss, double fromLift, double toLift) =>
        Over(port, fromLift, toLift, (x, phi) => (1 - x) * phi, shareOfPortLoss);

    /// <summary>The same for a mended window: a share of the seat's own loss goes.</summary>
    public static Estimate? OfWindow(PortSurvey port, Estimate shareOfWindowLoss, double fromLift, double toLift) =>
        Over(port, fromLift, toLift, (x, phi) => x * phi, shareOfWindowLoss);

    private static Estimate? Over(PortSurvey port, double fromLift, double toLift, Func<double, double, double> removed, Estimate share)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(share);
        var points = port.Sheet.Flow?.Curve.Points.Where(p => p.Lift > 0 && p.Lift >= fromLift - 1e-6 && p.Lift <= toLift + 1e-6).ToList() ?? [];
        if (points.Count == 0)
        {
            return null;
        }

        double Mean(double phi) => points.Average(p =>
        {
            var window = port.Sheet.Windows.FirstOrDefault(w => Math.Abs(w.Lift - p.Lift) < 1e-6)?.Window.Area;
            var x = window is { } area && area > 0 ? Math.Clamp(Math.Pow(p.EffectiveArea.Value / (BestWindow * area), 2), 0, 1) : 0;
            return p.Flow.Value * (1 / Math.Sqrt(1 - Math.Clamp(removed(x, Math.Clamp(phi, 0, 1)), 0, 0.9)) - 1);
        });
        var gain = Mean(share.Value);
        var (less, more) = (Math.Max(0, share.Value - 0.01), Math.Min(1, share.Value + 0.01));
        var slope = (Mean(more) - Mean(less)) / (more - less);
        return Estimate.Linear(gain, (slope, share));
    }

    /// <summary>A share with its doubt, for what is judged and not measured.</summary>
    public static Estimate Judged(double share, double standardUncertainty, string source) =>
        Estimate.Exact(share).With(new Contribution(Sources.Judged(source), standardUncertainty, double.PositiveInfinity, ContributionKind.Other));
}
