using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Findings.Weighed;

/// <summary>Where the air is: from healthy to faulty, what each rule says of it.</summary>
public sealed class WeighedAir
{
    /// <summary>Speed on the floor at C over the healthy one.</summary>
    [Theory]
    [InlineData(1, "0.0009605 C6")]
    [InlineData(0.8, "0.2363 C6")]
    [InlineData(0.7, "0.9939 C6")]
    [InlineData(0.75, "0.843 C6")]
    public void A_slow_floor_is_lazy_by_the_probe(double size, string said) => Weighing.Says(said, new MadePort(21) { SpeedFactor = (s, _, y) => s == "C" && y < -0.2 ? size : 1, Places = [] }, "lazy-floor-or-corner", "C");

    /// <summary>Loss of the ball at C, 6 over the healthy one.</summary>
    [Theory]
    [InlineData(0.6, "0.06128 C6")]
    [InlineData(0.4, "0.4071 C6")]
    [InlineData(0.3, "0.7548 C6")]
    public void A_ball_that_costs_little_on_the_floor_is_lazy_there(double size, string said) => Weighing.Says(said, new MadePort(21) { BallFactor = (s, b) => s == "C" && b == 6 ? size : 1, RingsAt = [] }, "lazy-floor-or-corner", "C");

    /// <summary>Speed on the floor at D, by both instruments.</summary>
    [Theory]
    [InlineData(0.8, "0.0335 D6")]
    [InlineData(0.7, "0.4523 D6")]
    [InlineData(0.6, "0.9898 D6")]
    public void A_slow_floor_of_the_bend_is_lazy_or_torn_off(double size, string said) => Weighing.Says(said, new MadePort(22) { SpeedFactor = (s, _, y) => s == "D" && y < -0.2 ? size : 1, BallFactor = (s, b) => s == "D" && b == 6 ? size * size : 1 }, "lazy-floor-or-corner", "D");

    /// <summary>The same, against two sisters read there.</summary>
    [Theory]
    [InlineData(0.9, "0.1609 C6")]
    [InlineData(0.87, "0.8579 C6")]
    [InlineData(0.85, "0.9774 C6")]
    public void A_floor_slower_than_its_sisters_is_lazy(double size, string said) => Weighing.Says(said, new MadePort(23) { SpeedFactor = (s, _, y) => s == "C" && y < -0.2 ? size : 1, Places = [("C", 6), ("C", 12)], RingsAt = ["C"], Sisters = Sound(2) }, "lazy-floor-or-corner", "C");

    /// <summary>Loss of the ball at D, 6 over the healthy one, the flags standing still.</summary>
    [Theory]
    [InlineData(0.4, "0.001464 D6 3.415 1.929 6.25 12.5")]
    [InlineData(0.2, "0.02162 D6 3.415 1.929 6.25 12.5")]
    [InlineData(0.1, "0.0545 D6 3.415 1.929 6.25 12.5")]
    [InlineData(-0.1, "0.7176 D6 3.415 1.929 6.25 12.5")]
    public void A_ball_that_costs_nothing_in_the_bend_is_torn_off(double size, string said) => Weighing.Says(said, new MadePort(22) { BallFactor = (s, b) => s == "D" && b == 6 ? size : 1 }, "short-side-torn-off", "D");

    /// <summary>The same, a flag turning back there.</summary>
    [Theory]
    [InlineData(0.5, "0.01624 D6 3.401 1.921 6.25 12.5")]
    [InlineData(0.3, "0.4161 D6 3.401 1.921 6.25 12.5")]
    [InlineData(0.2, "0.6628 D6 3.401 1.921 6.25 12.5")]
    public void A_flag_that_turns_back_says_it_is_torn_off(double size, string said) => Weighing.Says(said, new MadePort(24) { BallFactor = (s, b) => s == "D" && b == 6 ? size : 1, Flag = (s, b) => s == "D" && b == 6 ? Steadiness.TurnsBack : Steadiness.Still }, "short-side-torn-off", "D");

    /// <summary>Hour of the one ball in the bend: the floor reaches from 4 to 8.</summary>
    [Theory]
    [InlineData(8, "0.005408 D7.5 3.401 1.921 6.25 12.5")]
    [InlineData(8.1, "nothing")]
    [InlineData(3.9, "nothing")]
    [InlineData(4.1, "0.01518 D4.5 3.401 1.921 6.25 12.5")]
    public void A_ball_off_the_floor_of_the_bend_is_not_asked(double size, string said) => Weighing.Says(said, new MadePort(24) { Places = [("D", size), ("C", 12), ("C", 3)], BallFactor = (s, _) => s == "D" ? 0.1 : 1, Flag = (_, _) => Steadiness.Still }, "short-side-torn-off");

    /// <summary>Speed at the roof of B.</summary>
    [Theory]
    [InlineData(1.1, "0.01061 B12 1.767 1.366 6.25 12.5")]
    [InlineData(1.2, "0.09815 B12 1.767 1.366 6.25 12.5")]
    [InlineData(1.3, "0.6271 B12 1.767 1.366 6.25 12.5")]
    public void A_fast_roof_is_busy_by_the_probe(double size, string said) => Weighing.Says(said, new MadePort(21) { SpeedFactor = (s, _, y) => s == "B" && y > 0.4 ? size : 1 }, "busy-roof", "B");

    /// <summary>Loss of the ball at C, 12.</summary>
    [Theory]
    [InlineData(1.3, "0.05851 C12 1.767 1.366 6.25 12.5")]
    [InlineData(1.6, "0.1939 C12 1.767 1.366 6.25 12.5")]
    [InlineData(1.9, "0.4654 C12 1.767 1.366 6.25 12.5")]
    public void A_ball_that_costs_more_at_the_roof_is_busy(double size, string said) => Weighing.Says(said, new MadePort(21) { BallFactor = (s, b) => s == "C" && b == 12 ? size : 1, RingsAt = [] }, "busy-roof", "C");

    /// <summary>Hour of the ball that costs more: an hour to each side of 12 is roof.</summary>
    [Theory]
    [InlineData(1, "0.7363 C1 1.767 1.366 6.25 12.5")]
    [InlineData(1.1, "0.7051 C1.1 1.767 1.366 6.25 12.5")]
    [InlineData(10.9, "0.7051 C10.9 1.767 1.366 6.25 12.5")]
    public void A_place_off_the_roof_is_no_roof(double size, string said) => Weighing.Says(said, new MadePort(21) { Places = [("C", size), ("D", 6), ("D", 3)], BallFactor = (s, _) => s == "C" ? 1.8 : 1, RingsAt = [] }, "busy-roof");

    /// <summary>Speed under the roof of D, the flags standing still.</summary>
    [Theory]
    [InlineData(0.8, "0.02547 D12 1.767 1.366 6.25 12.5")]
    [InlineData(0.7, "0.1718 D12 1.767 1.366 6.25 12.5")]
    [InlineData(0.6, "0.7173 D12 1.767 1.366 6.25 12.5")]
    public void Slow_air_behind_the_boss_is_its_wake(double size, string said) => Weighing.Says(said, new MadePort(21) { SpeedFactor = (s, x, y) => s == "D" && y > 0.2 && Math.Abs(x) < 0.5 ? size : 1 }, "guide-boss-wake", "D");

    /// <summary>Hour of a second flag that swings beside one that swings and one that stands.</summary>
    [Theory]
    [InlineData(1, "0.1291 E12 1.775 1.372 6.25 12.5")]
    [InlineData(1.1, "0.02084 E12 1.775 1.372 6.25 12.5")]
    [InlineData(0.5, "0.1359 E12 1.775 1.372 6.25 12.5")]
    public void Flags_that_swing_behind_the_boss_are_its_wake(double size, string said) => Weighing.Says(said, new MadePort(4) { RingsAt = [], Places = [("E", 12), ("E", size), ("E", 11.5)], Flag = (s, b) => b == 12 ? Steadiness.Still : Steadiness.Swings }, "guide-boss-wake", "E");

    /// <summary>Speed over the short side at D.</summary>
    [Theory]
    [InlineData(1.15, "0.03621 D6 2.226 1.387 6.25 12.5")]
    [InlineData(1.3, "0.2307 D6 2.226 1.387 6.25 12.5")]
    [InlineData(1.45, "0.7245 D6 2.226 1.387 6.25 12.5")]
    public void A_fast_floor_of_the_bend_is_a_short_side_too_tight(double size, string said) => Weighing.Says(said, new MadePort(21) { SpeedFactor = (s, _, y) => s == "D" && y < -0.4 ? size : 1 }, "short-side-too-fast", "D");

    /// <summary>The same, against two sisters.</summary>
    [Theory]
    [InlineData(1.1, "0.1145 D6 2.233 1.392 6.25 12.5")]
    [InlineData(1.13, "0.7299 D6 2.233 1.392 6.25 12.5")]
    [InlineData(1.16, "0.9754 D6 2.233 1.392 6.25 12.5")]
    public void A_floor_faster_than_its_sisters_is_a_short_side_too_tight(double size, string said) => Weighing.Says(said, new MadePort(23) { SpeedFactor = (s, _, y) => s == "D" && y < -0.4 ? size : 1, Places = [("D", 6), ("D", 12)], RingsAt = ["D"], Sisters = Sound(2) }, "short-side-too-fast", "D");

    /// <summary>Hour of the ball that costs more.</summary>
    [Theory]
    [InlineData(7, "0.2407 D6 2.226 1.387 6.25 12.5")]
    [InlineData(7.1, "nothing")]
    [InlineData(4.9, "nothing")]
    public void A_place_off_the_floor_is_no_short_side(double size, string said) => Weighing.Says(said, new MadePort(21) { Places = [("D", size), ("C", 12), ("C", 3)], BallFactor = (s, _) => s == "D" ? 1.8 : 1, RingsAt = [] }, "short-side-too-fast", "D");

    /// <summary>Share by which one side of C is faster.</summary>
    [Theory]
    [InlineData(0.06, "0.1099 C3 1.315 1.009 6.25 12.5")]
    [InlineData(0.1, "0.9343 C3 1.315 1.009 6.25 12.5")]
    [InlineData(0.15, "0.9986 C3 1.315 1.009 6.25 12.5")]
    [InlineData(-0.12, "0.979 C9 1.315 1.009 6.25 12.5")]
    public void A_port_that_leans_has_uneven_sides(double size, string said) => Weighing.Says(said, new MadePort(21) { SpeedFactor = (s, x, _) => s == "C" ? 1 + size * Math.Tanh(4 * x) : 1 }, "uneven-sides", "C");

    /// <summary>Share by which the balls at D differ.</summary>
    [Theory]
    [InlineData(0.2, "0.0401 D9 1.315 1.009 6.25 12.5")]
    [InlineData(0.4, "0.3302 D9 1.315 1.009 6.25 12.5")]
    [InlineData(0.5, "0.631 D9 1.315 1.009 6.25 12.5")]
    public void Balls_that_differ_from_side_to_side_tell_it_too(double size, string said) => Weighing.Says(said, new MadePort(21) { RingsAt = [], BallFactor = (s, b) => s == "D" ? b == 9 ? 1 + size : b == 3 ? 1 - size : 1 : 1 }, "uneven-sides", "D");

    /// <summary>The same, against two sisters.</summary>
    [Theory]
    [InlineData(0.06, "0.7615 C3 1.32 1.012 6.25 12.5")]
    [InlineData(0.04, "0.051 C3 1.32 1.012 6.25 12.5")]
    [InlineData(0.07, "0.9647 C3 1.32 1.012 6.25 12.5")]
    public void A_port_that_leans_more_than_its_sisters_has_uneven_sides(double size, string said) => Weighing.Says(said, new MadePort(23) { SpeedFactor = (s, x, _) => s == "C" ? 1 + size * Math.Tanh(4 * x) : 1, Places = [("C", 3), ("C", 9)], RingsAt = ["C"], Sisters = Sound(2) }, "uneven-sides", "C");

    /// <summary>Hour of the ball on the one side.</summary>
    [Theory]
    [InlineData(2, "0.06577 C9 1.315 1.009 6.25 12.5")]
    [InlineData(1.9, "nothing")]
    [InlineData(4, "0.06577 C9 1.315 1.009 6.25 12.5")]
    [InlineData(4.1, "nothing")]
    public void A_side_is_an_hour_to_each_side_of_three_and_nine(double size, string said) => Weighing.Says(said, new MadePort(21) { RingsAt = [], Places = [("C", size), ("C", 9), ("D", 6)], BallFactor = (s, b) => b == 9 ? 1.5 : 1 }, "uneven-sides");

    /// <summary>Loss of the ball at C, 12, where the probe finds sound air.</summary>
    [Theory]
    [InlineData(1.5, "0.02614 C12")]
    [InlineData(2, "0.9894 C12")]
    [InlineData(2.5, "0.999 C12")]
    [InlineData(0.4, "0.7923 C12")]
    public void Ball_and_probe_apart_contradict_each_other(double size, string said) => Weighing.Says(said, new MadePort(21) { BallFactor = (s, b) => s == "C" && b == 12 ? size : 1 }, "instruments-disagree", "C");

    /// <summary>Loss of the ball at all places.</summary>
    [Theory]
    [InlineData(1, "0.01438")]
    [InlineData(1.4, "0.3031")]
    [InlineData(1.8, "0.9153")]
    [InlineData(2.2, "0.9958")]
    [InlineData(0.5, "0.1076")]
    public void A_ball_that_takes_more_everywhere_is_another_ball(double size, string said) => Weighing.Says(said, new MadePort(21) { BallFactor = (_, _) => size }, "ball-not-as-written");

    /// <summary>The same, the sisters read with the same ball.</summary>
    [Theory]
    [InlineData(1.4, "0.9293")]
    [InlineData(1.8, "0.999")]
    [InlineData(0.6, "0.2298")]
    public void A_ball_that_takes_more_than_in_the_sisters_is_another_ball(double size, string said) => Weighing.Says(said, new MadePort(21) { BallFactor = (_, _) => size, RingsAt = [], Sisters = Sound(2) }, "ball-not-as-written");

    /// <summary>Loss of the ball in the only sister: it is hers that is not as written.</summary>
    [Theory]
    [InlineData(0.45, "0.06562")]
    [InlineData(2.2, "0.0004368")]
    public void A_sister_whose_ball_is_another_makes_this_one_none(double size, string said) => Weighing.Says(said, new MadePort(21) { RingsAt = [], Sisters = [new MadePort(31) { BallFactor = (_, _) => size, RingsAt = [] }] }, "ball-not-as-written");

    /// <summary>Loss of the ball, and in every sister alike: all were held with it.</summary>
    [Theory]
    [InlineData(1.8, "0.6979")]
    [InlineData(2.5, "0.9981")]
    public void A_ball_that_is_another_in_every_port_is_told(double size, string said) => Weighing.Says(said, new MadePort(21) { BallFactor = (_, _) => size, RingsAt = [], Sisters = [.. Enumerable.Range(31, 3).Select(n => new MadePort(n) { BallFactor = (_, _) => size, RingsAt = [] })] }, "ball-not-as-written");

    /// <summary>Loss of the ball where air is all but off the wall: lazy air must share with air that is torn off.</summary>
    [Theory]
    [InlineData(0.3, "0.002433 D6")]
    [InlineData(0.1, "0.001337 D6")]
    public void A_ball_that_costs_next_to_nothing_in_the_bend_is_lazy_or_torn_off(double size, string said) => Weighing.Says(said, new MadePort(22) { BallFactor = (s, b) => s == "D" && b == 6 ? size : 1 }, "lazy-floor-or-corner", "D");

    /// <summary>Speed on the floor at D by the probe, the ball losing a twentieth of its due: torn-off air must share with lazy air.</summary>
    [Theory]
    [InlineData(0.7, "0.9612 D6 3.415 1.929 6.25 12.5")]
    [InlineData(0.55, "0.5766 D6 3.415 1.929 6.25 12.5")]
    public void A_slow_floor_of_the_bend_may_be_torn_off(double size, string said) => Weighing.Says(said, new MadePort(22) { SpeedFactor = (s, _, y) => s == "D" && y < -0.2 ? size : 1, BallFactor = (s, b) => s == "D" && b == 6 ? 0.05 : 1 }, "short-side-torn-off", "D");

    /// <summary>Speed on the floor of one of three sisters: one that is bad herself counts as no further off than two and a half spreads.</summary>
    [Theory]
    [InlineData(0.6, "0.45 C6")]
    [InlineData(1.6, "0.987 C6")]
    public void One_bad_sister_does_not_make_a_slow_floor_sound(double size, string said) => Weighing.Says(
        said,
        new MadePort(23)
        {
            SpeedFactor = (s, _, y) => s == "C" && y < -0.2 ? 0.86 : 1,
            Places = [("C", 6), ("C", 12)],
            RingsAt = ["C"],
            Sisters = [.. Sound(2), new MadePort(71) { SpeedFactor = (s, _, y) => s == "C" && y < -0.2 ? size : 1, BallFactor = (s, b) => s == "C" && b == 6 ? size * size * size : 1, Places = [("C", 6), ("C", 12), ("C", 3)], RingsAt = ["C"], ExhaustShare = null, Repeats = 1 }],
        },
        "lazy-floor-or-corner",
        "C");

    /// <summary>Hour of the ball beside the probe's place at 12: within half an hour they speak of one place.</summary>
    [Theory]
    [InlineData(0.45, "0.999 C12")]
    [InlineData(0.55, "0.005817 C6")]
    public void Ball_and_probe_within_half_an_hour_speak_of_one_place(double size, string said) => Weighing.Says(said, new MadePort(21) { Places = [("C", size), ("C", 6), ("C", 9), ("D", 6)], BallFactor = (s, b) => b == size ? 2.2 : 1 }, "instruments-disagree", "C");

    /// <summary>Hour of a ball that costs little: three quarters of an hour off roof and sides begin the floor and the corners.</summary>
    [Theory]
    [InlineData(0.7, "nothing")]
    [InlineData(0.8, "0.2006 C0.8")]
    [InlineData(2.2, "0.2245 C2.2")]
    [InlineData(2.3, "nothing")]
    [InlineData(9.7, "nothing")]
    [InlineData(9.8, "0.2245 C9.8")]
    public void A_corner_lies_between_roof_and_side(double size, string said) => Weighing.Says(said, new MadePort(21) { RingsAt = [], Places = [("C", size), ("D", 3), ("D", 12)], BallFactor = (s, _) => s == "C" ? 0.4 : 1 }, "lazy-floor-or-corner");

    private static IReadOnlyList<MadePort> Sound(int sisters) => [.. Enumerable.Range(0, sisters).Select(i => new MadePort(61 + i)
    {
        Places = [("C", 6), ("C", 12), ("C", 3), ("C", 9), ("D", 6), ("D", 12)], RingsAt = ["C", "D"], ExhaustShare = null, Repeats = 1,
    })];
}
