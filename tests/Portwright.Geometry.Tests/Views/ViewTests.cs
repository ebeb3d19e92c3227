using CsCheck;
using Portwright.Geometry.Views;

namespace Portwright.Geometry.Tests.Views;

public sealed class ViewTests
{
    public static TheoryData<SeenFrom, Lying, bool> Every
    {
        get
        {
            var data = new TheoryData<SeenFrom, Lying, bool>();
            foreach (var v in View.All) data.Add(v.SeenFrom, v.Lying, v.Mirrored);
            return data;
        }
    }

    // Where roof (12), centre side (3), floor (6) and cylinder-wall side (9) stand on the screen's clock, worked out by hand with a head on the bench.
    [Theory]
    [InlineData(SeenFrom.Flange, Lying.Upright, false, 12, 3, 6, 9)]
    [InlineData(SeenFrom.Flange, Lying.Upright, true, 12, 9, 6, 3)]
    [InlineData(SeenFrom.Flange, Lying.Inverted, false, 6, 9, 12, 3)]
    [InlineData(SeenFrom.Flange, Lying.Inverted, true, 6, 3, 12, 9)]
    [InlineData(SeenFrom.Chamber, Lying.Upright, false, 12, 9, 6, 3)]
    [InlineData(SeenFrom.Chamber, Lying.Upright, true, 12, 3, 6, 9)]
    [InlineData(SeenFrom.Chamber, Lying.Inverted, false, 6, 3, 12, 9)]
    [InlineData(SeenFrom.Chamber, Lying.Inverted, true, 6, 9, 12, 3)]
    public void The_four_walls_stand_where_the_eye_sees_them(SeenFrom seen, Lying lying, bool mirrored, double roof, double centre, double floor, double wall)
    {
        var view = new View(seen, lying, mirrored);
        Assert.Equal([roof, centre, floor, wall], new double[] { 12, 3, 6, 9 }.Select(view.ToScreen));
    }

    [Fact]
    public void There_are_eight_ways_to_see_a_port_and_four_pictures()
    {
        Assert.Equal(8, View.All.Distinct().Count());
        Assert.Equal(4, View.All.Select(v => (v.ToScreen(12), v.ToScreen(3))).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void What_is_touched_on_the_screen_lands_in_the_metal_it_shows(SeenFrom seen, Lying lying, bool mirrored)
    {
        var view = new View(seen, lying, mirrored);
        Gen.Double[0.01, 12].Sample(hours =>
        {
            Assert.Equal(hours, view.ToRecord(view.ToScreen(hours)), 1e-9);
            Assert.Equal(hours, view.ToScreen(view.ToRecord(hours)), 1e-9);
        });
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void A_reading_touched_in_one_view_is_the_same_metal_in_every_other(SeenFrom seen, Lying lying, bool mirrored)
    {
        // The same port (mirrored or not) seen every other way: whichever way it was entered, the record holds one bearing.
        var entered = new View(seen, lying, mirrored);
        Gen.Double[0.01, 12].Sample(metal =>
        {
            foreach (var other in View.All.Where(v => v.Mirrored == mirrored))
            {
                var recorded = entered.ToRecord(entered.ToScreen(metal));
                var shown = other.ToScreen(recorded);
                Assert.Equal(metal, other.ToRecord(shown), 1e-9);
                Assert.Equal(ViewWords.Metal(metal), ViewWords.Metal(other.ToRecord(shown)));
            }
        });
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void Bearing_and_drawing_agree_in_every_view(SeenFrom seen, Lying lying, bool mirrored)
    {
        var view = new View(seen, lying, mirrored);
        Gen.Select(Outlines.SeenWhole, Gen.Double[0.01, 12]).Sample((outline, hours) =>
        {
            var onScreen = view.ToScreen(outline.WallAt(hours)) - view.ToScreen(outline.BearingCentre);
            var apart = Bearing.Of(onScreen) - view.ToScreen(hours);
            Assert.Equal(0, Math.Sin(apart * Math.PI / 12), 1e-6);
            Assert.Equal(outline.WallAt(hours), view.ToRecord(view.ToScreen(outline.WallAt(hours))));
        });
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void Turning_over_or_going_round_twice_changes_nothing_and_the_order_does_not_matter(SeenFrom seen, Lying lying, bool mirrored)
    {
        var view = new View(seen, lying, mirrored, "left head", 3, true);
        Assert.Equal(view, view.TurnedOver().TurnedOver());
        Assert.Equal(view, view.FromOtherEnd().FromOtherEnd());
        Assert.Equal(view.TurnedOver().FromOtherEnd(), view.FromOtherEnd().TurnedOver());
        Gen.Double[0.01, 12].Sample(hours =>
        {
            Assert.Equal(Bearing.Clock(view.ToScreen(hours) + 6), view.TurnedOver().ToScreen(hours), 1e-9);
            Assert.Equal(Bearing.Clock(-view.ToScreen(hours)), view.FromOtherEnd().ToScreen(hours), 1e-9);
        });
    }

    [Fact]
    public void A_view_of_the_port_and_of_its_mirror_twin_show_each_other_reversed() =>
        Gen.Select(Gen.Int[0, 7].Select(i => View.All[i]), Gen.Double[0.01, 12]).Sample((view, hours) =>
            Assert.Equal(Bearing.Clock(-view.ToScreen(hours)), (view with { Mirrored = !view.Mirrored }).ToScreen(hours), 1e-9));

    [Theory]
    [InlineData(SeenFrom.Flange, Lying.Upright, false, 3, "centre side, right on the screen")]
    [InlineData(SeenFrom.Chamber, Lying.Upright, false, 3, "centre side, left on the screen")]
    [InlineData(SeenFrom.Flange, Lying.Inverted, false, 12, "roof, bottom on the screen")]
    [InlineData(SeenFrom.Flange, Lying.Upright, true, 9, "cylinder-wall side, right on the screen")]
    [InlineData(SeenFrom.Flange, Lying.Upright, false, 1.5, "between roof and centre side, top right on the screen")]
    [InlineData(SeenFrom.Chamber, Lying.Inverted, false, 4.5, "between centre side and floor, top right on the screen")]
    [InlineData(SeenFrom.Flange, Lying.Upright, false, 10.5, "between cylinder-wall side and roof, top left on the screen")]
    [InlineData(SeenFrom.Flange, Lying.Upright, false, 11.6, "roof, top on the screen")]
    public void A_place_is_said_in_words(SeenFrom seen, Lying lying, bool mirrored, double hours, string words) =>
        Assert.Equal(words, new View(seen, lying, mirrored).Describe(hours));

    [Fact]
    public void A_view_is_said_in_words()
    {
        Assert.Equal("from the flange, head upright", new View().Describe());
        Assert.Equal("left head, cylinder 3, end port, from the chamber, head inverted, mirrored port",
            new View(SeenFrom.Chamber, Lying.Inverted, true, "left head", 3, true).Describe());
    }

    [Theory]
    [InlineData(0, 12)]
    [InlineData(12, 12)]
    [InlineData(-1.5, 10.5)]
    [InlineData(27, 3)]
    public void Hours_wrap_round_the_clock(double hours, double clock) => Assert.Equal(clock, Bearing.Clock(hours));
}
