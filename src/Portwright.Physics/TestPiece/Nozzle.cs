using Portwright.Physics.Air;

namespace Portwright.Physics.TestPiece;

/// <summary>The loss-free (isentropic) nozzle: mass flow a unit of area between an upstream total state and a downstream pressure.</summary>
/// <remarks>
/// De Saint-Venant and Wantzel (1839); J. B. Heywood, Internal Combustion Engine Fundamentals (1988), appendix C, equations C.8
/// and C.9: G = sqrt(2k/(k-1) p0 rho0 (r^(2/k) - r^((k+1)/k))), r = p/p0, and choked below r* = (2/(k+1))^(k/(k-1)).
/// Valid for a perfect gas with constant k above 1. Written with ln(1+x) and exp(x)-1 so that no figures are lost at small test pressures.
/// </remarks>
public static class Nozzle
{
    /// <summary>Downstream over upstream pressure at which the throat reaches the speed of sound, no unit.</summary>
    /// <param name="heatCapacityRatio">k, no unit, above 1 and below 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">The heat-capacity ratio is not above 1 and below 2.</exception>
    public static double CriticalPressureRatio(double heatCapacityRatio)
    {
        Ratio(heatCapacityRatio);
        return Math.Pow(2 / (heatCapacityRatio + 1), heatCapacityRatio / (heatCapacityRatio - 1));
    }

    /// <param name="upstreamPressure">Total, Pa, above zero.</param>
    /// <param name="heatCapacityRatio">k, no unit, above 1 and below 2.</param>
    /// <param name="downstreamPressure">Static, Pa, 0 to the upstream pressure.</param>
    public static bool IsChoked(double upstreamPressure, double heatCapacityRatio, double downstreamPressure) =>
        downstreamPressure <= upstreamPressure * CriticalPressureRatio(heatCapacityRatio);

    /// <summary>Mass flow a unit of area, kg/(s m2).</summary>
    /// <param name="upstreamPressure">Total pressure, Pa.</param>
    /// <param name="upstreamDensity">Total density, kg/m3.</param>
    /// <param name="heatCapacityRatio">k, above 1, no unit.</param>
    /// <param name="downstreamPressure">Static pressure, 0 to the upstream pressure, Pa.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double MassFlux(double upstreamPressure, double upstreamDensity, double heatCapacityRatio, double downstreamPressure)
    {
        var k = Ratio(heatCapacityRatio);
        Require.Positive(upstreamPressure, nameof(upstreamPressure), "Pa");
        Require.Positive(upstreamDensity, nameof(upstreamDensity), "kg/m3");
        if (!(downstreamPressure >= 0 && downstreamPressure <= upstreamPressure))
            Require.Refuse(downstreamPressure, nameof(downstreamPressure), "0 to the upstream pressure, in Pa");

        var drop = (upstreamPressure - downstreamPressure) / upstreamPressure;
        // r* lies below 0.61 for every k above 1, so most readings never ask for it.
        if (drop > 0.39 && IsChoked(upstreamPressure, k, downstreamPressure))
            return Math.Sqrt(k * upstreamPressure * upstreamDensity * Math.Pow(2 / (k + 1), (k + 1) / (k - 1)));

        var logRatio = NearZero.Log1p(-drop);
        var lost = -NearZero.Expm1((k - 1) / k * logRatio);
        return Math.Sqrt(2 * k / (k - 1) * upstreamPressure * upstreamDensity * lost) * Math.Exp(logRatio / k);
    }

    /// <summary>Mass flow a unit of area from air at rest in <paramref name="upstream"/>, kg/(s m2).</summary>
    /// <param name="downstreamPressure">Static, Pa, 0 to the upstream pressure.</param>
    public static double MassFlux(in AirState upstream, double downstreamPressure) =>
        MassFlux(upstream.Pressure, upstream.Density, upstream.HeatCapacityRatio, downstreamPressure);

    private static double Ratio(double k)
    {
        if (!(k > 1 && k < 2)) Require.Refuse(k, "heatCapacityRatio", "above 1 and below 2");
        return k;
    }
}
