namespace Portwright.Geometry;

/// <summary>
/// A place around a section as a clock hour, seen from the flange looking into a port that is not mirrored:
/// 12 the roof (+Y), 3 the centre side (+X), 6 the floor, 9 the cylinder-wall side.
/// </summary>
public static class Bearing
{
    /// <summary>The same bearing between 0 (not reached: written 12) and 12, in hours.</summary>
    /// <param name="hours">Clock, in hours, any finite number.</param>
    /// <exception cref="ArgumentOutOfRangeException">The hours are not finite.</exception>
    public static double Clock(double hours)
    {
        if (!double.IsFinite(hours)) Require.Refuse(hours, nameof(hours), "a finite number of hours");
        var turned = hours % 12;
        if (turned < 0) turned += 12;
        return turned == 0 ? 12 : turned;
    }

    /// <summary>Unit vector that points from the middle of the section towards the bearing.</summary>
    /// <param name="hours">Clock, in hours, any finite number.</param>
    public static PlanePoint Direction(double hours)
    {
        var (sin, cos) = Math.SinCos(Clock(hours) % 12 * Math.PI / 6);
        return new(sin, cos);
    }

    /// <summary>Bearing of a direction, in hours, above 0 up to 12; straight up for a direction without length.</summary>
    public static double Of(PlanePoint direction) => Clock(Math.Atan2(direction.X, direction.Y) * 6 / Math.PI);
}
