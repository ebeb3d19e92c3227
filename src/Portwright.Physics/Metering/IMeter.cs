using Portwright.Physics.Air;

namespace Portwright.Physics.Metering;

/// <summary>What a bench measures its flow with.</summary>
/// <remarks>
/// A reading below zero, as scatter about no flow gives, is the same flow backwards: flow is an odd function of the reading, so that the
/// mean of scatter about nothing is nothing. There is no switch for density: each meter's own physics says what it needs.
/// </remarks>
public interface IMeter
{
    /// <summary>Mass flow for what the porter reads.</summary>
    /// <param name="reading">In the meter's own SI form, in the unit each meter states.</param>
    /// <param name="upstream">Air at the meter's inlet.</param>
    MeterFlow Flow(double reading, in AirState upstream);

    /// <summary>The differential across the meter at a reading, Pa; zero where the reading does not tell it.</summary>
    /// <param name="reading">In the meter's own SI form, in the unit each meter states.</param>
    double Differential(double reading);
}

/// <summary>A meter whose flow follows from the differential across it, so that a tube of liquid can be read in its place.</summary>
public interface IDifferentialMeter : IMeter
{
    /// <summary>Mass flow at a differential in Pa.</summary>
    /// <param name="differential">Pa; below zero it is the same flow backwards.</param>
    MeterFlow FlowAtDifferential(double differential, in AirState upstream);
}

/// <summary>What a meter makes of a reading.</summary>
/// <param name="MassFlow">kg/s.</param>
/// <param name="DischargeCoefficient">C; not a number for a meter that has none, no unit.</param>
/// <param name="Expansibility">The factor for the air's expansion through the meter; 1 for a meter that has none, no unit.</param>
/// <param name="Reynolds">Of the pipe (orifice plate) or of the hole (plenum plate); not a number where no diameter is known, no unit.</param>
/// <param name="Limits">Ranges of validity that were left.</param>
public readonly record struct MeterFlow(double MassFlow, double DischargeCoefficient, double Expansibility, double Reynolds, MeterLimits Limits);
