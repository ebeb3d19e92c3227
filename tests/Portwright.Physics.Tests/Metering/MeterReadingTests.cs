using CsCheck;
using Portwright.Physics.Metering;
using Portwright.Physics.Tests.TestPiece;

namespace Portwright.Physics.Tests.Metering;

public sealed class MeterReadingTests
{
    public static TheoryData<string> Meters => BenchMeters.Names;

    [Theory, MemberData(nameof(Meters))]
    public void The_reading_for_a_flow_gives_that_flow_back(string name)
    {
        var (meter, size) = BenchMeters.All[name];
        Gen.Select(Weather.Any, Gen.Double[-4, 0]).Sample((air, exponent) =>
        {
            var flow = size * 100 * Math.Pow(10, exponent);
            Assert.Equal(flow, meter.Flow(MeterReading.For(meter, flow, air), air).MassFlow, flow * 1e-13);
        });
    }

    [Theory, MemberData(nameof(Meters))]
    public void More_reading_is_more_flow(string name)
    {
        var (meter, size) = BenchMeters.All[name];
        Gen.Select(Weather.Any, Gen.Double[0.001, 1], Gen.Double[1.0001, 2]).Sample((air, part, more) =>
        {
            var reading = MeterReading.For(meter, size * 60 * part, air);
            Assert.True(meter.Flow(reading * more, air).MassFlow > meter.Flow(reading, air).MassFlow);
        });
    }

    [Theory, MemberData(nameof(Meters))]
    public void No_reading_is_no_flow(string name)
    {
        var meter = BenchMeters.All[name].Meter;
        Assert.Equal(0, meter.Flow(0, Weather.OneDay[0]).MassFlow);
        Assert.Equal(0, MeterReading.For(meter, 0, Weather.OneDay[0]));
    }

    [Fact]
    public void A_flow_past_what_a_plate_can_pass_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("massFlow", () => MeterReading.For(PlenumPlate.Round(0.01, 0.6), 1.0, Weather.OneDay[0]));
}
