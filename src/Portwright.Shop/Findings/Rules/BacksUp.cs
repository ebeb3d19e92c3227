using Portwright.Physics.Uncertainty;
using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>Past a lift the port flows less, and more so than its sisters.</summary>
public sealed record BacksUp() : FindingRule("backs-up", "The port backs up at high lift")
{
    /// <summary>A port that backs up loses this much from its peak to the highest lift, as a logarithm; judgement.</summary>
    public static readonly Step Falls = new(0.03, 2, StepWay.Down);

    /// <summary>Sound ports fall by no more than about this from their peak, standard deviation of the logarithm: a plateau is no fall. Judgement.</summary>
    public const double Plateau = 0.003;

    /// <summary>Sound sisters' falls differ by about this; judgement.</summary>
    public const double BetweenSisters = 0.006;

    /// <summary>A peak over the next highest reading by more than this, as a logarithm, stands by itself; judgement.</summary>
    public const double StandsAlone = 0.02;

    /// <inheritdoc/>
    public override double? Prior => 0.06;

    public override Sentence Evidence => $"A sweep past the lift where the flow is highest; the same lifts of its sister ports.";

    public override Sentence Test => $"From its highest flow to the highest lift the port loses more than readings and lift setting allow, and more than its sister ports lose over the same lifts. A fall they all share is the casting's shape and no fault of one port.";

    public override Sentence ElseExplains => $"Air torn off the short side; a bench range at its end or a bench that lost test pressure; a valve that cocks at full lift.";

    public override Sentence LookFirst => $"The last two lifts again, from above and from below, with the test pressure read at each; a ball on the short side at the highest lift.";

    public override Sentence Cut => $"The place that lets go: short side, bowl or pinch, by what balls and sections say. Not the seat.";

    public override Sentence Risk => $"Cutting for a lift the cam never reaches.";

    public override string Source => "common practice, no source; how chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OnePlace;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Flow is not { } flow || Fall(flow.Curve) is not { } fall)
        {
            yield break;
        }

        var ratio = Falls.Ratio(fall.Log, Math.Sqrt(Plateau * Plateau + fall.Doubt * fall.Doubt), Degrees);
        var sisters = Sentence.Empty;
        if (FlowAgainstSisters.Of(port) is { } against)
        {
            var peak = against.PlaceOf(fall.Peak.Lift);
            double[] falls = [.. against.SistersOver.Select(s => FromPeak(s, peak))];
            var family = Family.Of(falls, Math.Sqrt(BetweenSisters * BetweenSisters + fall.Doubt * fall.Doubt), FlowAgainstSisters.UsualShapeDegrees);
            // Both must hold: it falls, and its sisters do not fall as much.
            ratio = Math.Min(ratio, family.Ratio(FromPeak(against.Over, peak), Falls));
            sisters = peak < 0 ? Sentence.Empty : Sisters([.. against.SistersOver.Select(s => Math.Exp(s[^1] - s[peak] + against.Middle[^1] - against.Middle[peak]) - 1)]);
        }

        yield return new Finding(
            this,
            FindingKind.Port,
            $"Past {Quantity.Lift(fall.Peak.Lift)} the flow falls by {Quantity.Flow(fall.Peak.Flow.Subtract(fall.Last.Flow))} to {Quantity.Lift(fall.Last.Lift)}, by {Quantity.Share(1 - fall.Last.EffectiveArea.Value / fall.Peak.EffectiveArea.Value).About(2)}{sisters}. {Cam(port, fall.Peak.Lift, fall.Last.Lift)}",
            Court.Chance(new Explanation(Prior!.Value, ratio)),
            null,
            null,
            [.. flow.Sweeps.Select(s => s.Sweep.Id)],
            $"Hold a ball on the short side at {Quantity.Lift(fall.Last.Lift)}: it tells whether the air leaves there.")
        { Lifts = [fall.Peak.Lift, fall.Last.Lift] };
    }

    /// <summary>Degrees of freedom behind the usual plateau; judgement.</summary>
    private const double Degrees = 12;

    /// <summary>What the sisters do over the same lifts, by their middle one.</summary>
    private static Sentence Sisters(IReadOnlyList<double> changes)
    {
        Sentence whose = changes.Count == 1 ? (Sentence)$"its sister" : $"its {FormattableString.Invariant($"{changes.Count}")} sisters";
        var middle = Family.Median(changes);
        return middle > -0.001 ? (Sentence)$"; {whose} {(changes.Count == 1 ? "does" : "do")} not fall there"
            : $"; {whose} {(changes.Count == 1 ? "falls" : "fall")} by {Quantity.Share(-middle).About(2)}{(changes.Count == 1 ? "" : " on the middle")}";
    }

    private static Sentence Cam(PortSurvey port, double peak, double last) => port.Sheet.Cam is not { } cam ? (Sentence)$"The plan does not say how far the cam lifts."
        : cam.Lift <= peak + 1e-6 ? (Sentence)$"The cam stays under it: it lifts to {Quantity.Lift(cam.Lift)}."
        : cam.Lift < last - 1e-6 ? (Sentence)$"The cam lifts to {Quantity.Lift(cam.Lift)}: it meets the first {Quantity.Lift(cam.Lift - peak)} of that way."
        : $"The cam gets there: it lifts to {Quantity.Lift(cam.Lift)}.";

    /// <summary>Highest point, last point and the fall between them; null where the last is the highest.</summary>
    private static (LiftPoint Peak, LiftPoint Last, double Log, double Doubt)? Fall(FlowCurve curve)
    {
        var points = curve.Flowing.ToList();
        if (points.Count < FlowAgainstSisters.FewestLifts || points.MaxBy(p => p.EffectiveArea.Value) is not { } peak || peak == points[^1])
        {
            return null;
        }

        var last = points[^1];
        var share = Estimate.Ratio(last.EffectiveArea, peak.EffectiveArea);
        // A peak that stands by itself is a slip sooner than a peak: what is over the next highest by more than this is not counted as fallen from.
        var next = points.Where(p => p != peak).Max(p => p.EffectiveArea.Value);
        var alone = Math.Max(0, Math.Log(peak.EffectiveArea.Value / next) - StandsAlone);
        return (peak, last, Math.Min(0, Math.Log(share.Value) + alone), share.StandardUncertainty / share.Value);
    }

    /// <summary>How the last lift lies against the peak and the lift before it: what of a fall is not shared.</summary>
    /// <param name="peak">Place of the port's own peak; below zero where the sisters do not reach it.</param>
    private static double FromPeak(IReadOnlyList<double> over, int peak)
    {
        var at = peak < 0 || peak >= over.Count - 1 ? over.Count - 2 : peak;
        return over[^1] - (over[at] + over[Math.Max(0, at - 1)]) / 2;
    }
}
