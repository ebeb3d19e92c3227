using Portwright.Physics.Air;
using Portwright.Physics.Metering;

namespace Portwright.Physics.TestPiece;

/// <summary>What one reading says about the test piece.</summary>
/// <param name="EffectiveArea">m2, the leak taken off.</param>
/// <param name="MassFlow">kg/s through the meter, meter factor applied, leak still in it.</param>
/// <param name="TestPieceUpstream">Air at rest before the test piece.</param>
/// <param name="MeterUpstream">Air at the meter's inlet.</param>
/// <param name="Limits">Ranges of validity that were left.</param>
public readonly record struct ReducedReading(
    double EffectiveArea, double MassFlow, AirState TestPieceUpstream, AirState MeterUpstream, MeterLimits Limits);

/// <summary>From what the porter reads to the effective area of the test piece.</summary>
public static class TestPieceReduction
{
    /// <param name="reading">In the meter's own form (see each meter), in the unit it states.</param>
    /// <param name="meterFactor">Multiplies the mass flow; 1 until the meter is calibrated against a check plate, no unit.</param>
    /// <param name="leakArea">Effective area of the bench's leak, m2: it works between the same two states as the test piece and is taken off as an area.</param>
    public static ReducedReading EffectiveArea(IMeter meter, double reading, double meterFactor, in TestConditions conditions, double leakArea = 0)
    {
        var atMeter = conditions.MeterUpstream(meter.Differential(reading));
        var flow = meter.Flow(reading, atMeter);
        var massFlow = meterFactor * flow.MassFlow * Brought(meter, conditions);
        var upstream = conditions.TestPieceUpstream;
        var limits = flow.Limits;
        if (!upstream.InCipmRange || !atMeter.InCipmRange) limits |= MeterLimits.AirRange;
        return new(TestPiece.EffectiveArea.From(massFlow, upstream, conditions.TestPieceDownstreamPressure) - leakArea,
            massFlow, upstream, atMeter, limits);
    }

    /// <summary>
    /// The reading a meter would show with a test piece of known effective area: the reduction backwards, for a simulated bench and
    /// for choosing a range. In the unit the meter states.
    /// </summary>
    /// <param name="effectiveArea">m2.</param>
    /// <param name="meterFactor">Multiplies the mass flow, no unit; 1 until calibrated.</param>
    /// <param name="leakArea">Effective area of the bench's leak, m2.</param>
    /// <exception cref="ArgumentOutOfRangeException">The meter cannot pass that flow.</exception>
    public static double ReadingFor(IMeter meter, double effectiveArea, double meterFactor, in TestConditions conditions, double leakArea = 0)
    {
        var massFlow = (effectiveArea + leakArea)
            * Nozzle.MassFlux(conditions.TestPieceUpstream, conditions.TestPieceDownstreamPressure) / (meterFactor * Brought(meter, conditions));
        return MeterReading.For(meter, massFlow, conditions);
    }

    /// <summary>What the test piece passes now over what it would at the pressure and in the air a display has restated its flow at; 1 for every other meter.</summary>
    private static double Brought(IMeter meter, in TestConditions conditions) => meter is DirectReadout { RestatedIn: { } air, RestatedAt: var at }
        ? Nozzle.MassFlux(conditions.TestPieceUpstream, conditions.TestPieceDownstreamPressure) / RestatedFlow.MassFlux(at, air, conditions.Direction)
        : 1;
}
