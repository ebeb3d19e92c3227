using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>The effective area of whatever stands in the port's place: a check plate, or nothing but leaks.</summary>
public static class PlateArea
{
    /// <summary>Effective area (m2) of one reading, with the doubt of reading, air and meter.</summary>
    /// <param name="name">Identity of the reading: its resolution is shared with no other.</param>
    /// <exception cref="ArgumentException">The reading names a range that is not on the bench card.</exception>
    public static Estimate Measure(PlateReading reading, RoomAir air, Kept<BenchCard> bench, Estimate factor, Estimate? leakArea, string name)
    {
        var range = bench.Fact.RangeNamed(reading.Range)
            ?? throw new ArgumentException($"The bench card has no range named '{reading.Range}'. Add it to the card, or correct the name.");
        var room = RoomState.Of(air, bench);
        var inputs = new ReadingInputs(bench, range, room, factor, leakArea);
        return inputs.Reduce(reading.Reading, reading.TestPressure, reading.Direction, null, null, name).EffectiveArea;
    }
}
