using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Targets;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Targets;

/// <summary>Short, over and within are said with nine chances in ten; between them the doubt reaches over the edge. The normal deviate of nine in ten is 1.2816.</summary>
public sealed class AnswersOnTheEdge
{
    [Theory]
    [InlineData(98.71, TargetAnswer.Short)]
    [InlineData(98.73, TargetAnswer.CannotTell)]
    [InlineData(101.27, TargetAnswer.CannotTell)]
    [InlineData(101.29, TargetAnswer.Within)]
    [InlineData(150, TargetAnswer.Within)]
    [InlineData(198.71, TargetAnswer.Within)]
    [InlineData(198.73, TargetAnswer.CannotTell)]
    [InlineData(201.27, TargetAnswer.CannotTell)]
    [InlineData(201.29, TargetAnswer.Over)]
    public void A_target_is_missed_where_nine_chances_in_ten_say_so(double measured, TargetAnswer answer) =>
        Assert.Equal(answer, Target(new TargetRange(100, 200), new Estimate(measured, [new("reading", 1)])).Answer);

    [Theory]
    [InlineData(98.71, TargetAnswer.Short)]
    [InlineData(101.29, TargetAnswer.Within)]
    [InlineData(1e6, TargetAnswer.Within)]
    public void What_is_wanted_or_more_is_never_over(double measured, TargetAnswer answer) =>
        Assert.Equal(answer, Target(TargetRange.AtLeast(100), new Estimate(measured, [new("reading", 1)])).Answer);

    /// <summary>An edge that may lie five to either side is missed only past it, whatever the reading.</summary>
    [Theory]
    [InlineData(95.9, TargetAnswer.Short)] // Nine tenths of the edge's range lie over 96.
    [InlineData(96.1, TargetAnswer.CannotTell)]
    [InlineData(103.9, TargetAnswer.CannotTell)]
    [InlineData(104.1, TargetAnswer.Within)]
    public void A_vague_edge_leaves_it_open(double measured, TargetAnswer answer) => Assert.Equal(answer, Target(new TargetRange(100, 200, 5), Estimate.Exact(measured)).Answer);

    [Fact]
    public void Nothing_wanted_or_nothing_measured_is_no_answer()
    {
        Assert.Equal(TargetAnswer.None, Target(null, Estimate.Exact(1)).Answer);
        Assert.Equal(TargetAnswer.None, Target(new TargetRange(100, 200), null).Answer);
        Assert.Equal(TargetAnswer.None, Target(TargetRange.Exactly(100), Estimate.Exact(1)).Answer);
    }

    private static EngineTarget Target(TargetRange? wanted, Estimate? measured) => new(FlowBalance.Rule, $"a target", Dimension.Ratio, wanted, measured, Sentence.Empty);
}
