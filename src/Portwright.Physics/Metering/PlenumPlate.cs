using Portwright.Physics.Air;

namespace Portwright.Physics.Metering;

/// <summary>A thin plate with a hole between two plenums, with a calibrated discharge coefficient. Reading: differential pressure, Pa.</summary>
/// <remarks>
/// m = C eps A sqrt(2 rho dp), eps as ISO 5167-2 with beta = 0 (see <see cref="Metering.Expansibility"/>). ISO 5167-2 itself does not cover a
/// plate without a pipe, which is why C comes from a calibration and is taken as constant over its range.
/// </remarks>
public sealed record PlenumPlate : IDifferentialMeter
{
    private static readonly double Slope = Metering.Expansibility.Slope(0);

    /// <param name="area">Of the hole, m2.</param>
    /// <param name="dischargeCoefficient">C, above 0 and up to 1.2, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public PlenumPlate(double area, double dischargeCoefficient)
    {
        Area = Require.Positive(area, nameof(area), "m2");
        DischargeCoefficient = Require.Between(dischargeCoefficient, double.Epsilon, 1.2, nameof(dischargeCoefficient), "(no unit)");
    }

    /// <summary>A round hole, diameter in m.</summary>
    /// <param name="diameter">m, above zero.</param>
    /// <param name="dischargeCoefficient">Discharge coefficient C, above 0 and up to 1.2.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static PlenumPlate Round(double diameter, double dischargeCoefficient) =>
        new(Math.PI / 4 * Require.Positive(diameter, nameof(diameter), "m") * diameter, dischargeCoefficient);

    /// <summary>m2.</summary>
    public double Area { get; }

    /// <summary>Discharge coefficient C.</summary>
    public double DischargeCoefficient { get; }

    /// <param name="reading">Differential pressure, Pa.</param>
    public MeterFlow Flow(double reading, in AirState upstream) => FlowAtDifferential(reading, upstream);

    /// <param name="differential">Pa; below zero it is the same flow backwards.</param>
    /// <exception cref="ArgumentOutOfRangeException">The differential is not below the absolute pressure before the meter.</exception>
    public MeterFlow FlowAtDifferential(double differential, in AirState upstream)
    {
        var (flux, eps) = Flux(differential, upstream);
        var flow = DischargeCoefficient * Area * flux;
        // Re of the hole by its equivalent diameter d = sqrt(4A/pi): 4m/(pi d mu).
        var reynolds = Math.Abs(flow) * 4 / (Math.Sqrt(4 * Math.PI * Area) * upstream.DynamicViscosity);
        return new(flow, DischargeCoefficient, eps, reynolds, Metering.Expansibility.Limit(Math.Abs(differential), upstream.Pressure));
    }

    /// <summary>The differential across the meter at a reading, Pa.</summary>
    /// <param name="reading">Differential pressure, Pa.</param>
    public double Differential(double reading) => Math.Abs(reading);

    /// <summary>eps sqrt(2 rho dp), kg/(s m2), with the sign of the differential, and eps.</summary>
    internal static (double Flux, double Expansibility) Flux(double differential, in AirState upstream)
    {
        var dp = Math.Abs(differential);
        var eps = Metering.Expansibility.FromSlope(Slope, dp, upstream.Pressure, upstream.HeatCapacityRatio);
        return (Math.CopySign(eps * Math.Sqrt(2 * upstream.Density * dp), differential), eps);
    }
}
