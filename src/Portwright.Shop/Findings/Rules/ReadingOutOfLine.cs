using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>One lift's reading lies where neither its neighbours nor its sisters put it.</summary>
public sealed record ReadingOutOfLine() : FindingRule("reading-out-of-line", "A reading is out of line")
{
    /// <summary>Density of a slip against the middle of a sound scatter: a slip may lie anywhere. Judgement.</summary>
    internal const double OneOfTwo = 0.01;

    /// <inheritdoc/>
    public override double? Prior => 0.08;

    public override Sentence Evidence => $"A sweep of five lifts or more, or a lift read more than once.";

    public override Sentence Test => $"One lift lies off its neighbours by more than its sisters' curves do there, or, without sisters, by more than curves of their own kind do ({CurveNeighbours.Usual * 100:0.0} percent); or one of the repeats of a lift lies off the others as a slip does.";

    public override Sentence ElseExplains => $"Air that is unsteady at that lift; a change of range there; a corner of the curve, where no sister shows it.";

    public override Sentence LookFirst => $"That lift again.";

    public override Sentence Cut => $"Nothing on this reading.";

    public override Sentence Risk => $"A gain or a loss at one lift that never was, and a wrong mean.";

    public override string Source => "common practice, no source; how chances are worked out: docs/theory/judgement.md";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Flow is not { } flow)
        {
            yield break;
        }

        var looked = flow.Sweeps.SelectMany(sweep =>
        {
            var points = sweep.Curve.Flowing.ToList();
            var against = FlowAgainstSisters.OfSweep(port, sweep);
            var repeats = RepeatsAtLift.Of(sweep).ToDictionary(r => r.Lift);
            return points.Select((p, i) => (Point: p, Line: Line(points, i, against), Repeats: repeats.GetValueOrDefault(p.Lift)));
        }).Where(l => l.Line is not null || l.Repeats is not null).ToList();
        if (looked.Count == 0)
        {
            yield break;
        }

        double[] ratios = [.. looked.Select(l => Math.Max(l.Line?.Ratio ?? 0, BySlip(l.Repeats)))];
        var chances = Court.AtOneOf(Prior!.Value, ratios);
        var best = Enumerable.Range(0, ratios.Length).MaxBy(i => ratios[i]);
        if (ratios[best] <= 1)
        {
            yield break;
        }

        // One slip a sweep is the usual slip: which of two neighbours it is may stay open while that there is one is sure.
        var (point, line, repeated) = looked[best];
        double[] others = [.. looked.Where((l, i) => i != best && chances[i] > Other && !LiftGroups.Same(l.Point.Lift, point.Lift)).Select(l => l.Point.Lift).Distinct()];
        var ofRepeats = BySlip(repeated) > (line?.Ratio ?? 0);
        Sentence said = ofRepeats
            ? (Sentence)$"{repeated!.Farthest.Reading.Fact.Reading.Text} at {Quantity.Lift(point.Lift)} lies far from the other readings of that lift"
            : $"The flow at {Quantity.Lift(point.Lift)} lies {Quantity.Share(Math.Abs(Math.Exp(line!.Value.Off) - 1)).About(2)} {(line.Value.Off < 0 ? "under" : "over")} where {(line.Value.Sisters ? "its sisters' curves" : "its neighbours")} put it";
        yield return new Finding(
            this,
            FindingKind.Measurement,
            others.Length == 0 ? (Sentence)$"{said}." : $"{said}, or the one at {Sentence.Join(" or ", others.Select(o => (Sentence)$"{Quantity.Lift(o)}"))} does.",
            Court.Anywhere(Prior.Value, ratios),
            null,
            null,
            ofRepeats ? [repeated!.Farthest.Reading.Id] : [.. point.Readings.Select(r => r.Reading.Id)],
            $"Read {Quantity.Lift(point.Lift)} again, coming from below.")
        { Lifts = [point.Lift, .. others] };
    }

    /// <summary>Another lift is named beside the likeliest from this chance on.</summary>
    private const double Other = 0.1;

    /// <summary>An end's offset from where the two beside it carry it on, less what may be the port's own.</summary>
    private static double End(double end, double beside, double further)
    {
        var off = end - 2 * beside + further;
        return Math.CopySign(Math.Max(0, Math.Abs(off) - OwnEnd), off);
    }

    /// <summary>The smaller of two offsets that point the same way; nothing where they do not.</summary>
    private static double Nearer(double one, double other) => one * other <= 0 ? 0 : Math.CopySign(Math.Min(Math.Abs(one), Math.Abs(other)), one);

    /// <summary>The lowest or highest lift of a port may leave its sisters by so much of its own: a seat, a fall. Judgement.</summary>
    private const double OwnEnd = 0.10;

    /// <summary>How well the lifts beside a slip lie in line once it is left out, 0 to 1: beside an innocent one the slip stays where it is.</summary>
    private static double Mends(List<LiftPoint> points, int at) => Enumerable.Range(at - 1, 3)
        .Where(i => i != at && i >= 0 && i < points.Count)
        .Select(i => CurveNeighbours.Off(points, i, at)).OfType<double>()
        .Aggregate(1.0, (mends, off) => mends * Density.StudentOverItsMiddle(off, 4 * CurveNeighbours.Usual, CurveNeighbours.Degrees));

    /// <summary>A slip among repeats, unsteady air being the other explanation.</summary>
    private static double BySlip(RepeatsAtLift? repeats) => repeats is null ? 0 : repeats.Slip / (1 + OneOfTwo * repeats.Unsteady);

    /// <summary>How far a lift lies off, and what that speaks for; null where nothing tells.</summary>
    private static (double Off, double Ratio, bool Sisters)? Line(List<LiftPoint> points, int at, FlowAgainstSisters? against)
    {
        if (against is { Sisters: > 1 } && against.PlaceOf(points[at].Lift) is >= 0 and var k)
        {
            // Against its neighbours' own offsets: a slip stands out from both alike. A band that is the port's own, or a corner where it begins, is no slip, and an end
            // may leave by a port's own low or high lift.
            var shape = against.Shape;
            var (off, weight) = k == 0 ? (End(shape[0], shape[1], shape[2]), 6.0)
                : k == shape.Count - 1 ? (End(shape[k], shape[k - 1], shape[k - 2]), 6.0)
                : (Nearer(shape[k] - shape[k - 1], shape[k] - shape[k + 1]), 2.0);
            return (off, RepeatsAtLift.SlipOfThePen.Ratio(off, Math.Sqrt(weight) * against.ShapeFamily[k].Deviation, against.ShapeFamily[k].Degrees), true);
        }

        if (CurveNeighbours.Off(points, at) is not { } alone)
        {
            return null;
        }

        var doubt = LiftDoubt.Of(points[at]);
        return (alone, RepeatsAtLift.SlipOfThePen.Ratio(alone, Math.Sqrt(CurveNeighbours.Usual * CurveNeighbours.Usual + 1.5 * doubt * doubt), CurveNeighbours.Degrees) * Mends(points, at), false);
    }
}
