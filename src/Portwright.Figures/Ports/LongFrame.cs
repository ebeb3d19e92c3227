using Portwright.Geometry;
using Portwright.Geometry.LongView;
using Portwright.Geometry.Views;
using Portwright.Shop.Survey;

namespace Portwright.Figures;

/// <summary>
/// Where the metal of the long view lies on the drawing: as large as the width allows, seat and valve at its end, a lettered circle off the
/// roof at every station. Seen from the flange the flange is left, from the chamber right; with the head inverted the floor is up.
/// </summary>
internal sealed class LongFrame
{
    private const double Apart = 46;

    private readonly double _across, _up, _scale;
    private readonly Place _origin;

    public LongFrame(PortSurvey survey, View view, FigureSize size)
    {
        (Survey, Size) = (survey, size);
        _across = view.SeenFrom == SeenFrom.Flange ? 1 : -1;
        _up = view.Lying == Lying.Upright ? -1 : 1;
        Length = survey.Centreline.Length;
        ValveRadius = UsualShape.ValveDiameter(survey.Sheet.Port.Fact) / 2;
        SeatRadius = Math.Max(ValveRadius * 1.03, Math.Max(survey.Profile.RoofAt(Length), survey.Profile.FloorAt(Length)));
        SeatDepth = Math.Clamp(SeatRadius - (survey.Profile.RoofAt(Length) + survey.Profile.FloorAt(Length)) / 2, 0.06 * ValveRadius, 0.25 * ValveRadius);
        Stations = [.. survey.Stations.Where(s => s.Distance >= 0 && s.Distance <= Length)];

        // The circles keep their size while the port grows: a few rounds find the scale that fills the width.
        _scale = size.Width / Length / 1.3;
        Box room;
        for (var round = 0; ; round++)
        {
            Letters = PlaceLetters();
            room = Around(Outmost());
            if (round == 12) break;
            _scale *= Math.Pow((size.Width - 2) / room.Width, 1.3);
        }

        while (room.Width > size.Width - 2 || room.Height > size.Height)
        {
            _scale *= 0.99;
            Letters = PlaceLetters();
            room = Around(Outmost());
        }

        _origin = new((size.Width - room.Width) / 2 - room.X, 1 - room.Y);
        Letters = PlaceLetters();
        Room = room with { X = room.X + _origin.X, Y = room.Y + _origin.Y };
    }

    public PortSurvey Survey { get; }

    public FigureSize Size { get; }

    /// <summary>m.</summary>
    public double Length { get; }

    public double ValveRadius { get; }

    /// <summary>Outer radius of the seat's chamfer, m.</summary>
    public double SeatRadius { get; }

    /// <summary>From the end of the centreline to the chamber's face, m.</summary>
    public double SeatDepth { get; }

    /// <summary>How far the valve is drawn open, m.</summary>
    public double Lift => 0.3 * ValveRadius;

    public IReadOnlyList<SurveyedStation> Stations { get; }

    /// <summary>Middles of the lettered circles, in the order of <see cref="Stations"/>.</summary>
    public IReadOnlyList<Place> Letters { get; private set; }

    public double LetterRadius => 0.95 * Size.Text;

    /// <summary>All that the long view takes.</summary>
    public Box Room { get; }

    public Place At(PlanePoint p) => new(_origin.X + _across * p.X * _scale, _origin.Y + _up * p.Y * _scale);

    /// <summary>A place by its distance along the centreline and height off it, m.</summary>
    public Place At(double distance, double height) => At(Survey.Centreline.PointAt(distance, height));

    /// <summary>A place about the valve: along its axis from the end of the centreline, and off it towards the roof, m.</summary>
    public Place AtValve(double along, double off) => At(ValvePoint(along, off));

    public PlanePoint ValvePoint(double along, double off) =>
        Survey.Centreline.PointAt(Length) + Survey.Centreline.DirectionAt(Length) * along + Survey.Centreline.TowardsRoofAt(Length) * off;

    /// <summary>The direction from the centreline to the roof on the drawing, length 1.</summary>
    public Place RoofwardAt(double distance) => Turned(Survey.Centreline.TowardsRoofAt(distance));

    /// <summary>The way of the port from flange to seat on the drawing, length 1.</summary>
    public Place AlongAt(double distance) => Turned(Survey.Centreline.DirectionAt(distance));

    /// <summary>The valve's axis on the drawing, towards the chamber, length 1.</summary>
    public Place Axis => Turned(Survey.Centreline.DirectionAt(Length));

    /// <summary>Pixels of a length (m).</summary>
    public double Px(double metres) => metres * _scale;

    public double Metres(double px) => px / _scale;

    private Place Turned(PlanePoint d) => new(_across * d.X, _up * d.Y);

    private List<Place> PlaceLetters()
    {
        var placed = new List<Place>();
        foreach (var station in Stations)
        {
            var roof = At(station.Distance, Survey.Profile.RoofAt(station.Distance));
            var away = RoofwardAt(station.Distance);
            var off = 1.9 * Size.Text;
            Place at;
            do
            {
                at = new(roof.X + away.X * off, roof.Y + away.Y * off);
                off += 6;
            }
            while (placed.Exists(p => Math.Max(Math.Abs(p.X - at.X), Math.Abs(p.Y - at.Y)) < Apart) && off < 40 * Size.Text);
            placed.Add(at);
        }

        return placed;
    }

    private IEnumerable<Place> Outmost()
    {
        var margin = 2.6 * Size.Text;
        // On a phone the words about the port go into the metal under its floor.
        var under = Size.Width < 560 ? 8.5 * Size.Text : margin;
        foreach (var surface in (Surface[])[Surface.Roof, Surface.Floor])
        {
            foreach (var point in Survey.Profile.LineOf(surface, 33))
            {
                var away = RoofwardAt(point.Distance);
                var at = At(point.Point);
                var sign = surface == Surface.Roof ? 1 : -1;
                yield return at;
                var deep = surface == Surface.Roof ? margin : point.Distance < Length / 2 ? under : 0;
                var metal = new Place(at.X + sign * away.X * deep, at.Y + sign * away.Y * deep);
                // Metal does not reach past the flange's face.
                yield return new(at.X, metal.Y);
                if ((metal.X - At(new PlanePoint(0, 0)).X) * _across > 0) yield return metal;
            }
        }

        foreach (var letter in Letters)
        {
            yield return new(letter.X - 23, letter.Y - 23);
            yield return new(letter.X + 23, letter.Y + 23);
        }

        var face = SeatDepth + Lift + 0.5 * ValveRadius;
        yield return AtValve(face, ValveRadius * 1.1);
        yield return AtValve(face, -ValveRadius * 1.1);
        yield return AtValve(SeatDepth, SeatRadius + Metres(margin));
        yield return AtValve(SeatDepth, -SeatRadius - Metres(margin));
    }

    private static Box Around(IEnumerable<Place> places)
    {
        var all = places.ToList();
        var (left, top) = (all.Min(p => p.X), all.Min(p => p.Y));
        return new Box(left - 2, top - 2, all.Max(p => p.X) - left + 4, all.Max(p => p.Y) - top + 4);
    }
}
