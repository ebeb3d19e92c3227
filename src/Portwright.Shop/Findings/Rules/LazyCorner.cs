using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>Area without air at the floor or in a corner.</summary>
public sealed record LazyCorner() : FindingRule("lazy-floor-or-corner", "The floor or a corner is lazy")
{
    /// <summary>Air under this share of even air's speed counts as lazy; common practice, no source.</summary>
    public const double Slow = 0.75;

    /// <summary>How far a bearing (hours) must be from roof, centre side and cylinder-wall side to count as floor or corner.</summary>
    private const double OffTheSides = 0.75;

    public override Sentence Evidence => $"A ring with readings at the floor and in the corners, or a ball held there with readings without it before and after.";

    public override Sentence Test => $"The probe shows less than three quarters of what even air would show at that depth, or the ball loses less than two thirds of what air moving at that speed should cost. The probability is that at least one of the two is so.";

    public override Sentence ElseExplains => $"The probe not pointing along the air, which leans in a corner; a ball that does not fit the corner and sits off the wall; on the floor of the bend, air torn off.";

    public override Sentence LookFirst => $"A flag in the corner: it hangs where there is no air and leans where the air crosses. A second reading of the probe turned till it reads highest.";

    public override Sentence Cut => $"Nothing comes out here: area without air slows the rest. Leave it, or fill it, and take metal where the air is.";

    public override Sentence Risk => $"Filler that comes loose goes through the engine. A corner filled for one lift may be missed at another.";

    public override string Source => "common practice, no source; losses of a ball: docs/theory/balls.md; even air: docs/theory/rings.md";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var bend = port.InTheBend.ToHashSet();
        foreach (var station in port.Stations)
        {
            var places = LocalAir.Round(station.Ring).Select(a => a.Bearing)
                .Concat(station.Balls.Where(b => b.Response is not null).Select(b => b.Bearing).OfType<double>())
                .Where(IsFloorOrCorner).Distinct()
                .Where(b => !(bend.Contains(station) && TornOff(station, b)))
                .Select(b => At(port, station, b)).OfType<Finding>();
            // One finding a section: where it is surest.
            if (places.MaxBy(f => f.Confidence) is { } finding)
            {
                yield return finding;
            }
        }
    }

    private static bool IsFloorOrCorner(double bearing) =>
        WallState.Apart(bearing, 12) >= OffTheSides && WallState.Apart(bearing, 3) >= OffTheSides && WallState.Apart(bearing, 9) >= OffTheSides;

    /// <summary>On the floor of the bend a flow that rises, or a flag that hangs, is the short side's matter.</summary>
    private static bool TornOff(SurveyedStation station, double bearing) => WallState.Apart(bearing, 6) <= 2
        && (LocalBall.Near(station, 6, 2).Any(b => b.Response.ProbabilityTornOff >= 0.5)
            || station.Flags.Any(f => f.Fact.Steadiness is Steadiness.Hangs or Steadiness.TurnsBack && f.Fact.Bearing is { } h && WallState.Apart(h, 6) <= 2));

    private Finding? At(PortSurvey port, SurveyedStation station, double bearing)
    {
        var air = LocalAir.At(station.Ring, bearing, 0.5);
        var ball = LocalBall.Near(station, bearing, 0.5).MaxBy(b => b.Little);
        if (air is null && ball is null)
        {
            return null;
        }

        var place = Bearings.Words(bearing);
        Sentence[] seen = [.. air is null ? Array.Empty<Sentence>() : [$"the probe shows {air.Words}"], .. ball is null ? Array.Empty<Sentence>() : [ball.Words]];
        return new Finding(
            this,
            FindingKind.Port,
            Sentence.Join("; ", seen).Whole(),
            Confidence.Either(air is null ? 0 : Confidence.Below(air.OverEven, Slow), ball?.Little ?? 0),
            station.Station,
            bearing,
            [.. air?.Behind ?? [], .. ball?.Behind ?? []],
            ball is null ? $"Hold a ball at {station.Letter}, {place}: lazy air takes little notice of it." : air is null ? $"Read the probe at {station.Letter}, {place}." : air.NextReading,
            // Filling takes nothing from the wall: no thin place stops it. It may well bring nothing but speed, and the doubt says so.
            JudgedCut.Of(port, $"Take nothing out at {station.Letter}, {place}; leave it or fill it, and take metal where the air is.", 0.03, 0.03, "lazy place filled", bearing)
                is { } fill ? fill with { ReachesWall = -1 } : null);
    }
}
