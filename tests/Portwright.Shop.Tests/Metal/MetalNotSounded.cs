using Portwright.Shop.Diagnosis;
using Portwright.Shop.Record;
using Portwright.Shop.Tests.Words;
using static Portwright.Shop.Tests.Metal.MetalOfAPort;

namespace Portwright.Shop.Tests.Metal;

/// <summary>A wall nobody sounded is never counted as thick, nor one sounded before the last cut.</summary>
public sealed class MetalNotSounded
{
    private static readonly (string, double, double, int)[] AllRoundD = [.. new[] { 12.0, 3, 6, 9 }.Select(h => ("D", h, Sound, 0))];

    [Fact]
    public void Metal_sounded_at_this_cut_where_the_cut_goes_asks_for_nothing()
    {
        Assert.Equal("", First("D", 6, [("D", 6, Sound, 0)]));
        Assert.Equal("", First("D", null, AllRoundD));
    }

    [Fact]
    public void Metal_nobody_sounded_is_sounded_first()
    {
        Assert.Equal("Sound the metal at D, 6 o'clock (floor) first: no thickness is known there at this cut.", First("D", 6, []));
        Assert.Equal("Sound the metal at D, all round first: no thickness is known there at this cut.", First("D", null, []));
    }

    /// <summary>Sounded within the cut's reach is sounded: 1.5 hours from 6 o'clock are 7:30.</summary>
    [Theory]
    [InlineData(7.5, true)]
    [InlineData(7.6, false)]
    [InlineData(4.5, true)]
    [InlineData(4.4, false)]
    [InlineData(12, false)]
    public void A_place_sounded_within_the_cuts_reach_is_known(double sounded, bool known) => Assert.Equal(known, First("D", 6, [("D", sounded, Sound, 0)]).Length == 0);

    /// <summary>A cut at an hour asks for that hour alone; a cut all round for each quarter.</summary>
    [Theory]
    [InlineData(12)]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(9)]
    public void A_cut_all_round_wants_every_quarter_sounded(double missing)
    {
        var three = AllRoundD.Where(p => p.Item2 != missing).ToArray();
        Assert.StartsWith("Sound the metal at D, all round", First("D", null, three), StringComparison.Ordinal);
        Assert.StartsWith("Sound the metal at D, ", First("D", missing, three), StringComparison.Ordinal);
        Assert.Equal("", First("D", (missing + 6) % 12 is 0 ? 12 : (missing + 6) % 12, three));
    }

    /// <summary>The stations beside it are blended into: thin metal there stops the cut, but sounding is asked for where the cut goes.</summary>
    [Fact]
    public void The_metal_beside_a_cut_need_not_be_sounded_first() => Assert.Equal("", First("D", 6, [("D", 6, Sound, 0)]));

    [Fact]
    public void The_metal_beside_a_cut_does_not_stand_for_its_own() => Assert.NotEqual("", First("D", 6, [("C", 6, Sound, 0), ("E", 6, Sound, 0)]));

    /// <summary>Every one of throat and bowl is asked for where a cut is made in them.</summary>
    [Fact]
    public void A_cut_in_throat_and_bowl_asks_for_each_that_is_not_sounded()
    {
        (string, double, double, int)[] throat = [.. new[] { 12.0, 3, 6, 9 }.Select(h => ("F", h, Sound, 0))], bowl = [.. throat.Select(p => ("E", p.Item2, p.Item3, 0))];
        Assert.StartsWith("Sound the metal at E and F, all round", First(null, null, []), StringComparison.Ordinal);
        Assert.StartsWith("Sound the metal at E, all round", First(null, null, throat), StringComparison.Ordinal);
        Assert.StartsWith("Sound the metal at F, all round", First(null, null, bowl), StringComparison.Ordinal);
        Assert.Equal("", First(null, null, [.. throat, .. bowl]));
    }

    [Fact]
    public void Where_throat_and_bowl_are_no_stations_the_metal_there_is_sounded_first()
    {
        var port = Of([], s => StationRole.Other);
        Assert.Equal("Sound the metal there first: no thickness is known.", PortFindings.Guarded(Cut(port, null), port).Suggestion!.SoundFirst.Us());
    }

    /// <summary>Metal sounded as received says nothing once a cut went over it; sounded at the cut itself it does.</summary>
    [Fact]
    public void Metal_sounded_before_the_last_cut_is_sounded_again()
    {
        Assert.StartsWith("Sound the metal at D", First("D", 6, [("D", 6, Sound, 0)], cuts: 1), StringComparison.Ordinal);
        Assert.StartsWith("Sound the metal at D", First("D", 6, [("D", 6, Sound, 1)], cuts: 2), StringComparison.Ordinal);
        Assert.Equal("", First("D", 6, [("D", 6, Sound, 1)], cuts: 1));
    }

    [Fact]
    public void A_finding_that_cuts_nothing_is_left_as_it_is()
    {
        var port = Of([("D", 6, Thin, 0)]);
        var said = Said(0.95, port.Stations.Single(s => s.Letter == "D").Station, 6);
        Assert.Same(said, PortFindings.Guarded(said, port));
    }

    private static string First(string? cut, double? bearing, (string, double, double, int)[] points, int cuts = 0)
    {
        var port = Of(points, cuts: cuts);
        return PortFindings.Guarded(Cut(port, cut, bearing), port).Suggestion!.SoundFirst.Us();
    }
}
