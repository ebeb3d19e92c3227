using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The burette and the sections do not agree on the port's volume.</summary>
public sealed record VolumeDisagrees() : FindingRule("volume-disagrees", "Burette and sections disagree")
{
    /// <summary>Burette and sections that disagree differ by this share of the volume; judgement.</summary>
    public static readonly Step Apart = new(0.06, 1.6, StepWay.EitherWay);

    /// <inheritdoc/>
    public override double? Prior => 0.06;

    public override Sentence Evidence => $"Sections near flange and seat and between, and the port's cc by burette.";

    public override Sentence Test => $"Volume from the sections (frustums between stations) against the burette: the gap is more than the doubt of both makes likely, as a section or a filling that is wrong would make it.";

    public override Sentence ElseExplains => $"A bubble under the plate, a valve that weeps, liquid warmer than written down, an adapter or plate counted in; distances not along the centreline.";

    public override Sentence LookFirst => $"Fill it again, with the plate tilted for the last bubble, and wait a minute for the level at the seat.";

    public override Sentence Cut => $"Nothing: find out first which of the two is wrong.";

    public override Sentence Risk => $"Areas that are off put the smallest section, the speeds and every closure off with them.";

    public override string Source => "Volume by frustums round a bend: the second theorem of Pappus and Guldin; the doubt of a burette: common practice, no source; how chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OneSection;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Volume is not { Standard: > 0 } gap)
        {
            yield break;
        }

        var stations = port.Stations.Where(s => s.Section is not null).ToList();
        var (from, to) = stations.Zip(stations.Skip(1)).MaxBy(p => p.Second.Distance - p.First.Distance);
        var widest = $"between {from.Letter} and {to.Letter}";
        yield return new Finding(
            this,
            FindingKind.Measurement,
            $"The burette holds {Quantity.Volume(gap.Measured)}, the sections make {Quantity.Volume(gap.FromSections.Volume)}, their doubt allows {Quantity.Volume(2 * gap.Standard)}. {(Math.Abs(gap.Difference) <= 2 * gap.Standard ? "They agree within it."
                    : gap.Difference > 0
                    ? $"The port holds more than its sections show: a pocket or a bulge {widest} or beside the guide was not measured, or the valve weeps."
                    : "The port holds less than its sections show: a boss, a step or a sharper corner was not measured, air stayed under the plate, or the stations lie closer than written down.")}",
            Court.Chance(new Explanation(Prior!.Value, Apart.Ratio(gap.Difference / gap.Measured, gap.Standard / gap.Measured, double.PositiveInfinity))),
            null,
            null,
            [.. stations.Select(s => s.Section!.Section.Id)],
            $"One more section {widest}, the widest gap ({Quantity.Length(to.Distance - from.Distance)}).");
    }
}
