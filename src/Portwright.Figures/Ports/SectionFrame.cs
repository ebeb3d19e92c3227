using Portwright.Geometry;
using Portwright.Geometry.LongView;
using Portwright.Geometry.Views;
using Portwright.Shop.Survey;

namespace Portwright.Figures;

/// <summary>Where the metal of a section lies on the drawing, as the view shows it.</summary>
public sealed class SectionFrame
{
    private readonly double _scale;
    private readonly Place _middle;
    private readonly PlanePoint _centre;

    internal SectionFrame(Outline outline, View view, Box room)
    {
        (Outline, View) = (outline, view);
        var bounds = outline.Bounds;
        _scale = Math.Min(room.Width / bounds.Width, room.Height / bounds.Height);
        _centre = new((bounds.Left + bounds.Right) / 2, (bounds.Bottom + bounds.Top) / 2);
        _middle = room.Centre;
        Wall = [.. outline.Points.Select(At)];
    }

    public Outline Outline { get; }

    public View View { get; }

    /// <summary>The wall on the drawing.</summary>
    public IReadOnlyList<Place> Wall { get; }

    /// <summary>A point of the metal (m) on the drawing.</summary>
    public Place At(PlanePoint metal)
    {
        var screen = View.ToScreen(metal - _centre);
        return new(_middle.X + screen.X * _scale, _middle.Y - screen.Y * _scale);
    }

    /// <summary>The point of the metal (m) under a place of the drawing.</summary>
    public PlanePoint Metal(Place place) =>
        View.ToRecord(new PlanePoint((place.X - _middle.X) / _scale, (_middle.Y - place.Y) / _scale)) + _centre;

    internal Place WallAt(double bearing) => At(Outline.WallAt(bearing));

    /// <summary>Out from the middle towards a recorded bearing, on the drawing, length 1.</summary>
    internal Place Outward(double bearing)
    {
        var screen = View.ToScreen(Bearing.Direction(bearing));
        return new(screen.X, -screen.Y);
    }

    /// <summary>A place so many pixels out of the wall at a bearing; in the opening where negative.</summary>
    internal Place OffWall(double bearing, double px)
    {
        var (wall, out1) = (WallAt(bearing), Outward(bearing));
        return new(wall.X + px * out1.X, wall.Y + px * out1.Y);
    }

    internal double Px(double metres) => metres * _scale;

    /// <summary>The section's own outline, else the usual one at its place along the port.</summary>
    internal static Outline OutlineOf(PortSurvey survey, SurveyedStation station)
    {
        if (station.Section is { } section) return section.Outline;
        var port = survey.Sheet.Port.Fact;
        return GenericPort.SectionAt(
            UsualShape.Side(port),
            UsualShape.ValveDiameter(port),
            Math.Clamp(station.Distance / survey.Centreline.Length, 0, 1)).Outline();
    }
}
