using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Tests.Reduction;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Trials;

/// <summary>What a morning reads, box after box; and the pressure typed with a reading.</summary>
public sealed class MorningRuns
{
    private static readonly BenchCard Card = new(
        "bench", [Range("2"), Range("4")], [new("A", 0.001, 0), new("B", 0.0005, 0)], new AirCard(), 28 * UnitFactors.InchOfWater, BenchDoubt.Unknown);

    [Fact]
    public void The_first_time_it_is_everything_on_the_card_in_its_order() =>
        Says("leak 2, leak 4, A 2, A 4, B 2, B 4 at 28", MorningRun.Of(Card, null));

    [Fact]
    public void Pressures_named_make_it_anew()
    {
        var run = MorningRun.Of(Card, Check(Read("", "2", 28)), [Typed.Of(28, "inH2O"), Typed.Of(15, "inH2O")]);
        Assert.Equal((12, 0), (run.Steps.Count, run.Besides.Count));
        Assert.Equal(["28 inH2O", "15 inH2O"], run.Steps.Take(2).Select(s => s.TestPressure.Text));
        Assert.Equal(4, run.Steps.TakeWhile(s => s.Plate is null).Count());
    }

    [Fact]
    public void After_that_it_is_what_the_last_check_read_and_the_rest_stands_beside()
    {
        var run = MorningRun.Of(Card, Check(Read("", "4", 28), Read("B", "4", 28), Read("B", "4", 28), Read("A", "2", 28)));
        Assert.Equal("leak 4, B 4, B 4, A 2", Words(run.Steps));
        Assert.Equal("leak 2, A 4, B 2", Words(run.Besides));
    }

    [Fact]
    public void What_is_gone_from_the_card_is_not_asked_for() =>
        Assert.Equal("leak 4", Words(MorningRun.Of(Card, Check(Read("", "4", 28), Read("C", "4", 28), Read("A", "7", 28))).Steps));

    [Theory]
    [InlineData("27.9", null, typeof(Take))]
    [InlineData("15", null, typeof(Take))] // Ports are tested at that, here or elsewhere.
    [InlineData("279", null, typeof(Ask))]
    [InlineData("2.79", null, typeof(Ask))]
    [InlineData("2.5", 3, typeof(Take))] // The pass asks for it.
    [InlineData("2.5", 1, typeof(Ask))]
    [InlineData("x", null, typeof(Refuse))]
    public void A_pressure_typed_with_a_reading_is_held_against_what_its_pass_asks(string text, int? pass, Type answer)
    {
        var sweep = TestRun.Of(RunWalks.Lifts(.1, .2), PassPattern.UpAndDown, [new(RunWalks.Lifts(.1), Typed.Of(2.5, "inH2O"))]).On(RunWalks.Plain());
        Assert.IsType(answer, ReadingPressure.Of(sweep, pass, text, UnitSystem.UsCustomary));
    }

    [Fact]
    public void No_pressure_is_the_sweeps() => Assert.Null(ReadingPressure.Of(RunWalks.Plain(), null, " ", UnitSystem.UsCustomary));

    [Fact]
    public void The_point_left_out_of_a_pressure_is_offered_first() =>
        Assert.Equal("27.9", Assert.IsType<Ask>(ReadingPressure.Of(RunWalks.Plain(), null, "279", UnitSystem.UsCustomary)).Likely[0].Text);

    private static RangeCard Range(string name) => Ranges.OfEachKind[3] with { Name = name };

    private static PlateReading Read(string plate, string range, double water) => new(plate, range, Typed.Of(30, "%"), Typed.Of(water, "inH2O"));

    private static MorningCheck Check(params PlateReading[] readings) => new(
        Guid.NewGuid(), new DateOnly(2026, 3, 2), new RoomAir(Typed.Of(29.92, "inHg"), Typed.Of(68, "°F"), null), readings[0], readings[1..]);

    private static string Words(IEnumerable<CheckStep> steps) => string.Join(", ", steps.Select(s => $"{s.Plate ?? "leak"} {s.Range}"));

    private static void Says(string words, MorningRun run)
    {
        Assert.Equal(words, $"{Words(run.Steps)} at {run.Steps[0].TestPressure.Si(Dimension.Pressure) / UnitFactors.InchOfWater:0}");
        Assert.Empty(run.Besides);
    }
}
