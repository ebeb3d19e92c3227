namespace Portwright.Geometry.Sections;

/// <summary>Radii of the four corners of a section, m, zero or above. "Wall" is the cylinder-wall side, "Centre" the centre side.</summary>
/// <param name="RoofWall">m, zero or above.</param>
/// <param name="RoofCentre">m, zero or above.</param>
/// <param name="FloorWall">m, zero or above.</param>
/// <param name="FloorCentre">m, zero or above.</param>
public readonly record struct CornerRadii(double RoofWall, double RoofCentre, double FloorWall, double FloorCentre)
{
    /// <param name="radius">m, zero or above.</param>
    public static CornerRadii All(double radius) => new(radius, radius, radius, radius);

    /// <param name="radius">m, zero or above.</param>
    public static implicit operator CornerRadii(double radius) => All(radius);

    /// <param name="radius">m, zero or above.</param>
    public static CornerRadii FromDouble(double radius) => All(radius);

    /// <summary>True when one gauge reading serves all four corners.</summary>
    public bool AreEqual => RoofWall == RoofCentre && RoofCentre == FloorWall && FloorWall == FloorCentre;

    internal IReadOnlyList<SectionReading> Readings() => AreEqual
        ? RoofWall == 0 ? [] : [SectionReading.Radius("corner radius", RoofWall)]
        :
        [
            SectionReading.Radius("roof corner radius, cylinder-wall side", RoofWall),
            SectionReading.Radius("roof corner radius, centre side", RoofCentre),
            SectionReading.Radius("floor corner radius, cylinder-wall side", FloorWall),
            SectionReading.Radius("floor corner radius, centre side", FloorCentre),
        ];

    /// <summary>The radii from the readings at the end of a list, in the order of <see cref="Readings"/>.</summary>
    internal CornerRadii From(ReadOnlySpan<double> readings) => AreEqual
        ? RoofWall == 0 ? this : All(readings[0])
        : new(readings[0], readings[1], readings[2], readings[3]);
}
