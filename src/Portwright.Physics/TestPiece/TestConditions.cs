using Portwright.Physics.Air;

namespace Portwright.Physics.TestPiece;

/// <summary>Which way the bench moves the air.</summary>
public enum FlowDirection
{
    // Records hold the name and are read by number too: neither is ever changed.
    /// <summary>Sucked from the room through the test piece into the bench, as an intake is tested.</summary>
    Draw = 0,

    /// <summary>Blown from the bench through the test piece into the room, as an exhaust is tested.</summary>
    Blow = 1,
}

/// <summary>The pressure at the meter's inlet.</summary>
public enum MeterInlet
{
    // Records hold the name and are read by number too: neither is ever changed.
    /// <summary>The plenum's: the meter stands behind the test piece (draw).</summary>
    Plenum = 0,

    /// <summary>The plenum's and the meter's own differential on top: the meter stands before the plenum (blow).</summary>
    PlenumPlusDifferential = 1,

    /// <summary>The room's: the meter breathes room air (blow, meter before the blower).</summary>
    Room = 2,
}

/// <summary>What stands still during a reading.</summary>
/// <remarks>
/// The vapour fraction is the room's everywhere: the same air passes room, test piece and meter.
/// Temperatures are of air at rest (total); where the bench does not measure one, the room's stands in, and the budget of the
/// reading should carry the doubt: blowing warms the air.
/// </remarks>
public readonly record struct TestConditions
{
    /// <param name="room">Room air at station pressure.</param>
    /// <param name="testPressure">Difference between room and plenum, above zero, Pa.</param>
    /// <param name="plenumTemperature">K; when not given the meter's where it takes the plenum's air, else the room's.</param>
    /// <param name="meterTemperature">K; the plenum's when not given, the room's with a meter that breathes room air.</param>
    /// <param name="inlet">When not given: draw <see cref="MeterInlet.Plenum"/>, blow <see cref="MeterInlet.PlenumPlusDifferential"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The test pressure is not above zero, or not below the room's when drawing.</exception>
    public TestConditions(in AirState room, double testPressure, FlowDirection direction,
        double? plenumTemperature = null, double? meterTemperature = null, MeterInlet? inlet = null)
    {
        Require.Positive(testPressure, nameof(testPressure), "Pa");
        if (direction == FlowDirection.Draw && testPressure >= room.Pressure)
            Require.Refuse(testPressure, nameof(testPressure), "below the room's pressure when drawing, in Pa");
        Room = room;
        TestPressure = testPressure;
        Direction = direction;
        Inlet = inlet ?? (direction == FlowDirection.Draw ? MeterInlet.Plenum : MeterInlet.PlenumPlusDifferential);
        PlenumTemperature = plenumTemperature ?? (Inlet == MeterInlet.Room ? null : meterTemperature) ?? room.Temperature;
        MeterTemperature = meterTemperature ?? (Inlet == MeterInlet.Room ? room.Temperature : PlenumTemperature);
    }

    public AirState Room { get; }

    /// <summary>Pa, above zero in both directions.</summary>
    public double TestPressure { get; }

    public FlowDirection Direction { get; }

    /// <summary>K.</summary>
    public double PlenumTemperature { get; }

    /// <summary>K.</summary>
    public double MeterTemperature { get; }

    public MeterInlet Inlet { get; }

    /// <summary>Pa absolute.</summary>
    public double PlenumPressure => Direction == FlowDirection.Draw ? Room.Pressure - TestPressure : Room.Pressure + TestPressure;

    /// <summary>Air at rest before the test piece: the room when drawing, the plenum when blowing.</summary>
    public AirState TestPieceUpstream => Direction == FlowDirection.Draw ? Room : Room.At(PlenumPressure, PlenumTemperature);

    /// <summary>Static pressure behind the test piece, Pa.</summary>
    public double TestPieceDownstreamPressure => Direction == FlowDirection.Draw ? PlenumPressure : Room.Pressure;

    /// <summary>Air at the meter's inlet while the meter shows a differential (Pa).</summary>
    /// <param name="differential">Pa, zero or above.</param>
    public AirState MeterUpstream(double differential) => Room.At(
        Inlet switch
        {
            MeterInlet.Plenum => PlenumPressure,
            MeterInlet.PlenumPlusDifferential => PlenumPressure + differential,
            _ => Room.Pressure,
        },
        MeterTemperature);
}
