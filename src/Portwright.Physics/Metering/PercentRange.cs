using Portwright.Physics.Air;

namespace Portwright.Physics.Metering;

/// <summary>What the printed marks of a percent scale mean.</summary>
public enum RangeScale
{
    // Records hold the name and are read by number too: neither is ever changed.
    /// <summary>Percent of flow: the differential is the square of the mark.</summary>
    SquareRoot = 0,

    /// <summary>Percent of differential: the flow is the square root of the mark.</summary>
    Linear = 1,
}

/// <summary>
/// A range hole in series with the test piece, its differential read as percent of the range's full-scale flow.
/// Reading: the fraction of the printed scale, 0 to 1 (0.63 for 63 percent).
/// </summary>
/// <remarks>
/// The range is a plate between plenums: m = K eps sqrt(2 rho dp), with K fixed by the full-scale flow in the calibration air. Today's air then
/// enters by rho alone, as it enters the test piece in series: the effective area is K times a ratio of differentials, and the
/// weather cancels without any correction. What is left of it is the ratio of the two densities (the plenum lies a test pressure below
/// the room, and may be warmer) and the expansion of the air, both computed.
/// </remarks>
public sealed record PercentRange : IDifferentialMeter
{
    private readonly double _k;

    /// <param name="fullScaleFlow">Volume flow of calibration air at the full mark, m3/s.</param>
    /// <param name="calibrationTestPressure">Test pressure the range was calibrated at, Pa: the calibration drew, with the hole behind the test piece.</param>
    /// <param name="calibrationAir">The air of the room the range was calibrated in; the full-scale flow is counted in it.</param>
    /// <param name="scale">What the marks mean.</param>
    /// <param name="fullScaleDifferential">Differential at the full mark, Pa.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public PercentRange(double fullScaleFlow, double calibrationTestPressure, StandardAir calibrationAir, RangeScale scale, double fullScaleDifferential)
    {
        FullScaleFlow = Require.Positive(fullScaleFlow, nameof(fullScaleFlow), "m3/s");
        CalibrationTestPressure = Require.NotNegative(calibrationTestPressure, nameof(calibrationTestPressure), "Pa");
        FullScaleDifferential = Require.Positive(fullScaleDifferential, nameof(fullScaleDifferential), "Pa");
        ArgumentNullException.ThrowIfNull(calibrationAir);
        if (calibrationTestPressure + fullScaleDifferential >= calibrationAir.Pressure)
            Require.Refuse(fullScaleDifferential, nameof(fullScaleDifferential), "with the test pressure less than the calibration air's pressure, in Pa");
        CalibrationAir = calibrationAir;
        Scale = scale;
        var atHole = calibrationAir.State.At(calibrationAir.Pressure - calibrationTestPressure, calibrationAir.Temperature);
        _k = fullScaleFlow * calibrationAir.Density / PlenumPlate.Flux(fullScaleDifferential, atHole).Flux;
    }

    /// <summary>m3/s of calibration air.</summary>
    public double FullScaleFlow { get; }

    /// <summary>Pa.</summary>
    public double CalibrationTestPressure { get; }

    public StandardAir CalibrationAir { get; }

    public RangeScale Scale { get; }

    /// <summary>Pa.</summary>
    public double FullScaleDifferential { get; }

    /// <summary>K, the area times coefficient of the hole that the calibration means, m2.</summary>
    public double PlateConstant => _k;

    /// <param name="reading">Fraction of full scale as the scale is marked, 1 at 100 percent.</param>
    public MeterFlow Flow(double reading, in AirState upstream) =>
        FlowAtDifferential(Math.CopySign(Differential(reading), reading), upstream);

    /// <param name="differential">Pa; below zero it is the same flow backwards.</param>
    /// <exception cref="ArgumentOutOfRangeException">The differential is not below the absolute pressure before the meter.</exception>
    public MeterFlow FlowAtDifferential(double differential, in AirState upstream)
    {
        var (flux, eps) = PlenumPlate.Flux(differential, upstream);
        var dp = Math.Abs(differential);
        var limits = Metering.Expansibility.Limit(dp, upstream.Pressure);
        // A hair past the last mark is the last mark.
        if (dp > FullScaleDifferential * (1 + 1e-9)) limits |= MeterLimits.FullScale;
        return new(_k * flux, double.NaN, eps, double.NaN, limits);
    }

    /// <summary>The differential across the meter at a reading, Pa.</summary>
    /// <param name="reading">Fraction of full scale as the scale is marked, 1 at 100 percent.</param>
    public double Differential(double reading) =>
        FullScaleDifferential * (Scale == RangeScale.SquareRoot ? reading * reading : Math.Abs(reading));
}
