using Portwright.Shop.Bench;

namespace Portwright.Shop.Tests.Bench;

/// <summary>Repeats at hand and the card's figure, each by its degrees of freedom (JCGM 100:2008, 4.2.4 and H.3.6), on numbers small enough for paper.</summary>
public sealed class ScatterPooledByHand
{
    /// <summary>98 and 102 scatter by 2.83 percent with one degree: (4 x 0.01^2 + 0.0008)/5.</summary>
    [Fact]
    public void Two_repeats_weigh_as_one_degree_beside_the_cards_four() => Same(Math.Sqrt((4 * 1e-4 + 8e-4) / 5), 5, PooledScatter.WithCard([[98, 102]], 0.01, 4));

    [Fact]
    public void A_card_taken_as_certain_is_not_asked_of() => Same(0.01, double.PositiveInfinity, PooledScatter.WithCard([[98, 102]], 0.01, null));

    [Fact]
    public void Readings_taken_once_say_nothing_of_a_scatter()
    {
        Same(0.01, 4, PooledScatter.WithCard([[98], [55]], 0.01, 4));
        Same(0.01, 4, PooledScatter.WithCard([], 0.01, 4));
    }

    /// <summary>Repeats under a twentieth of the largest are the last digit's: 4.9 beside 100 says nothing, 5.1 does.</summary>
    [Theory]
    [InlineData(4.9, 5)]
    [InlineData(5.1, 6)]
    public void Near_nothing_the_last_digit_is_all_there_is(double small, double degrees) =>
        Assert.Equal(degrees, PooledScatter.WithCard([[98, 102], [0.9 * small, 1.1 * small]], 0.01, 4).DegreesOfFreedom);

    private static void Same(double deviation, double degrees, Portwright.Physics.Uncertainty.RepeatScatter made)
    {
        Assert.Equal(deviation, made.StandardDeviation, 1e-12);
        Assert.Equal(degrees, made.DegreesOfFreedom);
    }
}
