using Portwright.Shop.Judgement;

namespace Portwright.Shop.Tests.Judgement;

/// <summary>What a further sister should show: partial pooling on numbers small enough for paper.</summary>
public sealed class FamilyByHand
{
    /// <summary>One sister says the middle and nothing of the spread: the usual one counts, and her own once more.</summary>
    [Fact]
    public void One_sister_says_where_and_what_is_usual_says_how_far() => Same(new Family(7, 2 * Math.Sqrt(2), 5, 1), Family.Of([7], 2, 5));

    /// <summary>(5 x 1 + 2 x 0.5 x 0.5)/(5 + 1), and half as much again for the mean of two.</summary>
    [Fact]
    public void Two_sisters_weigh_as_one_degree_beside_the_usual_five() => Same(new Family(3, Math.Sqrt(5.5 / 6 * 1.5), 6, 2), Family.Of([2.5, 3.5], 1, 5));

    /// <summary>Two sisters ten apart are each drawn in to 2.5 usual spreads of their middle: at 2.5 and 7.5.</summary>
    [Fact]
    public void Two_sisters_far_apart_are_drawn_in_by_what_is_usual() => Same(new Family(5, Math.Sqrt((5 + 12.5) / 6 * 1.5), 6, 2), Family.Of([0, 10], 1, 5));

    /// <summary>Two that agree make half the usual spread the measure: the third counts as 1.25 away. Mean 1.25/3, squares 1.25 x 1.25 x 2/3.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_sister_far_off_two_that_agree_counts_as_no_further_than_a_little(double way) =>
        Same(new Family(way * 1.25 / 3, Math.Sqrt((4 + 1.5625 * 2 / 3) / 6 * 4 / 3), 6, 3), Family.Of([0, 0, way * 50], 1, 4));

    /// <summary>Distances 0, 2 and 20 have the middle 2, a spread of 2 x 1.4826 (Rousseeuw and Croux 1993; from memory): drawn in at 2.5 x 2.9652 = 7.413.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void One_bad_sister_in_three_does_not_move_the_spread(double way)
    {
        double mean = (7.413 - 2) / 3, squares = 4 + 7.413 * 7.413 - 3 * mean * mean;
        Same(new Family(way * mean, Math.Sqrt((4 + squares) / 6 * 4 / 3), 6, 3), Family.Of([way * -2, 0, way * 20], 1, 4));
    }

    [Fact]
    public void Of_an_even_number_the_middle_lies_between_the_two_inner_ones() => Assert.Equal(2.5, Family.Of([1, 2, 3, 4], 1, 4).Mean, 1e-12);

    [Fact]
    public void A_reading_is_no_surer_than_its_own_doubt()
    {
        Assert.Equal(2, new Family(0, 1, 5, 3).AtLeast(2).Deviation);
        Assert.Equal(1, new Family(0, 1, 5, 3).AtLeast(0.5).Deviation);
    }

    /// <summary>Three over a mean of 4, in deviations of 1, 4 degrees: (1 + 9/4)^2.5.</summary>
    [Fact]
    public void A_member_is_held_against_mean_and_deviation() =>
        Assert.Equal(Math.Pow(3.25, 2.5), new Family(4, 1, 4, 3).Ratio(7, new Step(3, 1, StepWay.Up)), 1e-9);

    /// <summary>A member truly below by more than a limit, three sisters' mean at 0 within 1 percent: Student's distribution by Simpson's rule, worked outside the program.</summary>
    [Theory]
    [InlineData(0, 0.005, 0.033344)]
    [InlineData(-0.01, 0.005, 0.255192)]
    [InlineData(-0.02, 0.005, 0.734528)]
    [InlineData(-0.03, 0.005, 0.939407)]
    [InlineData(-0.04, 0.005, 0.990451)]
    [InlineData(-0.03, 0.02, 0.571235)] // A reading that does not come back is drawn in nearly wholly, a tenth is always left.
    [InlineData(-0.04, 0.02, 0.818348)]
    [InlineData(-0.25, 0.005, Court.Surest)]
    public void A_member_is_below_its_sisters_by_what_is_left_of_its_reading(double value, double doubt, double chance) =>
        Assert.Equal(chance, new Family(0, 0.01, 7, 3).Below(value, doubt, 0.01, 0.08, new Step(0.03, 1.7, StepWay.Down)), 2e-4);

    [Fact]
    public void Nothing_is_below_where_nothing_was_read() => Assert.Equal(0, new Family(0, 0.01, 7, 3).Below(double.NaN, 0.005, 0.01, 0.08, new Step(0.03, 1.7, StepWay.Down)));

    /// <summary>Weights 1/4 before any reading and 1 for each of two sisters at 3 and 5: mean 8 over 2.25, and a further one's own besides.</summary>
    [Fact]
    public void What_all_share_is_drawn_to_what_is_usual() => Same(new Family(8 / 2.25, Math.Sqrt(1 / 2.25 + 1), 8, 2), Family.Sharing([3, 5], 0, 2, 1, 8));

    /// <summary>Without a sister what is usual stands; one of three far off is drawn in to 2.5 of a member's own.</summary>
    [Fact]
    public void A_bad_sister_hardly_moves_what_all_share()
    {
        Same(new Family(1, Math.Sqrt(5), 8, 0), Family.Sharing([], 1, 2, 1, 8));
        Same(new Family(2.5 / 3.25, Math.Sqrt(1 / 3.25 + 1), 8, 3), Family.Sharing([0, 0, 50], 0, 2, 1, 8));
    }

    private static void Same(Family hand, Family made)
    {
        Assert.Equal(hand.Mean, made.Mean, 1e-9);
        Assert.Equal(hand.Deviation, made.Deviation, 1e-9);
        Assert.Equal(hand.Degrees, made.Degrees, 1e-12);
        Assert.Equal(hand.Members, made.Members);
    }
}
