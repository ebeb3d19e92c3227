namespace Portwright.Geometry.Sections;

/// <summary>
/// Something standing in the section: the valve stem, the guide boss. Its area is taken off, its wall is wetted too.
/// </summary>
/// <param name="Name">As the porter calls it: "guide boss".</param>
/// <param name="Shape">Its measured shape; islands and tilt of its own are not read.</param>
/// <param name="Middle">Where its centroid stands in the section's plane, m.</param>
/// <param name="AgainstWall">Length of its edge that lies against the port wall, m: neither that edge nor the wall behind it is wetted. Zero when it stands free.</param>
public sealed record Island(string Name, SectionMeasure Shape, PlanePoint Middle, double AgainstWall = 0)
{
    internal double WettedLength => Shape.Figure().Perimeter - 2 * AgainstWall;

    internal AreaMoments Moments => Shape.Figure().Moments with { Centroid = Middle };

    /// <summary>The island's own edge where it stands.</summary>
    public Outline Outline()
    {
        var own = Shape.Figure();
        return own.Chords(SectionMeasure.WidestChord).Moved(Middle.X - own.Moments.Centroid.X, Middle.Y - own.Moments.Centroid.Y);
    }
}
