using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Bench;

/// <summary>
/// Everything one reading depends on, as one function to the effective area (m2): the measurement model of JCGM 100:2008 section 4.1.
/// </summary>
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
        MeterTemperature,
        PlenumTemperature,
        LeakArea,
    }

    public const int InputCount = 9;

    public double Evaluate(ReadOnlySpan<double> inputs) => Reduce(inputs).EffectiveArea;

    /// <summary>The whole reduction at these inputs.</summary>
    public Physics.TestPiece.ReducedReading Reduce(ReadOnlySpan<double> x)
    {
        var roomTemperature = x[(int)Input.RoomTemperature];
        var room = AirState.FromRelativeHumidity(x[(int)Input.RoomPressure], roomTemperature, Math.Clamp(x[(int)Input.Humidity], 0, 1));
        // Where no thermometer stands at the meter or in the plenum, the room's speaks for it, with the room's doubt.
        var conditions = new TestConditions(
            room,
            x[(int)Input.TestPressure],
            direction,
            ownPlenumTemperature ? x[(int)Input.PlenumTemperature] : roomTemperature,
            ownMeterTemperature ? x[(int)Input.MeterTemperature] : roomTemperature,
            inlet);
        return TestPieceReduction.EffectiveArea(meter, x[(int)Input.Reading], x[(int)Input.MeterFactor], conditions, x[(int)Input.LeakArea]);
    }
}
