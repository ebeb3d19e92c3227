using Portwright.Geometry;

namespace Portwright.Physics.Rings;

public sealed partial class VelocityMap
{
    /// <summary>Nearer to the wall than this share of the deepest distance all air is slow: no place for the laziest. No unit.</summary>
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
            for (var c = 0; c < _speedsOfCells.Length; c++)
            {
                if (_cells.Distance[c] >= WallShare * _cells.Deepest && (least < 0 || _speedsOfCells[c] < _speedsOfCells[least])) least = c;
            }
            var place = new PlanePoint(_cells.X[least], _cells.Y[least]);
            return PlaceOf(place, At(place));
        }
    }

    /// <summary>
    /// Where one more reading would make the mean surest: the place off the wall that takes most from what the air between the readings leaves open.
    /// </summary>
    public NextReading WorthReadingNext
    {
        get
        {
            var wall = _cells.WallShares(Wall.Exponent);
            double[] weights = [.. _cells.Area.Zip(wall, (a, w) => a * w)];
            // Every third square each way is finer than a probe is placed.
            var places = Enumerable.Range(0, _cells.X.Length).Where(c => _cells.Distance[c] >= WallShare * _cells.Deepest
                && (int)(_cells.X[c] / _cells.Step) % 3 == 0 && (int)(_cells.Y[c] / _cells.Step) % 3 == 0);
            var open = new OpenAir(_cells, _fitted.Core.Kriging);
            var (square, left) = open.Next(_cells, weights, places);
            var place = new PlanePoint(_cells.X[square], _cells.Y[square]);
            return new(PlaceOf(place, At(place)), _spread.StandardDeviation * Math.Sqrt(open.Variance(weights)), _spread.StandardDeviation * Math.Sqrt(left));
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
/// <param name="BearingHours">From the outline's bearing centre, in hours.</param>
/// <param name="DepthFromWall">In from the wall at that bearing, m.</param>
/// <param name="Speed">m/s.</param>
public readonly record struct MapPlace(PlanePoint Point, double BearingHours, double DepthFromWall, double Speed);

/// <summary>One more reading and what it would be worth.</summary>
/// <param name="Place">Where; its speed is what the map expects.</param>
/// <param name="OpenNow">Standard uncertainty of the mean from the air between the readings, m/s.</param>
/// <param name="OpenAfter">The same with that reading taken, should it show what the map expects, m/s.</param>
public readonly record struct NextReading(MapPlace Place, double OpenNow, double OpenAfter);
