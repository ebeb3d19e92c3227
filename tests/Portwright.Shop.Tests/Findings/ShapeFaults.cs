using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Findings;

/// <summary>Each fault of shape, seat, curve and plan is made in a port and found in it, with several draws of the noise.</summary>
public sealed class ShapeFaults(ITestOutputHelper output)
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(21, 5)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_pinch_that_speed_balls_and_effective_area_agree_on_is_found(int seed)
    {
        var made = new MadePort(seed) { PortArea = 0.00107 };
        Reshape(made, "C", 0.0262, 0.0425, 0.010);
        var finding = Found(made, "pinch-limits");
        Assert.Equal("The pinch limits the port at C", finding.Title);
        Assert.True(finding.Suggestion!.Gain.Value > 0);
        Assert.True(finding.Behind.Count > 5);
    }

    [Fact]
    public void A_narrow_pinch_whose_floor_lies_idle_is_not_the_limit()
    {
        // The same metal, but the air leaves it: opening what does not work gains nothing.
        var made = new MadePort(22) { PortArea = 0.00107, BallFactor = (s, _) => s == "C" ? 0.2 : 1 };
        Reshape(made, "C", 0.0262, 0.0425, 0.010);
        Assert.DoesNotContain(PortFindings.Of(made.Survey()), f => f.Rule.Key == "pinch-limits");
    }

    [Fact]
    public void A_narrow_pinch_that_passes_little_of_what_it_could_is_not_the_limit()
    {
        var made = new MadePort(23) { PortArea = 0.00075 };
        Reshape(made, "C", 0.0262, 0.0425, 0.010);
        Assert.DoesNotContain(PortFindings.Of(made.Survey()), f => f.Rule.Key == "pinch-limits");
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_throat_over_92_percent_of_the_valve_is_found_and_nothing_is_to_be_cut(int seed)
    {
        var made = Bare(seed);
        made.Valve = made.Valve with { ThroatDiameter = 0.047, SeatWidth = 0.0012 };
        Reshape(made, "F", 0.047, 0.047, 0.0235);
        Reshape(made, "E", 0.0475, 0.0475, 0.02375);
        Assert.Null(Found(made, "throat-too-large").Suggestion);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_throat_under_85_percent_of_the_valve_is_found(int seed)
    {
        var made = Bare(seed);
        made.Valve = made.Valve with { ThroatDiameter = 0.0405 };
        Reshape(made, "F", 0.0405, 0.0405, 0.02025);
        var finding = Found(made, "throat-too-small");
        Assert.Equal("The throat is too small for the valve at F", finding.Title);
        Assert.True(finding.Suggestion!.Gain.Value > 0);
        // Below the lift where the throat takes over it costs nothing.
        Assert.True(finding.Suggestion.FromLift > made.Lifts[1]);
    }

    [Fact]
    public void A_throat_not_measured_as_a_section_is_taken_from_the_valve_card()
    {
        var made = Bare(24);
        made.Valve = made.Valve with { ThroatDiameter = 0.0405 };
        made.Stations.RemoveAll(s => s.Letter == "F");
        var finding = Found(made, "throat-too-small");
        Assert.Null(finding.Station);
        Assert.Contains("as a section", finding.NextObservation.Us(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.925)]
    [InlineData(0.845)]
    public void A_throat_within_the_calipers_doubt_of_the_limit_is_not_stated(double share)
    {
        var made = Bare(25);
        Reshape(made, "F", share * 0.050, share * 0.050, share * 0.025);
        Assert.DoesNotContain(PortFindings.Of(made.Survey()), f => f.Rule.Key.StartsWith("throat", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_seat_that_passes_little_of_its_window_at_low_lift_is_found(int seed)
    {
        var made = Bare(seed);
        made.FlowFactor = lift => 1 - 0.6 * Math.Exp(-Math.Max(0, lift - 0.005) / 0.002);
        var finding = Found(made, "seat-limits-low-lift");
        Assert.True(finding.Suggestion!.ToLift <= 0.1 * made.Valve.HeadDiameter + 1e-6);
        Assert.True(finding.Suggestion.Gain.Value > 0);
    }

    [Fact]
    public void A_port_that_is_poor_all_the_way_up_is_not_blamed_on_the_seat()
    {
        var made = Bare(26);
        made.FlowFactor = _ => 0.78;
        Assert.DoesNotContain(PortFindings.Of(made.Survey()), f => f.Rule.Key == "seat-limits-low-lift");
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_bowl_that_opens_faster_than_air_can_follow_is_found(int seed)
    {
        var made = Bare(seed);
        Reshape(made, "E", 0.054, 0.054, 0.027);
        var finding = Found(made, "bowl-too-large");
        Assert.Equal("The bowl is too large at E", finding.Title);
        Assert.Contains(finding.Behind, id => id != Guid.Empty);
    }

    [Fact]
    public void A_large_bowl_reached_by_a_long_taper_is_left_alone()
    {
        var made = Bare(27);
        Reshape(made, "D", 0.046, 0.054, 0.020);
        Reshape(made, "E", 0.0495, 0.0495, 0.02475);
        Assert.DoesNotContain(PortFindings.Of(made.Survey()), f => f.Rule.Key == "bowl-too-large");
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_kink_in_the_curve_is_a_reading_out_of_line_and_no_sign_of_unsteady_air(int seed)
    {
        var made = Bare(seed);
        made.Lifts = [0.0025, 0.004, 0.0055, 0.0075, 0.009, 0.0105, 0.0125];
        made.FlowFactor = lift => Math.Abs(lift - 0.0075) < 1e-6 ? 0.78 : 1;
        Assert.Null(Found(made, "reading-out-of-line").Suggestion);
        Assert.DoesNotContain(PortFindings.Of(made.Survey()), f => f.Rule.Key == "curve-unsteady");
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Repeats_that_scatter_in_one_band_only_are_found(int seed)
    {
        var made = Bare(seed);
        made.Repeats = 4;
        made.Scatter = lift => Math.Abs(lift - 0.010) < 1e-6 ? 12 : 1;
        Assert.Contains("scatter", Found(made, "curve-unsteady").Sentence.Us(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_whistle_at_every_reading_of_a_band_is_found_and_one_at_a_single_reading_is_not()
    {
        var made = Bare(28);
        made.Sound = lift => lift > 0.006 ? "whistles" : "steady";
        Assert.Contains("whistles", Found(made, "curve-unsteady").Sentence.Us(), StringComparison.Ordinal);
        var once = Bare(28);
        once.Repeats = 1;
        once.Sound = lift => lift > 0.011 ? "whistles" : "steady";
        Assert.DoesNotContain(PortFindings.Of(once.Survey()), f => f.Rule.Key == "curve-unsteady");
    }

    /// <summary>A port with sections and a sweep, without rings, balls and flags.</summary>
    private static MadePort Bare(int seed) => new(seed) { RingsAt = [], Places = [] };

    private static void Reshape(MadePort made, string letter, double width, double height, double corner)
    {
        var at = made.Stations.FindIndex(s => s.Letter == letter);
        made.Stations[at] = made.Stations[at] with { Width = width, Height = height, Corner = corner };
    }

    private Finding Found(MadePort made, string key)
    {
        var port = made.Survey();
        foreach (var any in Catalogue.All.SelectMany(r => r.Look(port)))
        {
            output.WriteLine($"{any.Confidence:F3} {any.Title}: {any.Sentence.Us()} | {any.NextObservation.Us()} | {(any.Suggestion is { } s ? s.What.Us() : "")}");
        }

        return Assert.Single(PortFindings.Of(port), f => f.Rule.Key == key);
    }
}
