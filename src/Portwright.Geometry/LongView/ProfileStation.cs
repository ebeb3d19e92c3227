using Portwright.Geometry.Sections;

namespace Portwright.Geometry.LongView;

/// <summary>Where roof and floor stand at a station, measured from the centreline square to it, m.</summary>
/// <param name="Distance">From the flange along the centreline, m.</param>
/// <param name="Roof">Height of the roof above the centreline, m.</param>
/// <param name="Floor">Depth of the floor below the centreline, m.</param>
/// <param name="IsGeneric">Nobody measured it: a usual shape stands in.</param>
public sealed record ProfileStation(double Distance, double Roof, double Floor, string Name = "", bool IsGeneric = false)
{
    /// <summary>Roof to floor, m.</summary>
    public double Height => Roof + Floor;

    /// <summary>From a measured section that sits with its centroid on the centreline, square to it.</summary>
    /// <param name="distance">From the flange along the centreline, m, 0 to the port's length.</param>
    public static ProfileStation Of(double distance, SectionMeasure section, string name = "")
    {
        ArgumentNullException.ThrowIfNull(section);
        var wall = section.SquaredOutline();
        return new(distance, wall.Bounds.Top - wall.Centroid.Y, wall.Centroid.Y - wall.Bounds.Bottom, name);
    }
}
