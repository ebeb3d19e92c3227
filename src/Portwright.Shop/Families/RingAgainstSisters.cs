using Portwright.Physics.Rings;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Judgement;
using Portwright.Shop.Rings;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Families;

/// <summary>
/// By how much a ring misses against the same ring of the sisters, and its section against theirs. Probe, meter and the way a map is drawn through few places are the same in all; a
/// section written down wrong shifts both its area and its ring by one share.
/// </summary>
/// <param name="Own">Likelihood ratio of this ring missing by itself.</param>
/// <param name="All">Of all rings missing, as a probe or a meter makes them.</param>
/// <param name="Sisters">Of the only sister's ring missing instead; none with several, of whom the middle counts.</param>
/// <param name="Misses">Logarithms of the sisters' maps over the bench's flow.</param>
public sealed record RingAgainstSisters(double Own, double All, double Sisters, IReadOnlyList<double> Misses)
{
    /// <summary>Sound sisters' rings miss alike within this, standard deviation of the logarithm: each casting's own air between the places read, the section, the readings; judgement.</summary>
    public const double BetweenSisters = 0.025;

    /// <summary>How well that is known, in degrees of freedom; judgement.</summary>
    public const double Degrees = 8;

    /// <summary>A section written down wrong, or a ring read wrong, is off by this much: a digit of one width; judgement.</summary>
    public static readonly Step OffByItself = new(0.10, 1.9, StepWay.EitherWay);

    /// <summary>Chance that a section truly differs from its sisters', which its area alone does not tell from one written down wrong; judgement.</summary>
    private const double TrulyOther = 0.05;

    /// <summary>Null where no sister's ring at the station was held against the bench.</summary>
    /// <param name="misses">How far all rings miss where probe or meter is wrong, as a share.</param>
    public static RingAgainstSisters? Of(PortSurvey port, SurveyedStation station, ReducedRing ring, Step misses)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(ring);
        ArgumentNullException.ThrowIfNull(misses);
        if (ring.Closure is not { } closure)
        {
            return null;
        }

        List<SurveyedStation> same = [.. port.Sisters.Select(s => PlaceRead.SameStation(s, station)).OfType<SurveyedStation>()];
        List<MapClosure> theirs = [.. same.Select(s => s.Rings.LastOrDefault(r => r.Closure is not null)?.Closure).OfType<MapClosure>()];
        double[] sisters = [.. theirs.Select(Missed)];
        if (sisters.Length == 0)
        {
            return null;
        }

        var own = Missed(closure);
        var family = Family.Sharing(sisters, 0, closure.RelativeStandard, BetweenSisters, Degrees);
        var (byRing, off) = (family.BySize(own, OffByItself), Areas(station, same) is { } areas ? areas.Family.BySize(areas.Own, OffByItself) : null);
        // Written down wrong, area and ring move together; truly other, the area alone.
        var section = off is null ? byRing.Average() : byRing.Zip(off, (r, a) => r * a).Average();
        var other = off?.Average() ?? 0;
        // What the rings share stays in the mean, what each has by itself averages out. The one that misses most may miss by itself: where all miss the others say so without it.
        var together = Estimate.Mean([.. theirs.Append(closure).OrderBy(c => Math.Abs(c.Relative)).SkipLast(1).Select(c => c.Difference.Scale(1 / c.BenchFlow.Value))]);
        return new RingAgainstSisters(
            (section + byRing.Average()) / 2 / (1 + TrulyOther * other),
            misses.Ratio(together.Value, together.StandardUncertainty, together.EffectiveDegreesOfFreedom),
            sisters.Length > 1 ? 0 : Family.Sharing([own], 0, closure.RelativeStandard, BetweenSisters, Degrees).Ratio(sisters[0], OffByItself),
            sisters);
    }

    /// <summary>Logarithm of the map's flow over the bench's.</summary>
    private static double Missed(MapClosure closure) => Math.Log(Math.Max(0.01, 1 + closure.Relative));

    private static (Family Family, double Own)? Areas(SurveyedStation station, List<SurveyedStation> same)
    {
        double[] sisters = [.. same.Select(s => s.Section?.WithinWall.Value).OfType<double>().Where(a => a > 0).Select(a => Math.Log(a))];
        return sisters.Length > 1 && station.Section is { Area.Value: > 0 } section ? (SectionFamily.Of(section, sisters), Math.Log(section.WithinWall.Value)) : null;
    }
}
