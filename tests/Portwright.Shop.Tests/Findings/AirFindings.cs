using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Findings;

/// <summary>Findings about where the air is: each fires on a port made with its fault, at the station and bearing that has it.</summary>
public sealed class AirFindings(ITestOutputHelper output)
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(21, 6)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_floor_without_air_is_lazy_by_the_probe(int seed)
    {
        var port = new MadePort(seed) { SpeedFactor = (s, _, y) => s == "C" && y < -0.2 ? 0.55 : 1, Places = [] };
        var found = Sure(port, "lazy-floor-or-corner");
        Assert.Equal("The floor is lazy at C", found.Title);
        Assert.InRange(found.Bearing!.Value, 4, 8);
        Assert.Contains("Hold a ball", found.NextObservation.Us(), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_floor_without_air_is_lazy_by_the_ball_alone(int seed)
    {
        var port = new MadePort(seed) { BallFactor = (s, b) => s == "C" && b == 6 ? 0.05 : 1, RingsAt = [] };
        var found = Sure(port, "lazy-floor-or-corner");
        Assert.Equal(("C", 6), (found.Station!.Fact.Letter, found.Bearing!.Value));
    }

    [Fact]
    public void A_lazy_place_is_left_or_filled_and_thin_metal_under_it_does_not_forbid_that()
    {
        var port = new MadePort(3) { SpeedFactor = (s, _, y) => s == "C" && y < -0.2 ? 0.55 : 1, Wall = (_, _) => 0.0254 * 0.090 };
        var found = Sure(port, "lazy-floor-or-corner");
        Assert.Null(found.Suggestion);
        Assert.StartsWith("Take nothing out at C", found.Instead.Us(), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Air_torn_off_the_short_side_is_not_called_a_lazy_floor(int seed)
    {
        var port = new MadePort(seed)
        {
            BallFactor = (s, b) => s == "D" && b == 6 ? -0.4 : 1,
            Flag = (s, b) => s == "D" && b == 6 ? Steadiness.TurnsBack : Steadiness.Still,
        };
        Assert.Equal(["short-side-torn-off"], PortFindings.Of(port.Survey()).Select(f => f.Rule.Key));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_roof_that_carries_the_air_is_busy(int seed)
    {
        var port = new MadePort(seed) { SpeedFactor = (s, _, y) => s == "B" && y > 0.4 ? 2 : 1 };
        Assert.Equal("The roof is busy at B", Sure(port, "busy-roof").Title);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_roof_that_costs_the_ball_more_than_its_speed_is_busy(int seed)
    {
        var port = new MadePort(seed) { BallFactor = (s, b) => s == "C" && b == 12 ? 3.2 : 1, RingsAt = [] };
        Assert.Equal(("C", 12), Place(Sure(port, "busy-roof")));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Slow_air_on_the_roof_of_the_bend_is_the_boss_wake(int seed)
    {
        var port = new MadePort(seed) { SpeedFactor = (s, x, y) => s == "D" && y > 0.2 && Math.Abs(x) < 0.5 ? 0.5 : 1 };
        var found = Sure(port, "guide-boss-wake");
        Assert.Equal(("D", 12), Place(found));
        Assert.Contains("boss", found.Suggestion!.What.Us(), StringComparison.Ordinal);
    }

    [Fact]
    public void Flags_that_swing_behind_the_boss_add_to_a_ball_that_loses_little_there()
    {
        Steadiness Swings(string s, double b) => s == "E" && Walls.WallState.Apart(b, 12) < 1 ? Steadiness.Swings : Steadiness.Still;
        MadePort With(Func<string, double, Steadiness> flag) => new(4)
        {
            Places = [.. new MadePort(4).Places, ("E", 12), ("E", 11.5)],
            BallFactor = (s, b) => s == "E" && Walls.WallState.Apart(b, 12) < 1 ? 0.35 : 1,
            RingsAt = [],
            Flag = flag,
        };
        Assert.Empty(Of(With((_, _) => Steadiness.Still), "guide-boss-wake"));
        Assert.Single(Of(With(Swings), "guide-boss-wake"));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Fast_air_that_still_follows_the_short_side_makes_it_too_tight(int seed)
    {
        var port = new MadePort(seed) { SpeedFactor = (s, _, y) => s == "D" && y < -0.4 ? 2.8 : 1 };
        Assert.Equal("The short side is too fast at D", Sure(port, "short-side-too-fast").Title);
    }

    [Fact]
    public void Fast_air_that_left_the_short_side_is_not_called_too_fast()
    {
        var port = new MadePort(5)
        {
            SpeedFactor = (s, _, y) => s == "D" && y < -0.4 ? 1.9 : 1,
            BallFactor = (s, b) => s == "D" && b == 6 ? -0.3 : 1,
        };
        Assert.Empty(Of(port, "short-side-too-fast"));
        Assert.Single(Of(port, "short-side-torn-off"));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_port_biased_to_the_centre_has_uneven_sides(int seed)
    {
        var port = new MadePort(seed) { SpeedFactor = (s, x, _) => s == "C" ? 1 + 0.25 * Math.Tanh(4 * x) : 1 };
        var found = Sure(port, "uneven-sides");
        Assert.Equal(("C", 3), Place(found));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_ball_that_costs_three_times_as_much_at_the_cylinder_wall_tells_it_without_a_ring(int seed)
    {
        var port = new MadePort(seed) { RingsAt = [], BallFactor = (s, b) => s == "D" ? b == 9 ? 4 : b == 3 ? 0.8 : 1 : 1 };
        Assert.Equal(("D", 9), Place(Sure(port, "uneven-sides")));
    }

    private static (string, double) Place(Finding found) => (found.Station!.Fact.Letter, found.Bearing!.Value);

    private static List<Finding> Of(MadePort made, string key) => [.. PortFindings.Of(made.Survey()).Where(f => f.Rule.Key == key)];

    private Finding Sure(MadePort made, string key)
    {
        var port = made.Survey();
        foreach (var f in PortFindings.Of(port))
        {
            output.WriteLine($"{f.Title} ({f.Confidence:F3}): {f.Sentence.Us()} {f.NextObservation.Us()} {f.Suggestion?.What}");
        }

        var found = Assert.Single(PortFindings.Of(port), f => f.Rule.Key == key);
        Assert.InRange(found.Confidence, Confidence.Stated, 1);
        Assert.NotEmpty(found.Behind);
        Assert.NotEmpty(found.NextObservation.Us());
        Assert.True(found.Suggestion is null or { Gain: { Value: > 0, StandardUncertainty: > 0 } });
        return found;
    }
}
