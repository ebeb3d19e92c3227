using Portwright.Physics.Air;

namespace Portwright.Physics.TestPiece;

/// <summary>
/// The area of a loss-free nozzle that would pass the same mass flow between the same upstream total state and downstream
/// pressure (m2). Readings at different test pressures and in different weather agree in it.
/// </summary>
public static class EffectiveArea
{
    /// <summary>Effective area, m2.</summary>
    /// <param name="massFlow">kg/s; below zero it gives an area below zero, so that scatter about nothing averages to nothing.</param>
    /// <param name="upstream">Air at rest before the test piece.</param>
    /// <param name="downstreamPressure">Pa, below the upstream pressure.</param>
    /// <exception cref="ArgumentOutOfRangeException">The downstream pressure is not below the upstream one.</exception>
    public static double From(double massFlow, in AirState upstream, double downstreamPressure)
    {
        if (!(downstreamPressure < upstream.Pressure))
            Require.Refuse(downstreamPressure, nameof(downstreamPressure), "below the upstream pressure, in Pa");
        return massFlow / Nozzle.MassFlux(upstream, downstreamPressure);
    }
}
