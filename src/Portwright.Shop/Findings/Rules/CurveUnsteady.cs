using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The curve kinks, falls, scatters or sounds in a band of lifts: the air there has two minds.</summary>
public sealed record CurveUnsteady() : FindingRule("curve-unsteady", "The flow is unsteady in a band of lifts")
{
    /// <summary>Repeats of one lift are a sign where they really scatter this many times as much as the others'; common practice, no source.</summary>
    public const double MuchMore = 2;

    public override Sentence Evidence => $"A sweep with five lifts or more, repeats where there are any, and what was heard.";

    public override Sentence Test => $"At each lift, from the doubt of its readings: the flow lies off the smooth curve through its neighbours by more than 1.5 percent; or it falls from the lift before; or its repeats scatter more than twice as much as those of all other lifts together (ratio of variances, for as many lifts as there are). What was heard counts (k + 1/2)/(n + 1) for k of n readings. The odds of the surest number and of the sound multiply.";

    public override Sentence ElseExplains => $"A slip of the dial or of the pen at one lift; a change of the meter's range there; a valve that rattles on its stem or a spring that sings, not the air.";

    public override Sentence LookFirst => $"Repeat that lift from above and from below: a slip goes, a stall of the air stays and often differs between the two.";

    public override Sentence Cut => $"Nothing on this alone. Find the place first: ball and flag on the short side and behind the guide boss at a lift inside the band.";

    public override Sentence Risk => $"Cutting after a noise. An unsteady port also reads unsteady, so that small gains drown.";

    public override string Source => "Off the curve: difference against its own doubt (JCGM 100:2008). Scatter: Fisher's ratio of variances. Sound: Jeffreys' prior for a share. Listening itself: common practice, no source";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Flow is not { } flow || port.Steadiness is not { } steadiness)
        {
            yield break;
        }

        var signs = Signs(flow.Curve, steadiness).ToList();
        if (signs.Count == 0)
        {
            yield break;
        }

        var surest = signs.Max(s => s.Probability);
        // A sign that would not stand by itself is left out of the sentence where a surer one stands.
        signs = [.. signs.Where(s => s.Sound || s.Probability >= Math.Min(surest, Confidence.Stated))];
        // One band a curve: it is one port that has two minds.
        var sound = steadiness.Sounds.Count == 0 ? 0.5 : Heard(flow.Curve, steadiness);
        var odds = surest / (1 - surest) * sound / (1 - sound);
        var (from, to) = (signs.Min(s => s.From), signs.Max(s => s.To));
        yield return new Finding(
            this,
            FindingKind.Port,
            $"{(from == to ? (Sentence)$"At {Quantity.Lift(from)}" : $"From {Quantity.Lift(from)} to {Quantity.Lift(to)}")}: {Sentence.Join("; ", signs.Select(s => s.Words).Distinct())}.",
            double.IsPositiveInfinity(odds) ? 1 : odds / (1 + odds),
            null,
            null,
            [.. flow.Sweeps.Select(s => s.Sweep.Id)],
            from == to
                ? (Sentence)$"Repeat {Quantity.Lift(from)} three times, coming from above and from below."
                : $"Sweep from {Quantity.Lift(from)} to {Quantity.Lift(to)} in half the steps, up and down.");
    }

    private static IEnumerable<(double From, double To, Sentence Words, double Probability, bool Sound)> Signs(FlowCurve curve, CurveSteadiness steadiness)
    {
        foreach (var kink in steadiness.Kinks)
        {
            var allowed = CurveSteadiness.SmoothShare * kink.Off.Value / kink.Share;
            var side = kink.Off.Value < 0 ? -1 : 1;
            yield return (kink.Lift, kink.Lift,
                $"the flow at {Quantity.Lift(kink.Lift)} lies {Quantity.Share(Math.Abs(kink.Share))} {(side < 0 ? "under" : "over")} the curve of its neighbours",
                Confidence.Above(kink.Off.Scale(side), allowed),
                false);
        }

        foreach (var (from, to, fall) in steadiness.Falls)
        {
            yield return (from, to, $"the flow falls by {Quantity.Flow(fall.Of.Scale(-1))} from {Quantity.Lift(from)} to {Quantity.Lift(to)}", 1 - fall.ProbabilityOfGain, false);
        }

        foreach (var (lift, ratio, probability) in Scattered(curve))
        {
            yield return (lift, lift, $"the repeats at {Quantity.Lift(lift)} scatter {ratio:0.#} times as much as those of the other lifts", probability, false);
        }

        foreach (var (lift, sound) in steadiness.Sounds)
        {
            yield return (lift, lift, $"it {sound} at {Quantity.Lift(lift)}", 0.5, true);
        }
    }

    /// <summary>Lifts whose repeats scatter more than <see cref="MuchMore"/> times the others' together, at the level that all lifts looked at share.</summary>
    private static IEnumerable<(double Lift, double Ratio, double Probability)> Scattered(FlowCurve curve)
    {
        var lifts = curve.Points.Where(p => p.Lift > 0)
            // Two sweeps differ by their set-ups; a scatter is that of one sweep's repeats, relative, as a meter's is.
            .Select(p => (p.Lift, Groups: p.Readings.GroupBy(r => r.Reading.Fact.Sweep).Where(g => g.Count() > 1)
                .Select(g => RepeatScatter.Of([.. g.Select(r => r.EffectiveArea.Value / p.EffectiveArea.Value)])).ToList()))
            .Select(p => (p.Lift, Squares: p.Groups.Sum(g => g.StandardDeviation * g.StandardDeviation * g.DegreesOfFreedom), Degrees: p.Groups.Sum(g => g.DegreesOfFreedom)))
            .Where(p => p.Degrees > 0).ToList();
        foreach (var (lift, squares, degrees) in lifts)
        {
            var others = lifts.Where(l => l.Lift != lift).ToList();
            var (otherSquares, otherDegrees) = (others.Sum(o => o.Squares), others.Sum(o => o.Degrees));
            if (otherSquares <= 0)
            {
                continue;
            }

            var f = squares / degrees / (otherSquares / otherDegrees);
            var probability = 1 - Math.Min(1, lifts.Count * Fisher.UpperTail(f / (MuchMore * MuchMore), degrees, otherDegrees));
            if (probability > 0.5)
            {
                yield return (lift, Math.Sqrt(f), probability);
            }
        }
    }

    /// <summary>Share of the readings in the lifts that sounded that did, by Jeffreys' prior.</summary>
    private static double Heard(FlowCurve curve, CurveSteadiness steadiness)
    {
        var readings = curve.Points.Where(p => steadiness.Sounds.Any(s => s.Lift == p.Lift)).SelectMany(p => p.Readings).ToList();
        return (readings.Count(r => r.Reading.Fact.Sound is { Length: > 0 } and not "steady") + 0.5) / (readings.Count + 1);
    }
}
