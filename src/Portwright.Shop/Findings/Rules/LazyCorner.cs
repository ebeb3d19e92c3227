using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>Area without air at the floor or in a corner.</summary>
public sealed record LazyCorner() : FindingRule("lazy-floor-or-corner", "The floor or a corner is lazy")
{
    /// <inheritdoc/>
    public override double? Prior => FloorAir.LazyPrior;

    /// <summary>How far a bearing (hours) must be from roof, centre side and cylinder-wall side to count as floor or corner.</summary>
    private const double OffTheSides = 0.75;

    public override Sentence Evidence => $"A ring with readings at the floor and in the corners, or a ball held there with readings without it before and after.";

    public override Sentence Test => $"The air there, by probe and ball together, is slower than sound ports show at such a place: than the sister ports read there, or where none was, than even air, which sound places leave by about {SharedFactor.AheadOfTheBend * 100:0} percent ahead of the bend and {SharedFactor.InTheBend * 100:0} in it. What the ball takes is counted against its other places in this port. Both instruments look at the same air: their likelihoods multiply, and where they contradict each other the chance falls.";

    public override Sentence ElseExplains => $"The probe not pointing along the air, which leans in a corner; a ball that does not fit the corner and sits off the wall; on the floor of the bend, air torn off.";

    public override Sentence LookFirst => $"A flag in the corner: it hangs where there is no air and leans where the air crosses. A second reading of the probe turned till it reads highest.";

    public override Sentence Cut => $"Nothing comes out here: area without air slows the rest. Leave it, or fill it.";

    public override Sentence Risk => $"Filler that comes loose goes through the engine. A corner filled for one lift may be missed at another.";

    public override string Source => "common practice, no source; how chances are worked out: docs/theory/judgement.md; losses of a ball: docs/theory/balls.md; even air: docs/theory/rings.md";

    public override double Minutes => BenchMinutes.OnePlace;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var bend = port.InTheBend.Select(s => s.Station.Id).ToHashSet();
        PlaceRead[] places = [.. PlaceRead.AllOf(port).Where(p => IsFloorOrCorner(p.Bearing))];
        return Places.Judged(places, Prior!.Value, p => FloorAir.Lazy(p, bend.Contains(p.Station.Station.Id), places.Length)).Select(j => Found(port, j.Place, j.Chance));
    }

    private static bool IsFloorOrCorner(double bearing) =>
        WallState.Apart(bearing, 12) >= OffTheSides && WallState.Apart(bearing, 3) >= OffTheSides && WallState.Apart(bearing, 9) >= OffTheSides;

    private Finding Found(PortSurvey port, PlaceRead place, double chance) => new(
        this,
        FindingKind.Port,
        place.Seen(),
        chance,
        place.Station.Station,
        place.Bearing,
        place.Behind(),
        place.Surer(port),
        Instead: $"Take nothing out at {place.Station.Letter}, {Bearings.Words(place.Bearing)}; leave it or fill it.")
    {
        Name = FloorAir.IsFloor(place.Bearing) ? "The floor is lazy" : "A corner is lazy",
    };
}
