namespace Portwright.Physics.Targets;

/// <summary>Lift and time of a valve event in one figure: effective area summed over crank angle.</summary>
/// <remarks>
/// Integral of A(L(angle)) over the event; over crank speed it is m2 s, over the cylinder's displacement too it is s/m, the specific time area: G. P. Blair, Design and
/// Simulation of Four-Stroke Engines (SAE, 1999), from memory. The angle is cut in equal parts and the trapezoidal rule used, which for a periodic smooth curve has no error of its own order.
/// </remarks>
public static class TimeArea
{
    public static readonly TargetRule Rule = new(
        "Lift and time area", TargetBasis.Published, "Blair, Design and Simulation of Four-Stroke Engines (1999); the integral is plain",
        "It counts every moment of the event alike. Area near bottom dead centre and while the pressure falls is not worth the same; the engine run tells them apart.");

    /// <summary>Effective area summed over crank angle, m2 rad.</summary>
    /// <param name="from">Crank angle at which the valve opens, rad.</param>
    /// <param name="to">Crank angle at which it closes, rad, above <paramref name="from"/>.</param>
    /// <param name="lift">Lift (m) at a crank angle (rad).</param>
    /// <param name="effectiveArea">Effective area (m2) at a lift (m).</param>
    /// <param name="parts">Equal parts of the event, 2 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The valve closes before it opens, or there are fewer than 2 parts.</exception>
    public static double AngleArea(double from, double to, Func<double, double> lift, Func<double, double> effectiveArea, int parts = 720)
    {
        ArgumentNullException.ThrowIfNull(lift);
        ArgumentNullException.ThrowIfNull(effectiveArea);
        if (!(to > from) || !double.IsFinite(to - from)) Require.Refuse(to, nameof(to), "above the opening angle, in rad");
        if (parts < 2) Require.Refuse(parts, nameof(parts), "2 or more");
        double step = (to - from) / parts, sum = 0;
        for (var i = 0; i <= parts; i++)
            sum += (i == 0 || i == parts ? 0.5 : 1) * effectiveArea(lift(from + i * step));
        return sum * step;
    }

    /// <summary>Mean effective area over the event, m2: the area of Taylor's inlet Mach index.</summary>
    /// <param name="angleArea">m2 rad.</param>
    /// <param name="duration">Of the event, rad, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double MeanArea(double angleArea, double duration) =>
        Require.NotNegative(angleArea, nameof(angleArea), "m2 rad") / Require.Positive(duration, nameof(duration), "rad");

    /// <summary>Specific time area, s/m: how long each unit of displacement has a unit of area open to it.</summary>
    /// <param name="angleArea">m2 rad.</param>
    /// <param name="revolutionsASecond">1/s, above zero.</param>
    /// <param name="displacement">Of one cylinder, m3, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Specific(double angleArea, double revolutionsASecond, double displacement) =>
        Require.NotNegative(angleArea, nameof(angleArea), "m2 rad")
        / (2 * Math.PI * Require.Positive(revolutionsASecond, nameof(revolutionsASecond), "1/s") * Require.Positive(displacement, nameof(displacement), "m3"));
}
