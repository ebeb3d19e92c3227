using Portwright.Shop.Judgement;

namespace Portwright.Shop.Tests.Judgement;

/// <summary>Bayes' rule on numbers anyone can work on paper.</summary>
public sealed class CourtByHand
{
    [Fact]
    public void A_fault_of_one_port_in_ten_that_explains_the_readings_nine_times_as_well_is_an_even_chance() =>
        Assert.Equal(0.5, Court.Chance(new Explanation(0.1, 9)), 1e-12);

    /// <summary>0.9 of 0.9 + 0.2 x 2 + 0.7 sound.</summary>
    [Fact]
    public void What_else_explains_the_readings_takes_its_share() => Assert.Equal(0.45, Court.Chance(new Explanation(0.1, 9), new Explanation(0.2, 2)), 1e-12);

    /// <summary>Priors that leave a sound port no room leave it none: 0.7 of 1.3.</summary>
    [Fact]
    public void Explanations_that_fill_the_whole_leave_no_sound_port() => Assert.Equal(0.7 / 1.3, Court.Chance(new Explanation(0.7, 1), new Explanation(0.6, 1)), 1e-12);

    [Fact]
    public void Nothing_is_surer_than_999_in_1000()
    {
        Assert.Equal(0.999, Court.Chance(new Explanation(0.5, 1e9)), 1e-12);
        Assert.Equal(0.99, Court.Chance(new Explanation(0.5, 99)), 1e-12);
        Assert.Equal(0.999, Court.Chance(new Explanation(0.5, double.PositiveInfinity)), 1e-12);
        Assert.Equal(0, Court.Chance(new Explanation(0.5, 3), new Explanation(0.1, double.PositiveInfinity)));
        Assert.Equal([0.999], Court.AtOneOf(0.5, [1e12]));
        Assert.Equal([0.999, 0], Court.AtOneOf(0.5, [double.PositiveInfinity, 3]));
        Assert.Equal([0.4995, 0.4995, 0], Court.AtOneOf(0.5, [double.PositiveInfinity, double.PositiveInfinity, 3]));
        Assert.Equal(0.999, Court.Anywhere(0.5, [1e12, 1e12]), 1e-12);
    }

    /// <summary>One port in five has it; of two places each takes a tenth: 0.4 and 0.1 of 0.8 + 0.5.</summary>
    [Fact]
    public void A_port_looked_at_in_two_places_is_not_accused_twice()
    {
        var chances = Court.AtOneOf(0.2, [4, 1]);
        Assert.Equal(0.4 / 1.3, chances[0], 1e-12);
        Assert.Equal(0.1 / 1.3, chances[1], 1e-12);
        Assert.Equal(0.5 / 1.3, Court.Anywhere(0.2, [4, 1]), 1e-12);
        Assert.Empty(Court.AtOneOf(0.2, []));
    }
}
