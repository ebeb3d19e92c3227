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

    public override Sentence Evidence => $"A sweep of five lifts or more, a lift read more than once, or several sweeps.";

    public override Sentence Test => $"One lift lies off its neighbours by more than its sisters' curves do there, or, without sisters, by more than curves of their own kind do ({CurveNeighbours.Usual * 100:0.0} percent); or one of the repeats of a lift, or one of several sweeps, lies off the others as a slip does while those lie in line.";

    public override Sentence ElseExplains => $"Air that is unsteady at that lift; a change of range there; a corner of the curve, where no sister shows it.";

    public override Sentence LookFirst => $"That lift again.";

    public override Sentence Cut => $"Nothing on this reading.";

    public override Sentence Risk => $"A gain or a loss at one lift that never was, and a wrong mean.";

    public override string Source => "common practice, no source; how chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OneReading;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Flow is not { } flow)
        {
            yield break;
        }

        var looked = flow.Sweeps.SelectMany(sweep => Looked(port, sweep, [.. flow.Sweeps.Where(s => s != sweep).Select(s => s.Curve)])).ToList();
        if (looked.Count == 0)
        {
            yield break;
        }

        double[] ratios = [.. looked.Select(l => l.Ratio)];
        var chances = Court.AtOneOf(Prior!.Value, ratios);
        var best = Enumerable.Range(0, ratios.Length).MaxBy(i => ratios[i]);
        if (ratios[best] <= 1)
        {
            yield break;
        }

        // One slip a sweep is the usual slip: which of two neighbours it is may stay open while that there is one is sure.
        var (point, _, said, readings) = looked[best];
        double[] others = [.. looked.Where((l, i) => i != best && chances[i] > Other && !LiftGroups.Same(l.Point.Lift, point.Lift)).Select(l => l.Point.Lift).Distinct()];
        yield return new Finding(
            this,
            FindingKind.Measurement,
            others.Length == 0 ? (Sentence)$"{said}." : $"{said}, or the one at {Sentence.Join(" or ", others.Select(o => (Sentence)$"{Quantity.Lift(o)}"))} does.",
            Court.Anywhere(Prior.Value, ratios),
            null,
            null,
            [.. readings.Select(r => r.Reading.Id)],
            $"Read {Quantity.Lift(point.Lift)} again, coming from below.")
        { Lifts = [point.Lift, .. others] };
    }

    /// <summary>Another lift is named beside the likeliest from this chance on.</summary>
    private const double Other = 0.1;

    private static IEnumerable<Suspect> Looked(PortSurvey port, ReducedSweep sweep, IReadOnlyList<FlowCurve> others)
    {
        var points = sweep.Curve.Flowing.ToList();
        var against = FlowAgainstSisters.OfSweep(port, sweep);
        var repeats = RepeatsAtLift.Of(sweep).ToDictionary(r => r.Lift);
        var card = sweep.Bench.Fact.Doubt.RepeatScatter;
        var own = AgainstOwnSweeps.Of(points, card, others);
        double[] unsteady = [.. points.Select((p, i) => (repeats.GetValueOrDefault(p.Lift)?.Unsteady ?? 1) * (own[i]?.Unsteady ?? 1))];
        for (var i = 0; i < points.Count; i++)
        {
            var line = LiftInLine.Of(points, i, against, card);
            var odds = UnsteadyOdds(unsteady, i);
            Suspect?[] ways = [ByLine(points[i], line), ByRepeats(points[i], line, repeats.GetValueOrDefault(points[i].Lift), odds), ByOwnSweeps(points[i], line, own[i], odds)];
            if (ways.OfType<Suspect>().MaxBy(w => w.Ratio) is { } likeliest)
            {
                yield return likeliest;
            }
        }
    }

    /// <summary>Odds before this lift's readings that it lies in a band of unsteady air: any band that holds it, by what repeats and sweeps say of its other lifts.</summary>
    private static double UnsteadyOdds(double[] unsteady, int at)
    {
        double Reach(IEnumerable<int> outward)
        {
            var (sum, product) = (1.0, 1.0);
            foreach (var i in outward) sum += product *= unsteady[i];
            return sum;
        }

        var n = unsteady.Length;
        return new CurveUnsteady().Prior!.Value / (n * (n + 1) / 2.0) * Reach(Enumerable.Range(0, at).Reverse()) * Reach(Enumerable.Range(at + 1, n - at - 1));
    }

    /// <summary>The whole lift lies off.</summary>
    private static Suspect? ByLine(LiftPoint point, LiftInLine? line) => line is null ? null : new Suspect(
        point, line.Slip,
        $"The flow at {Quantity.Lift(point.Lift)} lies {Quantity.Share(Math.Abs(Math.Exp(line.Left) - 1)).About(2)} {(line.Left < 0 ? "under" : "over")} where {(line.Sisters ? "its sisters' curves" : "its neighbours")} put it",
        point.Readings);

    /// <summary>A slip among repeats, unsteady air being the other explanation: a slip leaves the others where the line is, unsteady air none of them.</summary>
    private static Suspect? ByRepeats(LiftPoint point, LiftInLine? line, RepeatsAtLift? repeats, double odds)
    {
        if (repeats is null)
        {
            return null;
        }

        var mean = line?.Likely(0) ?? 1;
        var (which, left) = repeats.Suspects.Select(s => (s.Reading, Left: line?.Likely(s.Others - repeats.Mean) ?? 1)).MaxBy(s => s.Left);
        var slip = repeats.Slip * repeats.Suspects.Average(s => line?.Likely(s.Others - repeats.Mean) ?? 1) / mean;
        var unsteady = repeats.Unsteady * (line?.Likely(0, repeats.MeanDoubt) ?? 1) / mean;
        return new Suspect(
            point, slip / (1 + odds * unsteady), $"{which.Reading.Fact.Reading.Text} at {Quantity.Lift(point.Lift)} lies far from the other readings of that lift", [which]);
    }

    /// <summary>The same among the sweeps of one port.</summary>
    private static Suspect? ByOwnSweeps(LiftPoint point, LiftInLine? line, AgainstOwnSweeps? own, double odds)
    {
        if (own is null)
        {
            return null;
        }

        // Two sweeps do not say which of them it is.
        var slip = own.Slip * (line is null ? 1 : line.Likely(-own.Off) / line.Likely(0)) / (own.Others == 1 ? 2 : 1);
        return new Suspect(
            point, slip / (1 + odds * own.Unsteady),
            $"The flow at {Quantity.Lift(point.Lift)} lies {Quantity.Share(Math.Abs(Math.Exp(own.Off) - 1)).About(2)} {(own.Off < 0 ? "under" : "over")} where the port's other sweeps put it", point.Readings);
    }

    private sealed record Suspect(LiftPoint Point, double Ratio, Sentence Said, IReadOnlyList<ReducedReading> Readings);
}
