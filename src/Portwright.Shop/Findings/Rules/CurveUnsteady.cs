using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The readings scatter or sound in a band of lifts: the air there has two minds. The curve's shape is no sign of it.</summary>
public sealed record CurveUnsteady() : FindingRule("curve-unsteady", "The flow is unsteady in a band of lifts")
{
    /// <inheritdoc/>
    public override double? Prior => 0.12;

    /// <summary>A reading of unsteady air is heard to whistle, rattle or flutter this often, one of steady air this often; common practice, no source.</summary>
    public const double HeardUnsteady = 0.6, HeardSteady = 0.04;

    public override Sentence Evidence => $"A sweep with lifts read more than once, best opening and closing; what was heard.";

    public override Sentence Test => $"The repeats of neighbouring lifts scatter several times as much as bench, last digit and a lift set anew make sound ones scatter (the bench card says by how much, the other lifts' repeats correct it), and not as one reading that was a slip would; a sound that is not steady was heard there. A curve's kinks and falls do not count: a port that falls off backs up, which is told by itself.";

    public override Sentence ElseExplains => $"A dial that slips; a valve that rattles on its stem or a spring that sings, not the air; a slip of the pen.";

    public override Sentence LookFirst => $"Repeat those lifts from above and from below: a slip goes, a stall of the air stays and often differs between the two.";

    public override Sentence Cut => $"Nothing on this alone. Find the place first: ball and flag on the short side and behind the guide boss at a lift inside the band.";

    public override Sentence Risk => $"Cutting after a noise. An unsteady port also reads unsteady, so that small gains drown.";

    public override string Source => "Scatter: Fisher's ratio of variances. Listening itself: common practice, no source. How chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OneLift;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Flow is not { } flow)
        {
            yield break;
        }

        var repeats = RepeatsAtLift.Of(flow).ToDictionary(r => r.Lift);
        var points = flow.Curve.Points.Where(p => p.Lift > 0).ToList();
        var signs = points.Select(p => Sign(p, repeats.GetValueOrDefault(p.Lift))).ToList();
        if (!signs.Exists(s => s.Ratio != 1))
        {
            yield break;
        }

        // One band a curve: it is one port that has two minds. Every run of neighbouring lifts may be it.
        List<(int From, int To, double Ratio)> bands = [];
        for (var from = 0; from < signs.Count; from++)
        {
            var ratio = 1.0;
            for (var to = from; to < signs.Count; to++)
            {
                ratio *= signs[to].Ratio;
                bands.Add((from, to, ratio));
            }
        }

        var best = bands.MaxBy(b => b.Ratio);
        var inside = signs[best.From..(best.To + 1)].Where(s => s.Ratio > 1).ToList();
        if (inside.Count == 0)
        {
            yield break;
        }

        var (low, high) = (inside[0].Point.Lift, inside[^1].Point.Lift);
        yield return new Finding(
            this,
            FindingKind.Port,
            $"{(low == high ? (Sentence)$"At {Quantity.Lift(low)}" : $"From {Quantity.Lift(low)} to {Quantity.Lift(high)}")}: {Sentence.Join("; ", inside.SelectMany(Words))}.",
            Court.Anywhere(Prior!.Value, [.. bands.Select(b => b.Ratio)]),
            null,
            null,
            [.. flow.Sweeps.Select(s => s.Sweep.Id)],
            low == high
                ? (Sentence)$"Repeat {Quantity.Lift(low)} three times, coming from above and from below."
                : $"Sweep from {Quantity.Lift(low)} to {Quantity.Lift(high)} in half the steps, up and down.")
        { Lifts = [.. inside.Select(s => s.Point.Lift)], Minutes = low == high ? Minutes : BenchMinutes.OneSweep };
    }

    private static (LiftPoint Point, RepeatsAtLift? Repeats, IReadOnlyList<string> Heard, double Ratio) Sign(LiftPoint point, RepeatsAtLift? repeats)
    {
        string[] sounds = [.. point.Readings.Select(r => r.Reading.Fact.Sound).Where(s => s.Length > 0)];
        string[] heard = [.. sounds.Where(s => s != "steady").Distinct()];
        // Sounds of one lift are one word: who hears a whistle once hears it again.
        var bySound = sounds.Length == 0 ? 1 : heard.Length > 0 ? HeardUnsteady / HeardSteady : (1 - HeardUnsteady) / (1 - HeardSteady);
        // A slip explains the scatter of one lift as well: at even odds it takes its share.
        var byScatter = repeats is null ? 1 : repeats.Unsteady / (1 + SlipOdds * repeats.Slip);
        return (point, repeats, heard, byScatter * bySound);
    }

    /// <summary>Chance that one lift holds a slip, before any reading; judgement.</summary>
    private const double SlipOdds = 0.004;

    private static IEnumerable<Sentence> Words((LiftPoint Point, RepeatsAtLift? Repeats, IReadOnlyList<string> Heard, double Ratio) sign)
    {
        if (sign.Repeats is { Unsteady: > 1 } repeats)
        {
            yield return $"the repeats at {Quantity.Lift(repeats.Lift)} scatter {repeats.Scatter:0.#} times as much as sound ones{(repeats.UpAgainstDown ? ", opening and closing each to itself" : "")}";
        }

        foreach (var sound in sign.Heard)
        {
            yield return $"it {sound} at {Quantity.Lift(sign.Point.Lift)}";
        }
    }
}
