using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;

namespace Portwright.Physics.Metering;

/// <summary>What the volume flow on a display is a volume of.</summary>
public enum ReadoutBasis
{
    // Records hold the name and are read by number too: neither is ever changed.
    /// <summary>Air as it is at the meter's inlet.</summary>
    ActualAtMeter = 0,

    /// <summary>Today's air (its vapour) brought to a stated pressure and temperature.</summary>
    ActualAtState = 1,

    /// <summary>Standard air: the display is the mass flow over the display's standard density.</summary>
    StandardAirCorrected = 2,

    /// <summary>Worked out from a differential with a density that is always taken the same.</summary>
    AssumedDensity = 3,

    /// <summary>Flow of standard air already restated at a stated test pressure, whatever the test pressure is.</summary>
    Restated = 4,
}

/// <summary>A display that already shows volume flow. Reading: what it shows, m3/s.</summary>
/// <remarks>
/// m = Q rho, rho by basis: the air's at the meter; the air's at the stated state; the stated standard density; and for a display that
/// works with sqrt(2 dp/rho_a) at an assumed density rho_a, m = Q sqrt(rho_a rho), for the differential behind the display is rho_a Q^2
/// but the mass flow is sqrt(rho dp). The differential itself is not known, so no expansion is added to what the display computed and the pressure at the inlet of a
/// blowing bench is taken without it. A display that has restated its flow shows the effective area in another form: rho_s Q is what the test piece would
/// pass at the stated test pressure, and <see cref="TestPieceReduction"/> brings it to the one it was read at.
/// </remarks>
public sealed record DirectReadout : IMeter
{
    private DirectReadout(ReadoutBasis basis, double pressure, double temperature, double density, StandardAir? air = null, double testPressure = double.NaN) =>
        (Basis, StatedPressure, StatedTemperature, StatedDensity, RestatedIn, RestatedAt) = (basis, pressure, temperature, density, air, testPressure);

    public ReadoutBasis Basis { get; }

    /// <summary>Pa; not a number where the basis states none.</summary>
    public double StatedPressure { get; }

    /// <summary>K; not a number where the basis states none.</summary>
    public double StatedTemperature { get; }

    /// <summary>kg/m3: the standard or the assumed density; not a number where the basis has none.</summary>
    public double StatedDensity { get; }

    /// <summary>The test pressure the display has brought its flow to, Pa; not a number where it has not.</summary>
    public double RestatedAt { get; }

    /// <summary>The air it has brought it to; null where it has not.</summary>
    public StandardAir? RestatedIn { get; }

    public static DirectReadout ActualAtMeter { get; } = new(ReadoutBasis.ActualAtMeter, double.NaN, double.NaN, double.NaN);

    /// <param name="pressure">Pa absolute.</param>
    /// <param name="temperature">K.</param>
    public static DirectReadout ActualAtState(double pressure, double temperature) =>
        new(ReadoutBasis.ActualAtState, AirState.Dry(pressure, temperature).Pressure, temperature, double.NaN);

    public static DirectReadout StandardAirCorrected(StandardAir air) =>
        new(ReadoutBasis.StandardAirCorrected, air.Pressure, air.Temperature, air.Density);

    /// <param name="density">kg/m3.</param>
    /// <exception cref="ArgumentOutOfRangeException">The density is not above zero.</exception>
    public static DirectReadout AssumedDensity(double density) =>
        new(ReadoutBasis.AssumedDensity, double.NaN, double.NaN, Require.Positive(density, nameof(density), "kg/m3"));

    /// <param name="testPressure">The one its flow is brought to, Pa, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The test pressure is not above zero.</exception>
    public static DirectReadout Restated(StandardAir air, double testPressure) =>
        new(ReadoutBasis.Restated, air.Pressure, air.Temperature, air.Density, air, Require.Positive(testPressure, nameof(testPressure), "Pa"));

    /// <param name="reading">What the display shows, m3/s.</param>
    /// <exception cref="ArgumentOutOfRangeException">The reading is not finite.</exception>
    public MeterFlow Flow(double reading, in AirState upstream)
    {
        if (!double.IsFinite(reading)) Require.Refuse(reading, nameof(reading), "a finite number, in m3/s");
        var density = Basis switch
        {
            ReadoutBasis.ActualAtMeter => upstream.Density,
            ReadoutBasis.ActualAtState => upstream.At(StatedPressure, StatedTemperature).Density,
            ReadoutBasis.StandardAirCorrected or ReadoutBasis.Restated => StatedDensity,
            _ => Math.Sqrt(StatedDensity * upstream.Density),
        };
        return new(reading * density, double.NaN, 1, double.NaN, MeterLimits.None);
    }

    /// <summary>Zero: the display does not tell it, Pa.</summary>
    /// <param name="reading">What the display shows, m3/s.</param>
    public double Differential(double reading) => 0;
}
