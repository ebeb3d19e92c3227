using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;

namespace Portwright.Physics.Tests.TestPiece;

public sealed class TestConditionsTests
{
    private static readonly AirState Room = AirState.FromRelativeHumidity(100_000, 293.15, 0.5);

    [Fact]
    public void Drawing_takes_room_air_into_a_plenum_below_the_room()
    {
        var c = new TestConditions(Room, 7000, FlowDirection.Draw);
        Assert.Equal(Room, c.TestPieceUpstream);
        Assert.Equal(93_000, c.TestPieceDownstreamPressure);
        Assert.Equal(93_000, c.MeterUpstream(2500).Pressure);
    }

    [Fact]
    public void Blowing_takes_plenum_air_out_into_the_room_and_the_meter_stands_higher_still()
    {
        var c = new TestConditions(Room, 7000, FlowDirection.Blow, plenumTemperature: 303.15);
        Assert.Equal(107_000, c.TestPieceUpstream.Pressure);
        Assert.Equal(303.15, c.TestPieceUpstream.Temperature);
        Assert.Equal(100_000, c.TestPieceDownstreamPressure);
        Assert.Equal(109_500, c.MeterUpstream(2500).Pressure);
        Assert.Equal(303.15, c.MeterUpstream(2500).Temperature);
    }

    [Fact]
    public void A_thermometer_at_the_meter_speaks_for_the_plenum_whose_air_it_takes()
    {
        Assert.Equal(303.15, new TestConditions(Room, 7000, FlowDirection.Blow, meterTemperature: 303.15).TestPieceUpstream.Temperature);
        Assert.Equal(293.15, new TestConditions(Room, 7000, FlowDirection.Blow, meterTemperature: 303.15, inlet: MeterInlet.Room).TestPieceUpstream.Temperature);
    }

    [Fact]
    public void A_meter_that_breathes_room_air_sees_the_room()
    {
        var c = new TestConditions(Room, 7000, FlowDirection.Blow, plenumTemperature: 303.15, inlet: MeterInlet.Room);
        Assert.Equal(Room, c.MeterUpstream(2500));
    }

    [Fact]
    public void The_air_keeps_its_water_all_the_way()
    {
        var c = new TestConditions(Room, 7000, FlowDirection.Blow, 310, 305);
        Assert.Equal(Room.VapourMoleFraction, c.TestPieceUpstream.VapourMoleFraction);
        Assert.Equal(Room.VapourMoleFraction, c.MeterUpstream(0).VapourMoleFraction);
    }
}
