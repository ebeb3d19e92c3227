namespace Portwright.Physics.Valves;

/// <summary>A poppet valve on its seat: what the window over lift depends on.</summary>
public sealed record ValveSeat
{
    /// <param name="headDiameter">Dv, the outer diameter of the valve head at its seat, m.</param>
    /// <param name="seatAngle">beta, from the plane of the valve head, 0 (flat) to below pi/2 rad; the common seat is pi/4.</param>
    /// <param name="seatWidth">w, along the seat face, m; the inner edge Dv - 2 w must stay above zero.</param>
    /// <param name="throatDiameter">Dp, inner diameter of the port under the seat, m.</param>
    /// <param name="stemDiameter">Ds, m, smaller than the throat; 0 where the stem does not stand in it.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public ValveSeat(double headDiameter, double seatAngle, double seatWidth, double throatDiameter, double stemDiameter)
    {
        HeadDiameter = Require.Positive(headDiameter, nameof(headDiameter), "m");
        if (!(seatAngle >= 0 && seatAngle < Math.PI / 2)) Require.Refuse(seatAngle, nameof(seatAngle), "0 or above and below pi/2 rad");
        SeatAngle = seatAngle;
        SeatWidth = Require.NotNegative(seatWidth, nameof(seatWidth), "m");
        if (2 * seatWidth >= headDiameter) Require.Refuse(seatWidth, nameof(seatWidth), "under half the valve head's diameter, in m");
        ThroatDiameter = Require.Positive(throatDiameter, nameof(throatDiameter), "m");
        StemDiameter = Require.NotNegative(stemDiameter, nameof(stemDiameter), "m");
        if (stemDiameter >= throatDiameter) Require.Refuse(stemDiameter, nameof(stemDiameter), "smaller than the throat, in m");
    }

    /// <summary>m.</summary>
    public double HeadDiameter { get; }

    /// <summary>rad.</summary>
    public double SeatAngle { get; }

    /// <summary>m.</summary>
    public double SeatWidth { get; }

    /// <summary>m.</summary>
    public double ThroatDiameter { get; }

    /// <summary>m.</summary>
    public double StemDiameter { get; }

    /// <summary>Dm = Dv - w, the middle of the seat, m.</summary>
    public double MeanSeatDiameter => HeadDiameter - SeatWidth;

    /// <summary>pi/4 (Dp^2 - Ds^2), the throat less the stem, m2.</summary>
    public double ThroatArea => Math.PI / 4 * (ThroatDiameter - StemDiameter) * (ThroatDiameter + StemDiameter);
}
