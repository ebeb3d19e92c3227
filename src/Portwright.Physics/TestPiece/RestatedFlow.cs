using Portwright.Physics.Air;

namespace Portwright.Physics.TestPiece;

/// <summary>Flow restated at a test pressure in standard air.</summary>
public static class RestatedFlow
{
    /// <summary>Volume flow of standard air, m3/s: the mass flow over the standard density.</summary>
    /// <param name="effectiveArea">m2.</param>
    /// <param name="testPressure">Above zero, Pa.</param>
    /// <remarks>
    /// Draw: from standard air at rest into p_std - dp. Blow: from p_std + dp at standard temperature into p_std. The volume is in both
    /// directions that of air at standard pressure.
    /// </remarks>
    public static double VolumeFlow(double effectiveArea, double testPressure, StandardAir air, FlowDirection direction) =>
        effectiveArea * MassFlux(testPressure, air, direction) / air.Density;

    /// <summary>The effective area (m2) that passes a volume flow of standard air (m3/s): the other way round.</summary>
    /// <param name="volumeFlow">m3/s.</param>
    /// <param name="testPressure">Pa, above zero.</param>
    public static double EffectiveAreaFrom(double volumeFlow, double testPressure, StandardAir air, FlowDirection direction) =>
        volumeFlow * air.Density / MassFlux(testPressure, air, direction);

    /// <summary>
    /// The plain square-root rule, m3/s: flow times sqrt(to/from): exact only for incompressible flow. Common practice, no source.
    /// Between 10 and 28 inH2O it is off by 2.5 percent.
    /// </summary>
    /// <param name="volumeFlow">m3/s.</param>
    /// <param name="fromPressure">Pa, above zero.</param>
    /// <param name="toPressure">Pa, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A pressure is not above zero.</exception>
    public static double SquareRootRule(double volumeFlow, double fromPressure, double toPressure) =>
        volumeFlow * Math.Sqrt(Require.Positive(toPressure, nameof(toPressure), "Pa") / Require.Positive(fromPressure, nameof(fromPressure), "Pa"));

    /// <summary>Of standard air at a test pressure (Pa), kg/(s m2).</summary>
    internal static double MassFlux(double testPressure, StandardAir air, FlowDirection direction)
    {
        var conditions = new TestConditions(air.State, testPressure, direction);
        return Nozzle.MassFlux(conditions.TestPieceUpstream, conditions.TestPieceDownstreamPressure);
    }
}
