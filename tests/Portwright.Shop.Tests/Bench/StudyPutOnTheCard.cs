using Portwright.Shop.Bench;
using Portwright.Shop.Record;

namespace Portwright.Shop.Tests.Bench;

/// <summary>What a study of set-ups found goes onto the bench card; what it could not tell stays as it was.</summary>
public sealed class StudyPutOnTheCard
{
    private static readonly BenchDoubt Card = BenchDoubt.Unknown with { RepeatScatter = 0.004, RepeatDegrees = 9 };

    [Fact]
    public void Repeats_within_a_set_up_take_the_cards_place() => Assert.Equal((0.002, 6), Repeats(new SetUpScatter(0.003, 4, 0.002, 6, 3, [])));

    [Fact]
    public void One_reading_a_set_up_says_nothing_of_repeats() => Assert.Equal((0.004, 9), Repeats(new SetUpScatter(0.003, 4, 0, 0, 3, [])));

    [Fact]
    public void A_scatter_of_set_ups_is_known_by_one_degree_at_least()
    {
        Assert.Equal(1, new SetUpScatter(0.003, 0.4, 0.002, 6, 3, []).PutOn(Card).SetUpDegrees);
        Assert.Equal(1.4, new SetUpScatter(0.003, 1.4, 0.002, 6, 3, []).PutOn(Card).SetUpDegrees);
        Assert.Equal(0.003, new SetUpScatter(0.003, 1.4, 0.002, 6, 3, []).PutOn(Card).SetUpScatter);
    }

    private static (double, double?) Repeats(SetUpScatter study)
    {
        var doubt = study.PutOn(Card);
        return (doubt.RepeatScatter, doubt.RepeatDegrees);
    }
}
