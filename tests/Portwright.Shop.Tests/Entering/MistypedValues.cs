using Portwright.Shop.Entering;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Entering;

/// <summary>What is mistyped in a form is asked back, the likely value first, or refused; what is right is taken.</summary>
public sealed class MistypedValues
{
    private static readonly Surroundings Known = new(
    [
        new("valve.head", 2.02 * 0.0254), new("plan.bore", 4.03 * 0.0254), new("plan.stroke", 3.48 * 0.0254), new("bench.elevation", 640), new("sweep.pressure", 6975), new("bench.usual-pressure", 6975), new("port.length", 0.110),
        new("port.volume-by-sections", 165e-6),
    ]);

    private static readonly Dictionary<string, EnteredField> Fields = new[]
    {
        EnteredValve.Head, EnteredValve.Throat, EnteredValve.SeatAngle, EnteredValve.SeatWidth, EnteredValve.Stem, EnteredRoom.Barometer, EnteredRoom.Temperature, EnteredRoom.Humidity,
        EnteredRoom.TestPressure, EnteredPlan.Bore, EnteredPlan.Stroke, EnteredPlan.Rod, EnteredPlan.Compression, EnteredPlan.Rocker, EnteredPlan.LobeLift, EnteredPlan.Lash, EnteredPlan.HighestSpeed,
        EnteredPort.Length, EnteredPort.Distance, EnteredPort.Width, EnteredPort.Volume, EnteredPort.Wall, EnteredPort.Ball, EnteredPort.Probe, EnteredPort.Lift, EnteredPort.Adapter,
    }.ToDictionary(f => f.Key);

    /// <summary>The value that was meant is offered first.</summary>
    [Theory]
    [InlineData("valve.head", "202", "2.02")]
    [InlineData("valve.head", "20.2", "2.02")]
    [InlineData("valve.head", ".202", "2.02")]
    [InlineData("valve.head", "51.3", "51.3 mm")]
    [InlineData("valve.throat", "2.10", null)]
    [InlineData("valve.throat", "178", "1.78")]
    [InlineData("valve.throat", ".178", "1.78")]
    [InlineData("valve.seat-angle", "54", "45")]
    [InlineData("valve.seat-angle", "4.5", "45")]
    [InlineData("valve.seat-width", ".60", "0.06")]
    [InlineData("valve.seat-width", "60", "0.06")]
    [InlineData("valve.stem", "342", "0.342")]
    [InlineData("valve.stem", "3.42", "0.342")]
    [InlineData("valve.stem", "8", "8 mm")]
    [InlineData("room.barometer", "1009.5", "1009.5 hPa at sea level")]
    [InlineData("room.barometer", "23.0", null)]
    [InlineData("room.barometer", "1021 hPa", "1021 hPa at sea level")]
    [InlineData("room.barometer", "30.15", "30.15 inHg at sea level")]
    [InlineData("room.barometer", "2790", "27.9")]
    [InlineData("room.barometer", "709", "709 mmHg")]
    [InlineData("room.temperature", "17.3", "17.3 °C")]
    [InlineData("room.temperature", "173", null)]
    [InlineData("room.temperature", "710", "71")]
    [InlineData("room.humidity", "0.61", "61")]
    [InlineData("room.humidity", "610", "61")]
    [InlineData("room.humidity", "6.1 %", null, true)]
    [InlineData("sweep.pressure", "82", "28")]
    [InlineData("sweep.pressure", "2.8", "28")]
    [InlineData("sweep.pressure", "280", "28")]
    [InlineData("plan.bore", "403", "4.03")]
    [InlineData("plan.bore", "102.4", "102.4 mm")]
    [InlineData("plan.stroke", "34.8", "3.48")]
    [InlineData("plan.rod", "570", "5.7")]
    [InlineData("plan.compression", "105", "10.5")]
    [InlineData("plan.compression", "1.05", "10.5")]
    [InlineData("plan.rocker", "15", "1.5")]
    [InlineData("plan.lobe-lift", ".0345", "0.345")]
    [InlineData("plan.lash", ".12", "0.012")]
    [InlineData("plan.highest-speed", "640", "6400")]
    [InlineData("plan.highest-speed", "64000", "6400")]
    [InlineData("port.length", "43", "4.3")]
    [InlineData("port.distance", "17.7", "1.77")]
    [InlineData("section.width", "19.5", "1.95")]
    [InlineData("section.width", "195", "1.95")]
    [InlineData("port.volume", "16.5", "165")]
    [InlineData("port.volume", "1650", "165")]
    [InlineData("wall.thickness", "1.80", "0.18")]
    [InlineData("wall.thickness", "180", "0.18")]
    [InlineData("ball.diameter", "6.25", "0.625")]
    [InlineData("ball.diameter", ".0625", "0.625")]
    [InlineData("probe.reading", "190", "19")]
    [InlineData("sweep.lift", "3.50 in", "0.35 in")]
    [InlineData("sweep.adapter", "40.3", "4.03")]
    public void What_was_meant_is_asked_first(string field, string typed, string? meant, bool taken = false)
    {
        var answer = EntryJudge.Of(Fields[field], typed, UnitSystem.UsCustomary, Known);
        if (taken)
        {
            Assert.IsType<Take>(answer);
            return;
        }

        if (answer is Refuse refused)
        {
            Assert.True(meant is null, refused.Problem);
            Assert.Contains(typed, refused.Problem, StringComparison.Ordinal);
            return;
        }

        var ask = Assert.IsType<Ask>(answer);
        Assert.Equal(meant, ask.Likely.Count > 0 ? ask.Likely[0].Text : null);
        Assert.Contains(typed, ask.Question.Us(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("valve.head", "2.02")]
    [InlineData("valve.head", "1.6")]
    [InlineData("valve.head", "51.3 mm")]
    [InlineData("valve.throat", "1.78")]
    [InlineData("valve.throat", "1.65")]
    [InlineData("valve.seat-angle", "45")]
    [InlineData("valve.seat-angle", "46")]
    [InlineData("valve.seat-angle", "30")]
    [InlineData("valve.seat-angle", "50")]
    [InlineData("valve.seat-width", ".060")]
    [InlineData("valve.seat-width", "1.5 mm")]
    [InlineData("valve.stem", "11/32")]
    [InlineData("valve.stem", "7 mm")]
    [InlineData("room.barometer", "27.8")]
    [InlineData("room.barometer", "940 hPa")]
    [InlineData("room.temperature", "54")]
    [InlineData("room.temperature", "22 C")]
    [InlineData("room.temperature", "101")]
    [InlineData("room.humidity", "12")]
    [InlineData("room.humidity", "97 %")]
    [InlineData("sweep.pressure", "28")]
    [InlineData("sweep.pressure", "10")]
    [InlineData("sweep.pressure", "3")]
    [InlineData("sweep.pressure", "60")]
    [InlineData("sweep.pressure", "25 inH2O")]
    [InlineData("plan.compression", "8.5")]
    [InlineData("plan.rocker", "1")]
    [InlineData("plan.highest-speed", "9500")]
    [InlineData("port.volume", "158")]
    [InlineData("wall.thickness", ".094")]
    [InlineData("ball.diameter", "3/8")]
    [InlineData("sweep.lift", ".700")]
    [InlineData("sweep.lift", "350")]
    public void What_is_right_is_taken(string field, string typed) => Assert.IsType<Take>(EntryJudge.Of(Fields[field], typed, UnitSystem.UsCustomary, Known));

    [Theory]
    [InlineData("valve.head", "2.o2", 2)]
    [InlineData("valve.head", "two", 0)]
    [InlineData("room.humidity", "", -1)]
    public void What_is_no_number_is_refused_with_the_character_named(string field, string typed, int at) =>
        Assert.Equal(at, Assert.IsType<Refuse>(EntryJudge.Of(Fields[field], typed, UnitSystem.UsCustomary, Known)).At);
}
