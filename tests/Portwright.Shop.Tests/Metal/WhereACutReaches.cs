using Portwright.Shop.Diagnosis;
using Portwright.Shop.Record;
using static Portwright.Shop.Tests.Metal.MetalOfAPort;

namespace Portwright.Shop.Tests.Metal;

/// <summary>Thin metal stops every cut that reaches it, and no other: along the port, round the port, and where nobody said what a place is.</summary>
public sealed class WhereACutReaches
{
    /// <summary>A cut all round a section stays in that section; the first one too.</summary>
    [Theory]
    [InlineData("A", "A", true)]
    [InlineData("A", "B", false)]
    [InlineData("A", "E", false)]
    [InlineData("A", "F", false)]
    [InlineData("C", "C", true)]
    [InlineData("C", "B", false)]
    [InlineData("C", "D", false)]
    [InlineData("F", "F", true)]
    [InlineData("F", "E", false)]
    public void A_cut_all_round_a_section_is_stopped_by_that_section_alone(string cut, string thin, bool stopped) => Assert.Equal(stopped, Stopped(cut, null, (thin, 6)));

    /// <summary>A cut at an hour is blended out one station to each side.</summary>
    [Theory]
    [InlineData("A", "A", true)]
    [InlineData("A", "B", true)]
    [InlineData("A", "C", false)]
    [InlineData("A", "E", false)]
    [InlineData("D", "C", true)]
    [InlineData("D", "D", true)]
    [InlineData("D", "E", true)]
    [InlineData("D", "B", false)]
    [InlineData("D", "F", false)]
    public void A_cut_at_an_hour_reaches_the_stations_beside_it(string cut, string thin, bool stopped) => Assert.Equal(stopped, Stopped(cut, 6, (thin, 6)));

    [Theory]
    [InlineData(1.5, 7.5, true)]
    [InlineData(1.5, 7.55, false)]
    [InlineData(1.5, 4.5, true)]
    [InlineData(1.5, 4.45, false)]
    [InlineData(2.5, 8.5, true)]
    [InlineData(2.5, 8.55, false)]
    [InlineData(2.5, 12, false)]
    public void A_cut_reaches_as_many_hours_round_as_it_says(double reach, double thin, bool stopped) => Assert.Equal(stopped, Stopped("D", 6, ("D", thin), reach));

    [Fact]
    public void A_cut_across_twelve_reaches_both_sides_of_it()
    {
        Assert.True(Stopped("D", 12, ("D", 1)));
        Assert.True(Stopped("D", 12, ("D", 11)));
        Assert.True(Stopped("D", 11.5, ("D", 0.5)));
        Assert.False(Stopped("D", 11.5, ("D", 1.5)));
    }

    /// <summary>A cut of the seat or throat names no station: it is made in throat and bowl, at whatever hour the metal is thin.</summary>
    [Theory]
    [InlineData("F", true)]
    [InlineData("E", true)]
    [InlineData("D", false)]
    [InlineData("C", false)]
    [InlineData("A", false)]
    public void A_cut_without_a_station_is_made_in_throat_and_bowl(string thin, bool stopped)
    {
        Assert.Equal(stopped, Stopped(null, null, (thin, 12)));
        Assert.Equal(stopped, Stopped(null, null, (thin, 6)));
    }

    /// <summary>What nothing names may be throat or bowl where those lie: in the bend or past it, never along the straight.</summary>
    [Theory]
    [InlineData("B", 0.022, false)]
    [InlineData("B", 0.059, false)]
    [InlineData("B", 0.061, true)]
    [InlineData("B", 0.109, true)]
    [InlineData("B", 0.110, true)]
    [InlineData("B", 0.118, true)]
    public void A_place_that_nothing_names_is_counted_in_where_throat_and_bowl_lie(string letter, double distance, bool counted)
    {
        var port = Moved(letter, distance, null);
        Assert.Equal(counted, port.IsUnsure(port.Stations.Single(s => s.Letter == letter)));
        Assert.Equal(counted, port.PerhapsThroatOrBowl.Any(s => s.Letter == letter));
    }

    [Theory]
    [InlineData(StationRole.Other, false)]
    [InlineData(StationRole.Flange, false)]
    [InlineData(StationRole.Pinch, false)]
    [InlineData(StationRole.ShortSide, false)]
    [InlineData(StationRole.Guide, false)]
    [InlineData(StationRole.Bowl, true)]
    [InlineData(StationRole.Throat, true)]
    public void A_place_in_the_bend_that_is_named_is_what_it_is_named(StationRole role, bool counted)
    {
        var port = Moved("B", 0.080, role);
        Assert.False(port.IsUnsure(port.Stations.Single(s => s.Letter == "B")));
        Assert.Equal(counted, port.PerhapsThroatOrBowl.Any(s => s.Letter == "B"));
    }

    /// <summary>Hours go round: from 11 to 1 is two, and no two are further apart than six.</summary>
    [Theory]
    [InlineData(11, 1, 2)]
    [InlineData(1, 11, 2)]
    [InlineData(12, 6, 6)]
    [InlineData(12, 0.5, 0.5)]
    [InlineData(13, 0.5, 0.5)]
    [InlineData(3, 9.5, 5.5)]
    [InlineData(7, 7, 0)]
    public void Hours_are_counted_the_short_way_round(double one, double other, double apart) =>
        Assert.Equal(apart, Portwright.Shop.Walls.WallState.Apart(one, other), 1e-12);

    private static bool Stopped(string? cut, double? bearing, (string Letter, double Bearing) thin, double reach = 1.5)
    {
        var port = Of((thin.Letter, thin.Bearing, Thin));
        return PortFindings.Guarded(Cut(port, cut, bearing, reach), port).Suggestion is null;
    }

    private static Survey.PortSurvey Moved(string letter, double distance, StationRole? role) => Of([], s => s == letter ? role : null, change: made =>
    {
        var at = made.Stations.FindIndex(s => s.Letter == letter);
        made.Stations[at] = made.Stations[at] with { Distance = distance, Mark = "" };
    });
}
