using Portwright.Physics.Air;

namespace Portwright.Physics.TestPiece;

/// <summary>The mean stream in a section of the port: one-dimensional, isentropic, from air at rest.</summary>
/// <param name="Mach">Mean Mach number, below 1.</param>
/// <param name="Speed">m/s.</param>
/// <param name="Density">kg/m3.</param>
public readonly record struct SectionStream(double Mach, double Speed, double Density)
{
    /// <summary>
    /// The subsonic stream that carries a mass flow through a section: the Mach number at which the section is as many times the sonic one
    /// (<see cref="IsentropicFlow.AreaRatio"/>) as the sonic mass flux (<see cref="Nozzle"/>) is times the section's.
    /// </summary>
    /// <param name="massFlow">Zero or above, kg/s.</param>
    /// <param name="area">m2.</param>
    /// <param name="total">The air it came from, at rest. Losses on the way would lower its total pressure: of a loss of one percent the speed feels one percent.</param>
    /// <returns>Null where the section cannot pass that much below the speed of sound.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass flow is below zero or the section not above zero.</exception>
    public static SectionStream? Of(double massFlow, double area, in AirState total)
    {
        Require.NotNegative(massFlow, nameof(massFlow), "kg/s");
        Require.Positive(area, nameof(area), "m2");
        var k = total.HeatCapacityRatio;
        if (massFlow == 0) return new(0, 0, total.Density);
        var ratio = Nozzle.MassFlux(total, 0) * area / massFlow;
        if (ratio <= 1) return null;
        // The section's mass flux over the one it carries rises from nothing at rest to the most at the speed of sound.
        var mach = Root.Between(m => m == 0 ? -1 : ratio / IsentropicFlow.AreaRatio(m, k) - 1, 0, 1);
        return new(mach, mach * total.SpeedOfSound * Math.Sqrt(IsentropicFlow.TemperatureRatio(mach, k)), total.Density * IsentropicFlow.DensityRatio(mach, k));
    }
}
