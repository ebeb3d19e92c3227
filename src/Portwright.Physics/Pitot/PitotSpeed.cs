using Portwright.Physics.TestPiece;

namespace Portwright.Physics.Pitot;

/// <summary>Air speed from the difference of total and static pressure.</summary>
/// <remarks>
/// Isentropic: Mach number from p0/p by NACA Report 1135 (1953), equation 44, subsonic; speed = M sqrt(k R T) with T the static temperature, which is the
/// total one over 1 + (k-1)/2 M^2 (equation 43). A thermometer in the room or the plenum reads the total temperature of the air that left it.
/// </remarks>
public static class PitotSpeed
{
    /// <summary>Up to this Mach number ISO 3966 is written (its scope).</summary>
    public const double Iso3966LargestMach = 0.25;

    /// <summary>Mach number of a subsonic stream: past the speed of sound a shock stands before the probe, and the relation says nothing.</summary>
    /// <param name="differential">Total less static pressure, zero up to what sound itself would show (0.89 of the static pressure in air), Pa.</param>
    /// <param name="staticPressure">Pa absolute.</param>
    /// <param name="heatCapacityRatio">k, no unit, above 1 and below 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Mach(double differential, double staticPressure, double heatCapacityRatio)
    {
        Require.NotNegative(differential, nameof(differential), "Pa");
        Require.Positive(staticPressure, nameof(staticPressure), "Pa");
        var mach = IsentropicFlow.MachFromPressureRise(differential / staticPressure, heatCapacityRatio);
        if (mach > 1) Require.Refuse(differential, nameof(differential), "under what the speed of sound shows at that static pressure, in Pa");
        return mach;
    }

    /// <summary>Isentropic speed, m/s, from the total temperature (K) of the stream.</summary>
    /// <param name="differential">Pa, zero or above.</param>
    /// <param name="staticPressure">Absolute, Pa, above zero.</param>
    /// <param name="totalTemperature">K, above zero.</param>
    /// <param name="heatCapacityRatio">k, no unit, above 1 and below 2.</param>
    /// <param name="gasConstant">J/(kg K), above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double FromTotalTemperature(double differential, double staticPressure, double totalTemperature, double heatCapacityRatio, double gasConstant)
    {
        var mach = Mach(differential, staticPressure, heatCapacityRatio);
        return mach * Math.Sqrt(heatCapacityRatio * gasConstant * Require.Positive(totalTemperature, nameof(totalTemperature), "K")
            * IsentropicFlow.TemperatureRatio(mach, heatCapacityRatio));
    }

    /// <summary>Isentropic speed, m/s, from the static temperature (K) of the stream.</summary>
    /// <param name="differential">Pa, zero or above.</param>
    /// <param name="staticPressure">Absolute, Pa, above zero.</param>
    /// <param name="staticTemperature">K, above zero.</param>
    /// <param name="heatCapacityRatio">k, no unit, above 1 and below 2.</param>
    /// <param name="gasConstant">J/(kg K), above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double FromStaticTemperature(double differential, double staticPressure, double staticTemperature, double heatCapacityRatio, double gasConstant) =>
        Mach(differential, staticPressure, heatCapacityRatio)
        * Math.Sqrt(heatCapacityRatio * gasConstant * Require.Positive(staticTemperature, nameof(staticTemperature), "K"));

    /// <summary>sqrt(2 dp/rho), m/s.</summary>
    /// <param name="differential">Pa, zero or above.</param>
    /// <param name="density">kg/m3, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Incompressible(double differential, double density) =>
        Math.Sqrt(2 * Require.NotNegative(differential, nameof(differential), "Pa") / Require.Positive(density, nameof(density), "kg/m3"));

    /// <summary>
    /// The factor (1 - eps) of v = alpha (1 - eps) sqrt(2 dp/rho), with rho the density of the stream at its static pressure:
    /// (1 - (1/2k) dp/p + ((k+1)/6k^2) (dp/p)^2)^(1/2). No unit.
    /// </summary>
    /// <param name="differential">Pa, zero or above.</param>
    /// <param name="staticPressure">Absolute, Pa, above zero.</param>
    /// <param name="heatCapacityRatio">k, no unit, above 1 and below 2.</param>
    /// <remarks>
    /// ISO 3966 gives the factor in this form, as the opening terms of a series; the coefficients here were derived again from the isentropic
    /// relation. At Mach 0.25 the first term left out is 4e-5 of the speed.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double ExpansionFactor(double differential, double staticPressure, double heatCapacityRatio)
    {
        var x = Require.NotNegative(differential, nameof(differential), "Pa") / Require.Positive(staticPressure, nameof(staticPressure), "Pa");
        var k = heatCapacityRatio;
        return Math.Sqrt(1 - x / (2 * k) + (k + 1) / (6 * k * k) * x * x);
    }
}
