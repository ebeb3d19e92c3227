using Portwright.Physics.Air;

namespace Portwright.Physics.Metering;

/// <summary>A sharp-edged orifice plate in a round pipe, after ISO 5167-2. Reading: differential pressure, Pa.</summary>
/// <remarks>
/// ISO 5167-2:2003, equation (1): m = C/sqrt(1 - beta^4) eps pi/4 d^2 sqrt(2 dp rho1), C by Reader-Harris/Gallagher (iterated on the pipe's
/// Reynolds number to rounding), eps by <see cref="Metering.Expansibility"/>. Upstream is the state at the upstream tap.
/// Limits stated when left (5.3.1): d at least 12.5 mm, D 50 to 1000 mm, beta 0.10 to 0.75, p2/p1 at least 0.75; Reynolds number at
/// least 5000 (corner and D taps, beta to 0.56), 16000 beta^2 (the same, above 0.56), both 5000 and 170 beta^2 D/mm (flange taps).
/// The standard also asks straight pipe, edge sharpness and smoothness, which no formula can see.
/// The mass flow goes with sqrt(rho) and so needs the weather; the effective area of a test piece in series does not, because both see it.
/// </remarks>
public sealed record OrificePlate : IDifferentialMeter
{
    private readonly ReaderHarrisGallagher _coefficient;
    private readonly double _expansibilitySlope, _approachArea, _leastReynolds;
    private readonly MeterLimits _geometryLimits;

    /// <param name="pipeDiameter">D, m.</param>
    /// <param name="bore">d, m, smaller than the pipe.</param>
    /// <exception cref="ArgumentOutOfRangeException">A diameter is not above zero or the bore is not smaller than the pipe.</exception>
    public OrificePlate(double pipeDiameter, double bore, OrificeTaps taps)
    {
        PipeDiameter = Require.Positive(pipeDiameter, nameof(pipeDiameter), "m");
        Bore = Require.Positive(bore, nameof(bore), "m");
        if (bore >= pipeDiameter) Require.Refuse(bore, nameof(bore), "smaller than the pipe, in m");
        Taps = taps;
        var beta = DiameterRatio;
        _coefficient = new(pipeDiameter, beta, taps);
        _expansibilitySlope = Metering.Expansibility.Slope(beta);
        _approachArea = Math.PI / 4 * bore * bore / Math.Sqrt(1 - beta * beta * beta * beta);
        _leastReynolds = taps == OrificeTaps.Flange
            ? Math.Max(5000, 170 * beta * beta * pipeDiameter * 1000)
            : beta <= 0.56 ? 5000 : 16_000 * beta * beta;
        _geometryLimits = (pipeDiameter is >= 0.05 and <= 1 ? 0 : MeterLimits.PipeDiameter)
            | (bore >= 0.0125 ? 0 : MeterLimits.Bore)
            | (beta is >= 0.1 and <= 0.75 ? 0 : MeterLimits.DiameterRatio);
    }

    /// <summary>m.</summary>
    public double PipeDiameter { get; }

    /// <summary>m.</summary>
    public double Bore { get; }

    public OrificeTaps Taps { get; }

    /// <summary>beta = d/D, no unit.</summary>
    public double DiameterRatio => Bore / PipeDiameter;

    /// <param name="reading">Differential pressure, Pa.</param>
    public MeterFlow Flow(double reading, in AirState upstream) =>
        FlowAtDifferential(reading, upstream);

    /// <param name="differential">Pa; below zero it is the same flow backwards.</param>
    public MeterFlow FlowAtDifferential(double differential, in AirState upstream) =>
        Flow(differential, upstream.Pressure, upstream.Density, upstream.DynamicViscosity, upstream.HeatCapacityRatio);

    /// <summary>The differential across the meter at a reading, Pa.</summary>
    /// <param name="reading">Differential pressure, Pa.</param>
    public double Differential(double reading) => Math.Abs(reading);

    /// <summary>The same from a fluid's properties at the upstream tap.</summary>
    /// <param name="differential">Pa.</param>
    /// <param name="upstreamPressure">Pa absolute.</param>
    /// <param name="density">kg/m3.</param>
    /// <param name="viscosity">Pa s.</param>
    /// <param name="isentropicExponent">k, above 1, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    /// <exception cref="InvalidOperationException">The search for the Reynolds number did not settle, which no plate in its range makes happen.</exception>
    public MeterFlow Flow(double differential, double upstreamPressure, double density, double viscosity, double isentropicExponent)
    {
        var dp = Math.Abs(differential);
        var eps = Metering.Expansibility.FromSlope(_expansibilitySlope, dp, upstreamPressure, isentropicExponent);
        var limits = _geometryLimits | Metering.Expansibility.Limit(dp, upstreamPressure);
        if (dp == 0) return new(0, _coefficient.AtInfiniteReynolds, eps, 0, limits | MeterLimits.Reynolds);

        var flowPerC = eps * _approachArea * Math.Sqrt(2 * dp * density);
        var (c, reynolds) = _coefficient.Solve(4 * flowPerC / (Math.PI * viscosity * PipeDiameter));
        if (reynolds < _leastReynolds) limits |= MeterLimits.Reynolds;
        return new(Math.CopySign(c * flowPerC, differential), c, eps, reynolds, limits);
    }
}
