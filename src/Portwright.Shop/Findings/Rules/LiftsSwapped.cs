using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>Two neighbouring lifts carry each other's readings.</summary>
public sealed record LiftsSwapped() : FindingRule("lifts-swapped", "Two lifts are swapped")
{
    /// <inheritdoc/>
    public override double? Prior => 0.02;

    public override Sentence Evidence => $"A sweep of five lifts or more.";

    public override Sentence Test => $"With the readings of two neighbouring lifts exchanged the curve lies where its sisters' or its own neighbours put it, as written down it does not; a slip at one of the two would not mend the other.";

    public override Sentence ElseExplains => $"Two slips of the pen at once; air that is unsteady in that band.";

    public override Sentence LookFirst => $"The paper it was typed from, then one of the two lifts again.";

    public override Sentence Cut => $"Nothing on this curve until it is put right.";

    public override Sentence Risk => $"A gain at one lift and a loss at the next that never were.";

    public override string Source => "common practice, no source; how chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OneReading;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Flow is not { } flow)
        {
            yield break;
        }

        var pairs = flow.Sweeps.SelectMany(sweep =>
        {
            var points = sweep.Curve.Flowing.ToList();
            var against = FlowAgainstSisters.OfSweep(port, sweep);
            return Enumerable.Range(0, Math.Max(0, points.Count - 1)).Select(i => (Low: points[i], High: points[i + 1], Ratio: Ratio(points, i, against)));
        }).ToList();
        if (pairs.Count == 0 || pairs.MaxBy(p => p.Ratio) is not { Ratio: > 1 } pair)
        {
            yield break;
        }

        var (low, high) = (pair.Low, pair.High);
        yield return new Finding(
            this,
            FindingKind.Measurement,
            $"{Quantity.Flow(low.Flow.Value)} at {Quantity.Lift(low.Lift)} and {Quantity.Flow(high.Flow.Value)} at {Quantity.Lift(high.Lift)}: the other way round they would fit the rest.",
            Court.Anywhere(Prior!.Value, [.. pairs.Select(p => p.Ratio)]),
            null,
            null,
            [.. low.Readings.Concat(high.Readings).Select(r => r.Reading.Id)],
            $"Read {Quantity.Lift(low.Lift)} again, or correct the two lifts.")
        { Lifts = [low.Lift, high.Lift] };
    }

    /// <summary>Likelihood of the pair exchanged over the pair as written.</summary>
    private static double Ratio(List<LiftPoint> points, int low, FlowAgainstSisters? against)
    {
        var high = low + 1;
        var (a, b) = (Math.Log(points[low].EffectiveArea.Value), Math.Log(points[high].EffectiveArea.Value));
        if (against is not null && against.PlaceOf(points[low].Lift) is >= 0 and var k && against.PlaceOf(points[high].Lift) is >= 0 and var m)
        {
            var (here, there) = (against.Middle[k] + against.Level, against.Middle[m] + against.Level);
            return Exchanged(a, b, here + against.ShapeFamily[k].Mean, there + against.ShapeFamily[m].Mean, against.ShapeFamily[k].Deviation, against.ShapeFamily[m].Deviation, against.ShapeFamily[k].Degrees);
        }

        // By its own curve, the two left out of each other's neighbours.
        return CurveNeighbours.Off(points, low, high) is { } offLow && CurveNeighbours.Off(points, high, low) is { } offHigh
            ? Exchanged(a, b, a - offLow, b - offHigh, 2 * CurveNeighbours.Usual, 2 * CurveNeighbours.Usual, CurveNeighbours.Degrees)
            : 0;
    }

    private static double Exchanged(double low, double high, double lowDue, double highDue, double lowScatter, double highScatter, double degrees)
    {
        double Like(double off, double scatter) => Density.StudentOverItsMiddle(off, scatter, degrees);
        var written = Like(low - lowDue, lowScatter) * Like(high - highDue, highScatter);
        var exchanged = Like(high - lowDue, lowScatter) * Like(low - highDue, highScatter);
        // One slip alone explains a pair of which one is where it should be.
        var slip = ReadingOutOfLine.OneOfTwo * Math.Max(Like(low - lowDue, lowScatter), Like(high - highDue, highScatter));
        return exchanged / Math.Max(double.Epsilon, written + slip);
    }
}
