using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Bench;

/// <summary>
/// Everything one reading depends on, as one function to the effective area (m2): the measurement model of JCGM 100:2008 section 4.1.
/// </summary>
/// <remarks>
/// The meter takes the plenum's air wherever it stands behind the test piece (draw) or between blower and plenum (blow): a thermometer at one of
/// them speaks for the other. A meter that breathes the room's air before the blower says nothing of the plenum, nor the plenum of it. Only where
/// neither was read the room's thermometer speaks.
/// </remarks>
public readonly struct ReadingModel(IMeter meter, FlowDirection direction, MeterInlet inlet, bool ownMeterTemperature, bool ownPlenumTemperature)
    : IMeasurementModel
{
    /// <summary>The order of the inputs.</summary>
    public enum Input
    {
        Reading,
        MeterFactor,
        RoomPressure,
        RoomTemperature,
        Humidity,
        TestPressure,

        /// <summary>K where a thermometer stands at the meter; else how much warmer the meter's air is than what speaks for it, K.</summary>
        MeterTemperature,

        /// <summary>The same for the plenum.</summary>
        PlenumTemperature,
        LeakArea,
    }

    public const int InputCount = 9;

    /// <summary>The same reading taken on a meter that is another than it is thought to be.</summary>
    public ReadingModel With(IMeter other) => new(other, direction, inlet, ownMeterTemperature, ownPlenumTemperature);

    public double Evaluate(ReadOnlySpan<double> inputs) => Reduce(inputs).EffectiveArea;

    /// <summary>The whole reduction at these inputs.</summary>
    public Physics.TestPiece.ReducedReading Reduce(ReadOnlySpan<double> x)
    {
        var roomTemperature = x[(int)Input.RoomTemperature];
        var room = AirState.FromRelativeHumidity(x[(int)Input.RoomPressure], roomTemperature, Math.Clamp(x[(int)Input.Humidity], 0, 1));
        var sameAir = inlet != MeterInlet.Room;
        var (atMeter, inPlenum) = (x[(int)Input.MeterTemperature], x[(int)Input.PlenumTemperature]);
        var plenum = ownPlenumTemperature ? inPlenum : (ownMeterTemperature && sameAir ? atMeter : roomTemperature) + inPlenum;
        var conditions = new TestConditions(
            room,
            x[(int)Input.TestPressure],
            direction,
            plenum,
            ownMeterTemperature ? atMeter : (sameAir ? plenum : roomTemperature) + atMeter,
            inlet);
        return TestPieceReduction.EffectiveArea(meter, x[(int)Input.Reading], x[(int)Input.MeterFactor], conditions, x[(int)Input.LeakArea]);
    }
}
