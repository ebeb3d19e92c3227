using Portwright.Physics.Air;

namespace Portwright.Physics.Metering;

/// <summary>A linear (laminar) flow element. Reading: differential pressure, Pa.</summary>
/// <remarks>
/// Hagen-Poiseuille with a small term for the entries of its passages: dp = (mu/mu_ref) Q/G + B rho Q^2, Q the volume flow at the element's inlet
/// state, mu the viscosity and rho the density of the air there. G and B come from the element's calibration; B = 0 is a straight line.
/// Volume flow needs the temperature (through viscosity) and mass flow the density: unlike a plate the weather does not cancel against a test
/// piece in series, whose flow goes with sqrt(rho). Valid while the passages stay laminar, which is the element's own range.
/// </remarks>
public sealed record LaminarElement : IDifferentialMeter
{
    /// <param name="conductance">G: volume flow a unit of differential at the reference viscosity, m3/(s Pa).</param>
    /// <param name="referenceViscosity">Viscosity of the calibration air, Pa s.</param>
    /// <param name="inertia">B, 1/m4, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public LaminarElement(double conductance, double referenceViscosity, double inertia = 0)
    {
        Conductance = Require.Positive(conductance, nameof(conductance), "m3/(s Pa)");
        ReferenceViscosity = Require.Positive(referenceViscosity, nameof(referenceViscosity), "Pa s");
        Inertia = Require.NotNegative(inertia, nameof(inertia), "1/m4");
    }

    /// <summary>G, m3/(s Pa).</summary>
    public double Conductance { get; }

    /// <summary>Pa s.</summary>
    public double ReferenceViscosity { get; }

    /// <summary>B, 1/m4.</summary>
    public double Inertia { get; }

    /// <param name="reading">Differential pressure, Pa.</param>
    public MeterFlow Flow(double reading, in AirState upstream) => FlowAtDifferential(reading, upstream);

    /// <param name="differential">Pa; below zero it is the same flow backwards.</param>
    /// <exception cref="ArgumentOutOfRangeException">The differential is not below the absolute pressure before the meter.</exception>
    public MeterFlow FlowAtDifferential(double differential, in AirState upstream)
    {
        if (!(Math.Abs(differential) < upstream.Pressure))
            Require.Refuse(differential, nameof(differential), "below the absolute pressure before the meter, in Pa");
        var dp = Math.Abs(differential);
        var linear = upstream.DynamicViscosity / ReferenceViscosity / Conductance;
        // The root of the square that stays whole when the inertia vanishes.
        var volume = 2 * dp / (linear + Math.Sqrt(linear * linear + 4 * Inertia * upstream.Density * dp));
        return new(Math.CopySign(volume * upstream.Density, differential), double.NaN, 1, double.NaN, MeterLimits.None);
    }

    /// <summary>The differential across the meter at a reading, Pa.</summary>
    /// <param name="reading">Differential pressure, Pa.</param>
    public double Differential(double reading) => Math.Abs(reading);
}
