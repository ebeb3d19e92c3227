using Portwright.Judging.Chance;
using Portwright.Shop.Record;

namespace Portwright.Judging.Ports;

/// <summary>What all ports of one kind share by design and pattern: valve, law of flow, outlines, the bend of the air.</summary>
public sealed class HeadDesign
{
    /// <summary>The bend makes roof or floor faster by up to so much from middle to wall, the one side over the other likewise.</summary>
    public const double SteepestTilt = 0.25, SteepestSide = 0.10;

    private readonly Draw _draw;
    private readonly double _levelScatter;
    private readonly double _ownAir;
    private readonly Layer _layer;
    private readonly double _tilt;
    private readonly double _side;
    private readonly (StationRole Role, double Along, RoundedSection Section)[] _places;

    /// <param name="head">Diameter of the valve, m.</param>
    /// <param name="most">Effective area at the highest lift, m2.</param>
    /// <param name="top">Highest lift tested, m.</param>
    /// <param name="pinch">Area of the narrowest section, m2.</param>
    public HeadDesign(PortKind kind, double head, double most, double top, double pinch, Draw draw)
    {
        (_draw, Kind, Top) = (draw, kind, top);
        // Seats are cut at 45 degrees, now and then at 30; a throat of 85 to 92 percent of the valve is what a sound head has (common practice, no source).
        Valve = new MadeValve(
            head, (draw.Chance(0.85) ? 45 : 30) * Math.PI / 180, draw.Between(0.0010, 0.0018), head * draw.Between(0.858, 0.912), draw.Of(0.0055, 0.006, 0.007, 0.008, 0.00874));
        Law = FlowLaws.Drawn(new FlowDesign(head, top, most, draw.Between(0.50, 0.59)), draw);
        _levelScatter = draw.Between(0.003, 0.015);
        _ownAir = draw.Between(0.02, 0.05);
        _layer = new Layer(draw.Chance(0.3) ? null : draw.Between(6, 10));
        _tilt = draw.Between(-SteepestTilt, SteepestTilt);
        _side = draw.Between(-SteepestSide, SteepestSide);
        Length = head * (kind == PortKind.Intake ? draw.Between(2.2, 3.0) : draw.Between(1.7, 2.2));
        Turn = draw.Between(45, 80) * Math.PI / 180;
        _places = Outlines(pinch);
    }

    public PortKind Kind { get; }

    public double Top { get; }

    public MadeValve Valve { get; }

    public FlowLaw Law { get; }

    public double Length { get; }

    public double Turn { get; }

    /// <summary>One casting of it.</summary>
    public MadePort Cast(int head, int cylinder, bool mirrored)
    {
        var own = Valve with { Throat = Valve.Throat * (1 + _draw.Normal(0.0012)), SeatWidth = Valve.SeatWidth + _draw.Normal(0.00004) };
        var stations = _places.Select((p, i) =>
        {
            // A core of sand shifts: sections of one pattern differ by half a percent and less in area.
            var section = p.Role == StationRole.Throat ? RoundedSection.Round(own.Throat) : p.Section.Sized(_draw.Factor(0.004));
            // The bend is felt downstream of it; ahead of it a third.
            var bent = p.Along < 0.5 ? 0.35 : 1;
            return new MadeStation(((char)('A' + i)).ToString(), p.Role, p.Along, new SpeedField(section, _layer, _tilt, _side, bent, _ownAir, _draw));
        }).ToList();
        return new MadePort
        {
            Kind = Kind,
            Head = head,
            Cylinder = cylinder,
            Mirrored = mirrored,
            Valve = own,
            Law = Law,
            Top = Top,
            Length = Length,
            Turn = Turn,
            Stations = stations,
            Level = _draw.Factor(_levelScatter),
            Lean = _draw.Normal(0.4 * _levelScatter),
        };
    }

    private (StationRole, double, RoundedSection)[] Outlines(double pinch)
    {
        RoundedSection Of(double area, double slim, double round)
        {
            // Area = w h - (4 - pi) r^2 with h = slim w and r a share of half the shorter side.
            var r = round * Math.Min(1, slim) / 2;
            var w = Math.Sqrt(area / (slim - (4 - Math.PI) * r * r));
            return new RoundedSection(w, slim * w, r * w);
        }

        var throat = Math.PI / 4 * Valve.Throat * Valve.Throat;
        var bowl = throat * _draw.Between(1.02, 1.12);
        return Kind == PortKind.Intake
            ?
            [
                (StationRole.Flange, 0, Of(pinch * _draw.Between(1.08, 1.25), _draw.Between(1.3, 1.8), _draw.Between(0.3, 0.6))),
                (StationRole.Pinch, _draw.Between(0.27, 0.36), Of(pinch, _draw.Between(1.4, 1.9), _draw.Between(0.35, 0.7))),
                (StationRole.ShortSide, _draw.Between(0.60, 0.68), Of(pinch * _draw.Between(1.05, 1.15), _draw.Between(1.0, 1.3), _draw.Between(0.5, 0.9))),
                (StationRole.Bowl, _draw.Between(0.80, 0.86), Of(bowl, 1, 1)),
                (StationRole.Throat, _draw.Between(0.94, 0.96), RoundedSection.Round(Valve.Throat)),
            ]
            :
            [
                (StationRole.Flange, 0, Of(pinch * _draw.Between(1.10, 1.25), _draw.Between(0.9, 1.2), _draw.Between(0.5, 0.9))),
                (StationRole.Pinch, _draw.Between(0.32, 0.40), Of(pinch, _draw.Between(1.0, 1.3), _draw.Between(0.5, 0.9))),
                (StationRole.ShortSide, _draw.Between(0.60, 0.68), Of(pinch * _draw.Between(1.02, 1.10), _draw.Between(0.95, 1.2), _draw.Between(0.6, 1.0))),
                (StationRole.Bowl, _draw.Between(0.80, 0.86), Of(bowl, 1, 1)),
                (StationRole.Throat, _draw.Between(0.93, 0.95), RoundedSection.Round(Valve.Throat)),
            ];
    }
}
