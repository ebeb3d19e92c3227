using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Record;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;
using Portwright.Shop.Words;
using Portwright.Shop.Walls;
using static Portwright.Shop.Tests.Metal.MetalOfAPort;

namespace Portwright.Shop.Tests.Metal;

/// <summary>Where metal is at its limit, by how much, how surely, and which measurement of a place counts.</summary>
public sealed class MetalAtItsLimit
{
    // Common practice, no source: the least a shop leaves, in inches.
    [Theory]
    [InlineData("aluminium", Behind.Water, 0.120)]
    [InlineData("aluminium", Behind.Air, 0.100)]
    [InlineData("Cast Iron", Behind.Water, 0.100)]
    [InlineData("cast iron", Behind.Air, 0.080)]
    [InlineData("bronze", Behind.Unknown, 0.120)]
    public void The_usual_limit_is_that_of_the_metal_and_of_what_lies_behind(string material, Behind behind, double inches) =>
        Assert.Equal(inches * Inch, WallLimit.Usual(material, behind), 1e-9);

    /// <summary>Six thousandths over the limit, twice the gauge's doubt, are the edge: .126 in over water, .086 over a limit of .080 that the shop states.</summary>
    [Theory]
    [InlineData(125.9, null, true)]
    [InlineData(126.1, null, false)]
    [InlineData(85.9, 80.0, true)]
    [InlineData(86.1, 80.0, false)]
    [InlineData(20, null, true)]
    [InlineData(500, null, false)]
    public void A_cut_stops_where_the_gauges_doubt_leaves_no_metal(double thousandths, double? limit, bool stops)
    {
        var port = Of([("D", 6, thousandths * Thou, 0)], limit: limit is { } own ? Typed.Of(own * Thou, "m") : null);
        Assert.Equal(stops, Assert.Single(port.Stations.SelectMany(s => s.Walls)).Stops);
        Assert.Equal(stops, PortFindings.Guarded(Cut(port, "D", 6), port).Suggestion is null);
        Assert.Equal(stops, new ThinMetal().Look(port).Any());
    }

    /// <summary>
    /// The gauge's doubt is 3 thousandths. With 5 left the chance that fewer than 12 are is that of a normal deviate under 7/3: .9902 in any table;
    /// with none left that of one under 4.
    /// </summary>
    [Theory]
    [InlineData(125, 0.99018)]
    [InlineData(120, 0.99997)]
    public void Thin_metal_is_as_sure_as_the_gauge(double thousandths, double chance) =>
        Assert.Equal(chance, Assert.Single(new ThinMetal().Look(Of(("D", 6, thousandths * Thou)))).Confidence, 2e-5);

    [Fact]
    public void A_shops_own_limit_is_told_from_the_usual_one()
    {
        Assert.Contains("limit .120 in (common practice).", Assert.Single(new ThinMetal().Look(Of(("D", 6, Thin)))).Sentence.Us(), StringComparison.Ordinal);
        Assert.Contains("limit .100 in.", Assert.Single(new ThinMetal().Look(Of([("D", 6, Thin, 0)], limit: Typed.Of(100 * Thou, "m")))).Sentence.Us(), StringComparison.Ordinal);
    }

    /// <summary>The same place measured twice is one place, the later reading counts: within an eighth of an hour to each side of a quarter.</summary>
    [Theory]
    [InlineData(6, 6.12, 1)]
    [InlineData(6, 5.88, 1)]
    [InlineData(6, 6.13, 2)]
    [InlineData(6, 6.25, 2)]
    [InlineData(6, 5.87, 2)]
    public void Places_closer_than_a_quarter_of_an_hour_are_one(double first, double second, int places) =>
        Assert.Equal(places, Of(("D", first, Thin), ("D", second, Sound)).Stations.Sum(s => s.Walls.Count));

    [Fact]
    public void The_latest_reading_of_a_place_counts()
    {
        Assert.False(Assert.Single(Of(("D", 6, Thin), ("D", 6, Sound)).Stations.SelectMany(s => s.Walls)).Stops);
        // Written down later, but of the cut before.
        Assert.True(Assert.Single(Of([("D", 6, Thin, 1), ("D", 6, Sound, 0)], cuts: 1).Stations.SelectMany(s => s.Walls)).Stops);
        Assert.Equal(1, Assert.Single(Of([("D", 6, Sound, 0), ("D", 6, Thin, 1)], cuts: 1).Stations.SelectMany(s => s.Walls)).MeasuredAt);
    }

    /// <summary>Metal found thin stays thin after the next cut; what is found later says nothing of the port before.</summary>
    [Fact]
    public void Thin_metal_stops_the_cuts_after_it_and_none_before()
    {
        Assert.True(Assert.Single(Of([("D", 6, Thin, 0)], cuts: 1).Stations.SelectMany(s => s.Walls)).Stops);
        Assert.Empty(Of([("D", 6, Thin, 1)], cuts: 1, at: 0).Stations.SelectMany(s => s.Walls));
    }

    /// <summary>A finding is stated from nine chances in ten on.</summary>
    [Theory]
    [InlineData(0.9, true)]
    [InlineData(0.91, true)]
    [InlineData(0.89, false)]
    public void What_is_less_sure_than_nine_in_ten_is_not_stated(double chance, bool stated) => Assert.Equal(stated, PortFindings.Stated([Said(chance)]).Count == 1);

    /// <summary>A measurement in doubt comes before thin metal, thin metal before a cut; of one kind the surest first.</summary>
    [Fact]
    public void What_stands_is_read_in_the_order_it_matters()
    {
        Finding sure = Said(0.99), unsure = Said(0.92), stop = Said(0.91, kind: FindingKind.Stop), measurement = Said(0.9, kind: FindingKind.Measurement);
        Assert.Equal([measurement, stop, sure, unsure], PortFindings.Stated([unsure, stop, sure, measurement]));
    }
}
