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

    /// <summary>What a leak test shows: what was read, and half a step of its scale to either side.</summary>
    /// <exception cref="ArgumentException">The reading names a range that is not on the bench card, or cannot be an air flow.</exception>
    internal static LeakShown Leak(PlateReading reading, RoomAir air, Kept<BenchCard> bench, Estimate factor)
    {
        var range = bench.Fact.RangeNamed(reading.Range)
            ?? throw new ArgumentException($"The bench card has no range named '{reading.Range}'. Add it to the card, or correct the name.");
        var dimension = MeterOf.ReadingDimension(range);
        // In the unit that was typed, which need not be the scale's.
        var step = Units.Typed.Of(range.Resolution, range.Unit).Si(dimension) / (reading.Reading with { Value = 1 }).Si(dimension);
        double At(double value) => Measure(reading with { Reading = reading.Reading with { Value = Math.Max(0, value) } }, air, bench, factor, null, "leak").Value;
        var (low, high) = (reading.Reading.Value - step / 2, reading.Reading.Value + step / 2);
        return new(At(reading.Reading.Value), low > 0 ? At(low) : double.NegativeInfinity, At(high), bench.Fact.Doubt.Leak);
    }
}
