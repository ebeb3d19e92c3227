namespace Portwright.Physics.Valves;

/// <summary>The smallest section air must pass at a lift.</summary>
/// <param name="Regime">1: frustum between valve face edge and seat; 2: the frustum no longer square to the seat; 3: the throat.</param>
/// <param name="Area">m2.</param>
/// <param name="CurtainArea">pi Dv L, m2.</param>
/// <param name="ThroatArea">m2.</param>
/// <param name="LiftOverDiameter">L/Dv, no unit.</param>
public readonly record struct ValveWindow(int Regime, double Area, double CurtainArea, double ThroatArea, double LiftOverDiameter)
{
    /// <summary>The window at a lift (m, zero or above).</summary>
    /// <param name="lift">m, zero or above.</param>
    /// <remarks>
    /// J. B. Heywood, Internal Combustion Engine Fundamentals (1988), equations 6.7, 6.8 and 6.9. The window is the smaller of the area at the
    /// valve (6.7, 6.8) and the throat (6.9). For usual seats that is exactly Heywood's three regimes. With a throat so small that it is
    /// the smaller one already in regime 1, Heywood's own limits would let the area fall at the step from 6.7 to 6.9; the smaller of the two does not.
    /// So it is continuous and never falls with lift, for every seat <see cref="ValveSeat"/> accepts.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The lift is below zero.</exception>
    public static ValveWindow At(ValveSeat seat, double lift)
    {
        ArgumentNullException.ThrowIfNull(seat);
        Require.NotNegative(lift, nameof(lift), "m");
        var throat = seat.ThroatArea;
        var atValve = AtValve(seat, lift);
        var regime = atValve >= throat ? 3 : lift <= FirstRegimeEnds(seat) ? 1 : 2;
        return new(regime, Math.Min(atValve, throat), Math.PI * seat.HeadDiameter * lift, throat, lift / seat.HeadDiameter);
    }

    /// <summary>The smallest section between valve and seat alone, m2: equations 6.7 and 6.8 without the throat.</summary>
    /// <param name="lift">m, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">The lift is below zero.</exception>
    public static double AtValve(ValveSeat seat, double lift)
    {
        ArgumentNullException.ThrowIfNull(seat);
        return Require.NotNegative(lift, nameof(lift), "m") <= FirstRegimeEnds(seat) ? NearSeat(seat, lift) : AwayFromSeat(seat, lift);
    }

    /// <summary>w/(sin b cos b): the lift (m) up to which equation 6.7 holds; endless for a flat seat with width.</summary>
    public static double FirstRegimeEnds(ValveSeat seat) =>
        seat.SeatWidth == 0 ? 0 : seat.SeatWidth / (Math.Sin(seat.SeatAngle) * Math.Cos(seat.SeatAngle));

    /// <summary>
    /// The lift (m) past which the throat is the smaller section and more lift opens nothing.
    /// Usually ((Dp^2 - Ds^2)^2/(4 Dm)^2 - w^2)^(1/2) + w tan b, the limit of equation 6.8; from equation 6.7 where the throat takes over in regime 1.
    /// </summary>
    public static double ThroatTakesOver(ValveSeat seat)
    {
        var w = seat.SeatWidth;
        var length = seat.ThroatArea / (Math.PI * seat.MeanSeatDiameter);
        var firstEnds = FirstRegimeEnds(seat);
        // At the end of regime 1 the frustum is w/sin b long.
        if (w == 0 || length >= w / Math.Sin(seat.SeatAngle))
            return Math.Sqrt((length - w) * (length + w)) + w * Math.Tan(seat.SeatAngle);

        // pi L cos b (Dv - 2w + L sin b cos b) = throat area, the root that stays whole for a flat seat.
        var cos = Math.Cos(seat.SeatAngle);
        var inner = cos * (seat.HeadDiameter - 2 * w);
        var square = Math.Sin(seat.SeatAngle) * cos * cos;
        var target = seat.ThroatArea / Math.PI;
        return Math.Min(firstEnds, 2 * target / (inner + Math.Sqrt(inner * inner + 4 * square * target)));
    }

    /// <summary>Equation 6.7: pi L cos b (Dv - 2 w + L/2 sin 2b).</summary>
    private static double NearSeat(ValveSeat s, double lift) =>
        Math.PI * lift * Math.Cos(s.SeatAngle) * (s.HeadDiameter - 2 * s.SeatWidth + lift / 2 * Math.Sin(2 * s.SeatAngle));

    /// <summary>Equation 6.8: pi Dm ((L - w tan b)^2 + w^2)^(1/2).</summary>
    private static double AwayFromSeat(ValveSeat s, double lift)
    {
        var beyond = lift - s.SeatWidth * Math.Tan(s.SeatAngle);
        return Math.PI * s.MeanSeatDiameter * Math.Sqrt(beyond * beyond + s.SeatWidth * s.SeatWidth);
    }
}
