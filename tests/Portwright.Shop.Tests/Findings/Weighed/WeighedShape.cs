using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Findings.Weighed;

/// <summary>What shape, seat and plan say: from healthy to faulty, what each rule says of it.</summary>
public sealed class WeighedShape
{
    /// <summary>Width of the pinch, m.</summary>
    [Theory]
    [InlineData(0.0255, "0.9957 C 4.29 2.302 6.25 12.5")]
    [InlineData(0.0275, "0.7732 C 3.027 1.591 6.25 12.5")]
    [InlineData(0.029, "0.2999 C 2.048 1.059 6.25 12.5")]
    [InlineData(0.031, "0.01612 C 0.7073 0.3579 6.25 12.5")]
    public void A_narrow_pinch_that_works_limits_the_port(double size, string said) => Weighing.Says(said, Reshaped(new MadePort(21) { PortArea = 0.00107, RingsAt = [] }, "C", size, 0.0425, 0.010), "pinch-limits", "C");

    /// <summary>Effective area of the port, m2.</summary>
    [Theory]
    [InlineData(0.0009, "0.2712 C 4.479 2.407 6.25 12.5")]
    [InlineData(0.00098, "0.7422 C 4.176 2.235 6.25 12.5")]
    [InlineData(0.00105, "0.9512 C 3.93 2.096 6.25 12.5")]
    public void A_pinch_that_passes_little_of_what_it_could_does_not(double size, string said) => Weighing.Says(said, Reshaped(new MadePort(23) { PortArea = size, RingsAt = [] }, "C", 0.0262, 0.0425, 0.010), "pinch-limits", "C");

    /// <summary>Loss of the balls in the pinch.</summary>
    [Theory]
    [InlineData(0.5, "0.7265 C 3.863 2.058 6.25 12.5")]
    [InlineData(0.65, "0.9623 C 3.863 2.058 6.25 12.5")]
    [InlineData(0.8, "0.9728 C 3.863 2.058 6.25 12.5")]
    public void A_pinch_whose_air_left_it_does_not(double size, string said) => Weighing.Says(said, Reshaped(new MadePort(22) { PortArea = 0.00107, RingsAt = [], BallFactor = (s, _) => s == "C" ? size : 1 }, "C", 0.0262, 0.0425, 0.010), "pinch-limits", "C");

    /// <summary>Throat over valve.</summary>
    [Theory]
    [InlineData(0.82, "1 F 3.76 1.656 11.03 12.5")]
    [InlineData(0.84, "0.8995 F 2.651 1.149 11.03 12.5")]
    [InlineData(0.85, "0.5 F 2.08 0.8939 11.03 12.5")]
    [InlineData(0.86, "0.1006 F 1.498 0.6384 11.03 12.5")]
    [InlineData(0.875, "0.0001054 F 0.6068 0.2551 11.03 12.5")]
    public void A_throat_is_small_under_85_percent_of_the_valve(double size, string said) => Weighing.Says(said, Throat(size), "throat-too-small", "F");

    /// <summary>Throat over valve, by the card.</summary>
    [Theory]
    [InlineData(0.83, "1 3.637 1.599 9.915 12.5")]
    [InlineData(0.845, "0.75 2.582 1.118 10.24 12.5")]
    [InlineData(0.86, "0.01577 1.574 0.6716 10.58 12.5")]
    public void A_throat_written_on_the_card_is_small_alike(double size, string said) => Weighing.Says(said, Written(size), "throat-too-small");

    /// <summary>Throat over valve.</summary>
    [Theory]
    [InlineData(0.9, "0.002245 F")]
    [InlineData(0.92, "0.5 F")]
    [InlineData(0.925, "0.7287 F")]
    [InlineData(0.94, "0.9977 F")]
    public void A_throat_is_large_over_92_percent_of_the_valve(double size, string said) => Weighing.Says(said, Throat(size), "throat-too-large", "F");

    /// <summary>Share the seat passes less.</summary>
    [Theory]
    [InlineData(0, "0.008848 0.4082 0.1727 2.5 5")]
    [InlineData(0.12, "0.04231 1.895 0.8557 2.5 5")]
    [InlineData(0.25, "0.3074 2.164 1.003 2.5 5")]
    [InlineData(0.35, "0.7222 1.818 0.8398 2.5 5")]
    public void A_seat_that_passes_little_at_low_lift_is_poor(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], FlowFactor = l => 1 - size * Math.Exp(-Math.Max(0, l - 0.005) / 0.002) }, "seat-limits-low-lift");

    /// <summary>The same, against three sisters.</summary>
    [Theory]
    [InlineData(0.03, "0.03689 0.9156 0.3954 2.5 5")]
    [InlineData(0.06, "0.6656 1.329 0.5842 2.5 5")]
    [InlineData(0.09, "0.9794 1.654 0.7377 2.5 5")]
    public void A_seat_poorer_than_its_sisters_is_poor(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], FlowFactor = l => 1 - size * Math.Exp(-Math.Max(0, l - 0.005) / 0.002), Sisters = Swept(3) }, "seat-limits-low-lift");

    /// <summary>The same where all of them pass little of the throat at full lift, which by itself would clear the seat: held against the sisters' high lifts it does not.</summary>
    [Theory]
    [InlineData(0.001, "0.9812 2.14 0.9645 2.5 5")]
    public void A_seat_poorer_than_its_sisters_is_poor_in_a_poor_port(double size, string said)
    {
        var sisters = Swept(3);
        foreach (var s in sisters) s.PortArea = size;
        Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], PortArea = size, FlowFactor = l => 1 - 0.09 * Math.Exp(-Math.Max(0, l - 0.005) / 0.002), Sisters = sisters }, "seat-limits-low-lift");
    }

    /// <summary>Effective area of the port, m2: the least that lets the seat be blamed is 0.55 of the throat.</summary>
    [Theory]
    [InlineData(0.001, "0.005801 2.236 1.035 2.5 5")]
    [InlineData(0.00105, "0.5926 2.195 1.017 2.5 5")]
    [InlineData(0.00109, "0.5794 2.164 1.003 2.5 5")]
    public void A_port_poor_all_the_way_up_is_not_the_seats(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], PortArea = size, FlowFactor = l => 1 - 0.3 * Math.Exp(-Math.Max(0, l - 0.005) / 0.002) }, "seat-limits-low-lift");

    /// <summary>Second lift, m.</summary>
    [Theory]
    [InlineData(0.005, "0.07626 2.806 1.314 3 5")]
    [InlineData(0.0051, "0.4511 1.628 0.7567 3 3")]
    public void Low_lift_ends_at_a_tenth_of_the_valve(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Lifts = [0.003, size, 0.0075, 0.0099, 0.0125], FlowFactor = l => l < 0.004 ? 0.7 : 1 }, "seat-limits-low-lift");

    /// <summary>Highest lift, m.</summary>
    [Theory]
    [InlineData(0.0099, "nothing")]
    [InlineData(0.0101, "0.3155 2.438 1.131 3 5")]
    public void High_lift_begins_at_a_fifth_of_the_valve(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Plan = new(0.086, 0.086), Lifts = [0.003, 0.004, 0.005, 0.007, size], FlowFactor = l => l < 0.0055 ? 0.75 : 1 }, "seat-limits-low-lift");

    /// <summary>Bowl's diameter, m: 1.2 throats are .0482.</summary>
    [Theory]
    [InlineData(0.047, "4.757E-09 E 2.692 1.643 6.25 12.5")]
    [InlineData(0.0482, "0.09343 E 2.692 1.643 6.25 12.5")]
    [InlineData(0.0495, "0.9664 E 2.692 1.643 6.25 12.5")]
    [InlineData(0.052, "1 E 2.692 1.643 6.25 12.5")]
    public void A_bowl_that_is_large_and_opens_fast_is_too_large(double size, string said) => Weighing.Says(said, Reshaped(new MadePort(21) { RingsAt = [], Places = [] }, "E", size, size, size / 2), "bowl-too-large", "E");

    /// <summary>Diameter of the section before it, m.</summary>
    [Theory]
    [InlineData(0.043, "0.9967 E 2.692 1.643 6.25 12.5")]
    [InlineData(0.0445, "0.5701 E 2.692 1.643 6.25 12.5")]
    [InlineData(0.0455, "0.02245 E 2.692 1.643 6.25 12.5")]
    [InlineData(0.047, "6.797E-10 E 2.692 1.643 6.25 12.5")]
    public void A_large_bowl_at_the_end_of_a_taper_is_not(double size, string said) => Weighing.Says(said, Reshaped(Reshaped(new MadePort(21) { RingsAt = [], Places = [] }, "D", size, size, size / 2), "E", 0.0495, 0.0495, 0.02475), "bowl-too-large", "E");

    /// <summary>The same, the throat by the card.</summary>
    [Theory]
    [InlineData(0.0482, "0.09347 E 2.692 1.643 6.25 12.5")]
    [InlineData(0.0495, "0.9667 E 2.692 1.643 6.25 12.5")]
    public void A_bowl_over_a_throat_on_the_card_is_too_large_alike(double size, string said) => Weighing.Says(said, NoThroat(Reshaped(new MadePort(21) { RingsAt = [], Places = [] }, "E", size, size, size / 2)), "bowl-too-large", "E");

    /// <summary>Highest speed of the plan, rpm.</summary>
    [Theory]
    [InlineData(6800, "0.04671")]
    [InlineData(7000, "0.1934")]
    [InlineData(7300, "0.6063")]
    [InlineData(8000, "0.9952")]
    [InlineData(9000, "1")]
    public void An_engine_that_asks_more_than_the_port_gives_finds_it_small(double size, string said) => Weighing.Says(said, new MadePort(21) { RingsAt = [], Places = [], Plan = new(0.086, 0.086, Cylinders: 4, IntakeCam: new CamLift(0.0085, 1.5, 0.00025), HighestSpeed: size, IntakeTiming: new CamTiming(4.71, null, 3.84, null, 1.88)) }, "port-speed-against-plan");

    /// <summary>Share lost at the highest lift.</summary>
    [Theory]
    [InlineData(0.055, "nothing")]
    [InlineData(0.065, "0.1538")]
    [InlineData(0.07, "0.7617")]
    [InlineData(0.075, "0.9637")]
    public void A_curve_that_falls_past_its_peak_backs_up(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], FlowFactor = l => l > 0.0101 ? 1 - size : 1 }, "backs-up");

    /// <summary>The same, three sisters backing up by six percent.</summary>
    [Theory]
    [InlineData(0.065, "0.01461")]
    [InlineData(0.09, "0.8912")]
    [InlineData(0.08, "0.4406")]
    public void A_curve_that_falls_more_than_its_sisters_backs_up(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], FlowFactor = l => l > 0.0101 ? 1 - size : 1, Sisters = Swept(3, l => l > 0.0101 ? 0.94 : 1) }, "backs-up");

    /// <summary>Share it flows less than three sisters.</summary>
    [Theory]
    [InlineData(0, "0.003797")]
    [InlineData(0.015, "0.4941")]
    [InlineData(0.025, "0.9704")]
    [InlineData(0.035, "0.999")]
    public void A_port_low_all_the_way_up_is_low(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], FlowFactor = _ => 1 - size, Sisters = Swept(3) }, "low-against-sisters");

    /// <summary>Sisters.</summary>
    [Theory]
    [InlineData(1, "nothing")]
    [InlineData(2, "0.9877")]
    [InlineData(4, "0.9988")]
    public void Two_sisters_are_enough_and_one_is_not(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], FlowFactor = _ => 0.97, Sisters = Swept((int)size) }, "low-against-sisters");

    /// <summary>Width at C, m; the sisters' is .0325.</summary>
    [Theory]
    [InlineData(0.0325, "0.003325 C 1.767 1.138 6.25 12.5")]
    [InlineData(0.0312, "0.7174 C 1.767 1.138 6.25 12.5")]
    [InlineData(0.0305, "0.9466 C 1.767 1.138 6.25 12.5")]
    [InlineData(0.0295, "0.9976 C 1.767 1.138 6.25 12.5")]
    public void A_section_small_against_its_sisters_is_small(double size, string said) => Weighing.Says(said, Reshaped(new MadePort(21) { RingsAt = [], Places = [], Sisters = Swept(3) }, "C", size, 0.0462, 0.010), "small-against-sisters", "C");

    /// <summary>Distance of B, m; the sisters' is .022: 5 mm or a tenth of the way apart are the same station.</summary>
    [Theory]
    [InlineData(0.026, "0.007657 B 1.767 1.138 6.25 12.5")]
    [InlineData(0.0271, "nothing")]
    [InlineData(0.018, "0.007657 B 1.767 1.138 6.25 12.5")]
    [InlineData(0.0169, "nothing")]
    public void A_station_is_the_same_within_a_tenth_of_its_way(double size, string said) => Weighing.Says(said, Far(new MadePort(21) { RingsAt = [], Places = [], Sisters = Swept(2) }, "B", size), "small-against-sisters", "B");

    /// <summary>Distance of D, m; the sisters' is .068.</summary>
    [Theory]
    [InlineData(0.075, "0.009711 D 1.767 1.138 6.25 12.5")]
    [InlineData(0.0757, "nothing")]
    [InlineData(0.062, "0.009711 D 1.767 1.138 6.25 12.5")]
    [InlineData(0.0617, "nothing")]
    public void A_station_far_in_is_the_same_within_a_tenth_of_its_way(double size, string said) => Weighing.Says(said, Far(new MadePort(21) { RingsAt = [], Places = [], Role = _ => null, Sisters = Swept(2) }, "D", size, mark: ""), "small-against-sisters", "D");

    /// <summary>Lifts two sisters were swept at: three tell what a port flows, two do not.</summary>
    [Theory]
    [InlineData(2, "nothing")]
    [InlineData(3, "0.9797")]
    [InlineData(5, "0.9877")]
    public void A_sister_swept_at_three_lifts_counts(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], FlowFactor = _ => 0.97, Sisters = [.. Swept(2).Select(s => Few(s, (int)size))] }, "low-against-sisters");

    /// <summary>The same of the port's own lifts.</summary>
    [Theory]
    [InlineData(2, "nothing")]
    [InlineData(3, "0.9726")]
    public void A_port_swept_at_three_lifts_is_compared(double size, string said) => Weighing.Says(said, Few(new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], FlowFactor = _ => 0.97, Sisters = Swept(2) }, (int)size), "low-against-sisters");

    private static MadePort Few(MadePort made, int lifts)
    {
        made.Lifts = [.. Enumerable.Range(0, lifts).Select(i => 0.0025 + 0.010 * i / (lifts - 1))];
        return made;
    }

    /// <summary>Sections measured besides the throat: two do not tell a pinch from a port, three do.</summary>
    [Theory]
    [InlineData(2, "nothing")]
    [InlineData(3, "0.7732 C 3.242 1.71 6.25 12.5")]
    public void A_pinch_is_told_among_three_sections(double size, string said)
    {
        var made = Reshaped(new MadePort(21) { PortArea = 0.00107, RingsAt = [], Places = [("C", 12), ("C", 6), ("C", 3), ("D", 6)] }, "C", 0.0275, 0.0425, 0.010);
        made.Stations.RemoveAll(s => s.Letter is "A" or "B" || (size < 3 && s.Letter == "E"));
        Weighing.Says(said, made, "pinch-limits");
    }

    private static IReadOnlyList<MadePort> Swept(int sisters, Func<double, double>? factor = null) => [.. Enumerable.Range(0, sisters).Select(i => new MadePort(61 + i)
    {
        RingsAt = [], Places = [], ExhaustShare = null, FlowFactor = l => (factor?.Invoke(l) ?? 1) * (1 + 0.004 * (i - 1)),
    })];

    private static MadePort Throat(double share) => Reshaped(new MadePort(21) { RingsAt = [], Places = [] }, "F", share * 0.050, share * 0.050, share * 0.025);

    private static MadePort Written(double share)
    {
        var made = NoThroat(new MadePort(21) { RingsAt = [], Places = [] });
        made.Valve = made.Valve with { ThroatDiameter = share * 0.050 };
        return made;
    }

    private static MadePort NoThroat(MadePort made)
    {
        made.Stations.RemoveAll(s => s.Letter == "F");
        return made;
    }

    private static MadePort Reshaped(MadePort made, string letter, double width, double height, double corner)
    {
        var at = made.Stations.FindIndex(s => s.Letter == letter);
        made.Stations[at] = made.Stations[at] with { Width = width, Height = height, Corner = corner };
        return made;
    }

    private static MadePort Far(MadePort made, string letter, double distance, string? mark = null)
    {
        var at = made.Stations.FindIndex(s => s.Letter == letter);
        made.Stations[at] = made.Stations[at] with { Distance = distance, Mark = mark ?? made.Stations[at].Mark };
        return made;
    }
}
