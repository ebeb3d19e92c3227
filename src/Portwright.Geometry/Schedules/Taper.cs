namespace Portwright.Geometry.Schedules;

/// <summary>How the section changes from one station to the next; opening away from the flange counts above zero.</summary>
public sealed record Taper(AreaStation From, AreaStation To)
{
    /// <summary>m.</summary>
    public double Length => To.Distance - From.Distance;

    /// <summary>Change of area per length along the centreline, m2 per m.</summary>
    public double AreaPerLength => (To.Area - From.Area) / Length;

    /// <summary>Change of area over the area it starts from, no unit.</summary>
    public double AreaShare => To.Area / From.Area - 1;

    /// <summary>Half angle of the cone between round sections of the same areas and distance, rad: tan = (d2 - d1) / (2 length), d = sqrt(4 A / pi).</summary>
    public double ConeHalfAngle => Math.Atan((RoundDiameter(To.Area) - RoundDiameter(From.Area)) / (2 * Length));

    private static double RoundDiameter(double area) => Math.Sqrt(4 * area / Math.PI);
}
