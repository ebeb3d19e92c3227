using Portwright.Physics.TestPiece;

namespace Portwright.Physics.Metering;

/// <summary>The factor for a gas expanding through a sharp-edged hole.</summary>
/// <remarks>
/// ISO 5167-2:2003, 5.3.2.2: eps = 1 - (0.351 + 0.256 beta^4 + 0.93 beta^8) (1 - (p2/p1)^(1/k)), published for p2/p1 of 0.75 and above.
/// A plate between two plenums is its limit beta = 0: the approach section is so wide that the terms in beta, which
/// come from the speed before the plate, vanish.
/// </remarks>
public static class Expansibility
{
    /// <summary>Ratio p2/p1 down to which the formula is published.</summary>
    public const double LeastPressureRatio = 0.75;

    /// <summary>0.351 + 0.256 beta^4 + 0.93 beta^8.</summary>
    internal static double Slope(double diameterRatio)
    {
        var b4 = diameterRatio * diameterRatio * diameterRatio * diameterRatio;
        return 0.351 + 0.256 * b4 + 0.93 * b4 * b4;
    }

    /// <summary>Expansibility, no unit, 1 without a differential.</summary>
    /// <param name="diameterRatio">Bore over pipe, 0 (plenum) to below 1, no unit.</param>
    /// <param name="differential">p1 - p2, 0 to below the upstream pressure, Pa.</param>
    /// <param name="upstreamPressure">p1, Pa absolute.</param>
    /// <param name="isentropicExponent">k, above 1, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Of(double diameterRatio, double differential, double upstreamPressure, double isentropicExponent) =>
        FromSlope(Slope(diameterRatio), differential, upstreamPressure, isentropicExponent);

    internal static double FromSlope(double slope, double differential, double upstreamPressure, double isentropicExponent)
    {
        if (!(differential >= 0 && differential < upstreamPressure))
            Require.Refuse(differential, nameof(differential), "0 to below the absolute pressure before the meter, in Pa");
        return 1 + slope * NearZero.Expm1(NearZero.Log1p(-differential / upstreamPressure) / isentropicExponent);
    }

    internal static MeterLimits Limit(double differential, double upstreamPressure) =>
        differential > (1 - LeastPressureRatio) * upstreamPressure ? MeterLimits.PressureRatio : MeterLimits.None;
}
