using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Rings;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>A ring whose map carries another flow than the bench measured.</summary>
public sealed record ClosureFails() : FindingRule("closure-fails", "The ring does not close")
{
    /// <summary>Rings that miss by about the same share share a cause: within this of each other; common practice, no source.</summary>
    public const double Alike = 0.04;

    /// <summary>A ring that does not close misses by this share; judgement.</summary>
    public static readonly Step Misses = new(0.13, 1.6, StepWay.EitherWay);

    /// <inheritdoc/>
    public override double? Prior => 0.12;

    public override Sentence Evidence => $"A ring, its section, and the flow of the bench meanwhile.";

    public override Sentence Test => $"The map's mean times area and density is held against the bench's flow: it misses by more than the doubt of both, as a probe, a section or a meter that is wrong would make it. With several rings the port's chance is shared among them. Where sister ports were read at the same station a ring is held against theirs, its section with it: probe and meter are the same in all.";

    public override Sentence ElseExplains => $"A section measured wrong; a probe factor never checked; a lift or test pressure other than written down; a probe not along the air; a leak between ring and meter.";

    public override Sentence LookFirst => $"Whether the other rings miss alike: then it is the probe or the bench. One ring alone: its section or its readings.";

    public override Sentence Cut => $"Nothing: this says something about the measurement, not about the port.";

    public override Sentence Risk => $"Cutting by speeds that are off moves metal where none should go.";

    public override string Source => "Closure of a traverse against a meter: ISO 3966:2008; doubt of the map: docs/theory/rings.md; how chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OneSection + BenchMinutes.OnePlace;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var read = port.Stations.SelectMany(s => s.Rings.Where(r => r.Closure is not null).Select(r => (Station: s, Ring: r))).ToList();
        var rings = read.Select(r => r.Ring).ToList();
        var told = read.Select(r => RingAgainstSisters.Of(port, r.Station, r.Ring, Misses)).ToList();
        double[] alone = [.. rings.Select(r => Misses.Ratio(r.Closure!.Relative, r.Closure.RelativeStandard, r.Closure.Difference.EffectiveDegreesOfFreedom))];
        double[] ratios = [.. told.Zip(alone, (t, a) => t?.Own ?? a)];
        // A probe that is off makes every ring miss: then each is told, not one of them.
        var anywhere = Court.Anywhere(Prior!.Value, alone);
        foreach (var (ring, against, own) in rings.Zip(told, Court.AtOneOf(Prior.Value, ratios)))
        {
            var closure = ring.Closure!;
            var others = rings.Where(r => r != ring).Select(r => r.Closure!.Relative).Concat(against?.Misses.Select(m => Math.Exp(m) - 1) ?? []).ToList();
            var alike = others.Count > 0 && others.TrueForAll(o => Math.Abs(o - closure.Relative) < Alike);
            var chance = against is null ? (alike ? anywhere : own) : WithSisters(against, ratios.Sum() - against.Own, rings.Count);
            yield return new Finding(
                this,
                FindingKind.Measurement,
                $"The map carries {Quantity.Share(Math.Abs(closure.Relative))} {(closure.Relative > 0 ? "more" : "less")} than the bench measured; their doubt allows {Quantity.Share(closure.RelativeExpanded)}. {(Math.Abs(closure.Relative) <= closure.RelativeExpanded ? "They agree within it." : Suggests(ring, closure.Relative > 0, alike, others.Count))}",
                chance,
                ring.Station,
                null,
                [.. ring.Readings.Select(r => r.Reading.Id), ring.Ring.Id, ring.Section.Section.Id],
                alike
                    ? (Sentence)$"Read the probe in the middle of a straight pipe of known size on this bench: it shows the probe's factor."
                    : $"Measure the section at {ring.Station.Fact.Letter} again, then read the ring's middle once more with the lift set anew.")
            { Minutes = alike ? BenchMinutes.OneSetUp : Minutes };
        }
    }

    /// <summary>All rings miss, or this one by itself; that another ring of the port, or the only sister's, is the one stands against it.</summary>
    private double WithSisters(RingAgainstSisters against, double others, int rings)
    {
        // As likely the one as the other before anything is read.
        var (prior, each) = (Prior!.Value, Prior.Value / rings);
        var (said, instead) = (prior * against.All + each * against.Own, prior * against.Sisters + each * others);
        return Math.Min(Court.Surest, said / (1 - 2 * prior + said + instead));
    }

    private static string Suggests(ReducedRing ring, bool more, bool alike, int others) => alike
        ? $"Every ring misses alike: the probe reads {(more ? "high" : "low")}, or the meter {(more ? "low" : "high")}."
        : others > 0
            ? $"The other rings do not miss alike: section {ring.Station.Fact.Letter} is {(more ? "smaller" : "larger")} than written down, or its speeds are {(more ? "high" : "low")}."
            : $"The section is {(more ? "smaller" : "larger")} than written down, the probe reads {(more ? "high" : "low")}, or the meter {(more ? "low" : "high")}: a second ring tells which.";
}
