using Portwright.Physics.Crank;
using Portwright.Physics.TestPiece;

namespace Portwright.Physics.Targets;

/// <summary>Effective area a cylinder's inlet valves must offer at each crank angle, so that filling it costs no more than a chosen loss of pressure.</summary>
/// <remarks>
/// The cylinder stands at p0 (1 - loss) and what flows in fills the room the piston opens. The air comes to rest there, so its temperature is the one before
/// the port, its density rho0 (1 - loss), and the mass flow that density times the piston's demand. The effective area follows by
/// the nozzle of Heywood (1988), equations C.8 and C.9. One loss is the same at every lift: where less area is offered the loss is greater there, so the
/// curve is a yardstick and no law.
/// </remarks>
public static class NeededArea
{
    public static readonly TargetRule Rule = new(
        "Needed effective area over lift", TargetBasis.WorkedOut, "worked out here of two: its height by Taylor's inlet Mach index, its course by the piston's demand at each lift, Heywood (1988), equation 2.11",
        "Waves in the runner, which fill the cylinder late in the event, are left out: low lifts on the closing side count for more than this shows.");

    /// <summary>Pressure loss (p0 - p)/p0 that drives a demand through an effective area, by their Mach number, no unit.</summary>
    /// <param name="mach">Demand over effective area and speed of sound before the port, 0 to 1, no unit.</param>
    /// <param name="heatCapacityRatio">k, above 1 and below 2, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double LossAt(double mach, double heatCapacityRatio)
    {
        Require.Between(mach, 0, 1, nameof(mach), "(no unit)");
        // It rises with the loss and passes 1 before the nozzle chokes, for every k below 2.
        return Root.Between(loss => DemandMach(loss, heatCapacityRatio) - mach, 0, 1 - Nozzle.CriticalPressureRatio(heatCapacityRatio));
    }

    /// <summary>Effective area a demand needs, m2.</summary>
    /// <param name="demand">Volume flow the piston opens, m3/s; below zero (piston rising) needs none.</param>
    /// <param name="loss">(p0 - p)/p0, above 0 and below 1, no unit.</param>
    /// <param name="speedOfSound">Before the port, m/s, above zero.</param>
    /// <param name="heatCapacityRatio">k, above 1 and below 2, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double For(double demand, double loss, double speedOfSound, double heatCapacityRatio)
    {
        if (!(loss > 0 && loss < 1)) Require.Refuse(loss, nameof(loss), "above 0 and below 1");
        return Math.Max(0, demand) / (Require.Positive(speedOfSound, nameof(speedOfSound), "m/s") * DemandMach(loss, heatCapacityRatio));
    }

    /// <summary>Needed effective area at each of a row of crank angles, m2. Beside the lift at the same angles it is the needed area over lift.</summary>
    /// <param name="crankAngles">rad after top dead centre of gas exchange.</param>
    /// <param name="areas">As many; written, m2.</param>
    /// <param name="bore">m, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <param name="loss">Share (p0 - p)/p0, above 0 and below 1.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <param name="heatCapacityRatio">k, no unit, above 1 and below 2.</param>
    /// <exception cref="ArgumentException">The rows differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static void Over(
        ReadOnlySpan<double> crankAngles, Span<double> areas, double bore, SliderCrank crank, double revolutionsASecond, double loss, double speedOfSound, double heatCapacityRatio)
    {
        if (areas.Length != crankAngles.Length) throw new ArgumentException($"{crankAngles.Length} crank angles need as many areas.", nameof(areas));
        for (var i = 0; i < areas.Length; i++)
            areas[i] = For(PistonDemand.At(bore, crank, revolutionsASecond, crankAngles[i]), loss, speedOfSound, heatCapacityRatio);
    }

    /// <summary>Demand over effective area and speed of sound at a loss.</summary>
    private static double DemandMach(double loss, double k) =>
        // Unit pressure and density: the speed of sound is sqrt(k).
        Nozzle.MassFlux(1, 1, k, 1 - loss) / Math.Sqrt(k) / (1 - loss);
}
