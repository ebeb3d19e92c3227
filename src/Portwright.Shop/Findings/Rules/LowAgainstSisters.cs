using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>One port of the set flows less than the others over the whole lift.</summary>
public sealed record LowAgainstSisters() : FindingRule("low-against-sisters", "The port is low against its sisters")
{
    /// <summary>A low port flows this much less, as a logarithm; judgement.</summary>
    public static readonly Step Low = new(0.03, 1.7, StepWay.Down);

    /// <summary>Ports within this of each other are a matched set, as a logarithm; common practice, no source.</summary>
    public const double Matched = 0.01;

    /// <inheritdoc/>
    public override double? Prior => 0.08;

    public override Sentence Evidence => $"The port and two sisters or more swept alike over the same lifts, all as received or all cut.";

    public override Sentence Test => $"The middle of its flow over its sisters' is truly lower by more than the {Matched * 100:0} percent within which a set is matched: by a fault of its own, or as castings that differ so much among themselves do (usual ones by {FlowAgainstSisters.UsualLevel * 100:0.0} percent). What its own set-up may have taken is taken off.";

    public override Sentence ElseExplains => $"A set-up that sat badly or leaked; a lift zeroed differently; a sister that is high.";

    public override Sentence LookFirst => $"Take the head off, put it back and read two lifts: a bad set-up goes, a low port stays.";

    public override Sentence Cut => $"What its own findings say, sections against its sisters' first.";

    public override Sentence Risk => $"A cylinder that makes less than the others runs at another mixture.";

    public override string Source => "Partial pooling: docs/theory/judgement.md; limits: common practice, no source";

    /// <summary>A difference that no bench reads is none.</summary>
    private static Sentence Against(double off) => Math.Abs(off) < 0.0005 ? (Sentence)$"as much as"
        : $"{Quantity.Share(Math.Abs(Math.Exp(off) - 1)).About(2)} {(off < 0 ? "less" : "more")} than";

    public override double Minutes => BenchMinutes.OneSetUp;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (FlowAgainstSisters.Of(port) is not { Sisters: > 1 } against)
        {
            yield break;
        }

        var off = against.Level - against.LevelFamily.Mean;
        yield return new Finding(
            this,
            FindingKind.Port,
            $"Over the whole lift it flows {Against(off)} the middle of its {FormattableString.Invariant($"{against.Sisters}")} sisters; a sound one would lie within {Quantity.Share(2 * against.LevelFamily.Deviation).About(2)} of them.",
            against.LevelFamily.Below(against.Level, against.LevelDoubt, Matched, Prior!.Value, Low),
            null,
            null,
            [.. port.Sheet.Flow!.Sweeps.Select(s => s.Sweep.Id)],
            $"Sweep it once more in a set-up of its own; two lifts are enough.");
    }
}
