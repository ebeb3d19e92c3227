using Portwright.Physics.TestPiece;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Bench;

public sealed class SetUpScatterTests
{
    private static readonly DateOnly Day = new(2025, 3, 3);

    /// <summary>Effective areas of one port put up forty times, read three times each: the truth every meter must find again.</summary>
    private static readonly double[][] True = Drawn(0.006, 0.001);

    public static TheoryData<string> Meters => [.. Ranges.OfEachKind.Select(r => r.Name)];

    [Theory]
    [MemberData(nameof(Meters))]
    public void The_same_scatter_is_found_on_every_kind_of_meter(string meter)
    {
        var bench = new SimulatedBench(Ranges.OfEachKind.Single(r => r.Name == meter));
        foreach (var direction in new[] { FlowDirection.Draw, FlowDirection.Blow })
        {
            var scatter = Of(bench, new SetUpStudy(
                bench.BenchId, Day, "head A", Read(bench, direction), meter, Typed.Of(28, "inH2O"), direction, bench.Air()))!;
            var truth = SetUpScatter.Of(
                new SetUpStudy(Guid.Empty, Day, "", [.. True.Select(g => (IReadOnlyList<Typed>)[.. g.Select(a => Typed.Of(a, "cfm"))])]), TwoReadouts())!;
            Assert.Equal(truth.SetUpShare, scatter.SetUpShare, 5e-5);
            Assert.Equal(truth.RepeatShare, scatter.RepeatShare, 1e-5);
            Assert.InRange(scatter.SetUpDegrees, 30, 39);
            Assert.Empty(scatter.Remarks);
        }
    }

    [Fact]
    public void Set_ups_that_scatter_more_than_their_repeats_show_it()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        var scatter = Of(bench, new SetUpStudy(bench.BenchId, Day, "head A", Read(bench, FlowDirection.Draw)))!;
        Assert.InRange(scatter.SetUpShare, 0.0045, 0.0075);
        Assert.InRange(scatter.RepeatShare, 0.0008, 0.0012);
    }

    [Fact]
    public void A_study_that_names_no_range_is_read_on_the_only_one_there_is()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        var readings = Read(bench, FlowDirection.Draw);
        var named = Of(bench, new SetUpStudy(bench.BenchId, Day, "head A", readings, "plate"))!;
        Assert.Equal(named.SetUpShare, Of(bench, new SetUpStudy(bench.BenchId, Day, "head A", readings))!.SetUpShare);
    }

    [Fact]
    public void Without_a_range_cfm_are_shares_of_the_flow_and_inches_of_water_are_not()
    {
        IReadOnlyList<IReadOnlyList<Typed>> Groups(string unit) =>
            [[Typed.Of(100, unit), Typed.Of(101, unit)], [Typed.Of(103, unit), Typed.Of(104, unit)], [Typed.Of(98, unit), Typed.Of(98, unit)]];
        var bench = TwoReadouts();
        var said = Assert.Single(SetUpScatter.Of(new SetUpStudy(bench.Id, Day, "head A", Groups("cfm")), bench)!.Remarks);
        Assert.Contains("does not say on which range", said, StringComparison.Ordinal);

        var plates = bench with { Fact = bench.Fact with { Ranges = [Ranges.OfEachKind[0], Ranges.OfEachKind[1]] } };
        var refused = Assert.Throws<ArgumentException>(() => SetUpScatter.Of(new SetUpStudy(bench.Id, Day, "head A", Groups("inH2O")), plates));
        Assert.Contains("need not be in proportion to the flow. Type the study again", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_study_that_cannot_be_read_is_refused_where_it_is_typed()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        Entry Entered(SetUpStudy study) => Entry.About(Guid.NewGuid(), null, study, SimulatedBench.Morning);
        var good = new SetUpStudy(bench.BenchId, Day, "head A", Read(bench, FlowDirection.Draw), "plate");
        Assert.Null(Trial.Refuses(bench.Ledger, Entered(good)));
        Assert.Contains("no range named 'large'", Trial.Refuses(bench.Ledger, Entered(good with { Range = "large" })), StringComparison.Ordinal);
        Assert.Contains("Fewer than two set-ups", Trial.Refuses(bench.Ledger, Entered(good with { SetUps = [good.SetUps[0]] })), StringComparison.Ordinal);
        Assert.Contains("cannot be an air flow", Trial.Refuses(bench.Ledger, Entered(good with { SetUps = [.. good.SetUps, [Typed.Of(900, "inH2O")]] })), StringComparison.Ordinal);
    }

    private static SetUpScatter? Of(SimulatedBench bench, SetUpStudy study) => SetUpScatter.Of(study, bench.Ledger.Get<BenchCard>(bench.BenchId));

    private static IReadOnlyList<IReadOnlyList<Typed>> Read(SimulatedBench bench, FlowDirection direction) =>
        [.. True.Select(g => (IReadOnlyList<Typed>)[.. g.Select(a => bench.Shows(a, direction))])];

    private static Kept<BenchCard> TwoReadouts()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[7]);
        var card = bench.Ledger.Get<BenchCard>(bench.BenchId);
        return card with { Fact = card.Fact with { Ranges = [Ranges.OfEachKind[7], Ranges.OfEachKind[8]] } };
    }

    private static double[][] Drawn(double between, double within)
    {
        var random = new Random(11);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        return [.. Enumerable.Range(0, 40).Select(_ =>
        {
            var setUp = 0.0009 * (1 + between * Normal());
            return Enumerable.Range(0, 3).Select(_ => setUp * (1 + within * Normal())).ToArray();
        })];
    }
}
