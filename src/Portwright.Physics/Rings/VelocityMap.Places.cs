using Portwright.Geometry;

namespace Portwright.Physics.Rings;

public sealed partial class VelocityMap
{
    /// <summary>Nearer to the wall than this share of the deepest distance all air is slow: no place for the laziest.</summary>
    public const double WallShare = 0.2;

    /// <summary>The place of the highest reading: the map never goes past it.</summary>
    public MapPlace Fastest
    {
        get
        {
            var reading = Readings.MaxBy(r => r.Speed)!;
            return PlaceOf(reading.Place, At(reading.Place));
        }
    }

    /// <summary>The slowest place off the wall: at least <see cref="WallShare"/> of the deepest distance from it.</summary>
    public MapPlace Laziest
    {
        get
        {
            var least = -1;
            for (var c = 0; c < speedsOfCells.Length; c++)
            {
                if (cells.Distance[c] >= WallShare * cells.Deepest && (least < 0 || speedsOfCells[c] < speedsOfCells[least])) least = c;
            }
            var place = new PlanePoint(cells.X[least], cells.Y[least]);
            return PlaceOf(place, At(place));
        }
    }

    private MapPlace PlaceOf(PlanePoint place, double speed)
    {
        var (hours, depth) = Outline.PlaceOf(place);
        return new(place, hours, depth, speed);
    }
}

/// <summary>A place of a map.</summary>
/// <param name="Point">m.</param>
/// <param name="BearingHours">From the outline's bearing centre.</param>
/// <param name="DepthFromWall">In from the wall at that bearing, m.</param>
/// <param name="Speed">m/s.</param>
public readonly record struct MapPlace(PlanePoint Point, double BearingHours, double DepthFromWall, double Speed);
