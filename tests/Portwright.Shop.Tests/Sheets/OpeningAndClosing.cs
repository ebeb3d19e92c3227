using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Tests.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Sheets;

/// <summary>What a port flows with the valve closing against what it flows opening, in one set-up: said where it is more than its doubt, and once that they agree.</summary>
public sealed class OpeningAndClosing
{
    private static readonly double[] Inches = [.1, .2, .3, .4, .5, .6];

    [Fact]
    public void Alike_both_ways_agree() => Assert.Equal("Opening and closing agree within their doubt.", Words(_ => 1));

    /// <summary>
    /// The card's repeat scatter of 0.3 percent, known to 4 degrees: 0.42 percent in a difference, and at five lifts compared together the first of them is real at 1 percent's t of 4.6: 1.95 percent
    /// and a little more for lift and scale.
    /// </summary>
    [Theory]
    [InlineData(0.978, "At .300 closing flows ")]
    [InlineData(1.022, "At .300 closing flows ")]
    [InlineData(0.983, "Opening and closing agree within their doubt.")]
    [InlineData(1.017, "Opening and closing agree within their doubt.")]
    public void One_lift_that_parts_is_named(double share, string begins)
    {
        var words = Words(lift => lift == .3 ? share : 1);
        Assert.StartsWith(begins, words, StringComparison.Ordinal);
        if (begins.StartsWith("At", StringComparison.Ordinal))
        {
            Assert.Contains(share < 1 ? " cfm less than opening: look for lash" : " cfm more than opening: look for lash", words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Several_are_counted()
    {
        var words = Words(lift => lift is .2 or .3 or .4 ? 0.97 : 1);
        Assert.Contains("less than opening, and 2 other lifts part too: look for lash in the lift screw.", words, StringComparison.Ordinal);
    }

    /// <summary>What is too little at each lift by itself is told over all of them: 0.42 percent over the root of four, by 5 percent's t of 2.78.</summary>
    [Theory]
    [InlineData(0.992, "Over all lifts closing flows ")]
    [InlineData(0.996, "Opening and closing agree within their doubt.")]
    public void A_little_everywhere_is_told_over_all_lifts(double share, string begins) => Assert.StartsWith(begins, Words(_ => share), StringComparison.Ordinal);

    /// <summary>Bench, day, meter and set-up move both ways alike: their doubt is not in the difference, which three percent of set-up scatter would drown.</summary>
    [Fact]
    public void What_both_ways_share_cancels()
    {
        var apart = Apart(_ => 0.97, BenchDoubt.Unknown with { SetUpScatter = 0.03, Drift = 0.03 });
        Assert.All(apart!.Curves.Lifts, l => Assert.DoesNotContain(l.Difference.Of.Contributions, c => c.Kind is ContributionKind.SetUp or ContributionKind.Drift && Math.Abs(c.Amount) > Math.Abs(l.Difference.Of.Value) * 0.04));
        Assert.NotNull(apart.Most);
    }

    [Fact]
    public void Each_way_sets_its_lifts_by_itself()
    {
        Assert.NotNull(Apart(_ => 0.97, BenchDoubt.Unknown)!.Most);
        // A lift set to a third of a millimetre says nothing.
        Assert.Null(Apart(_ => 0.97, BenchDoubt.Unknown with { Lift = 0.0003 })!.Most);
    }

    [Fact]
    public void A_run_that_only_opens_has_nothing_to_compare_and_another_pressure_is_no_other_way()
    {
        var run = TestRun.Of(RunWalks.Lifts(Inches), PassPattern.UpAndUp, [new([.. RunWalks.Lifts(.5, .3)], RunWalks.Inches(15))]);
        Assert.Equal(PassWay.Closing, run.WayOf(run.Steps[^1]));
        Assert.Null(Of(run, _ => 0.9, BenchDoubt.Unknown));
    }

    private static string Words(Func<double, double> closing) => Apart(closing, BenchDoubt.Unknown)!.Words.In(UnitSystem.UsCustomary);

    private static PassesApart? Apart(Func<double, double> closing, BenchDoubt doubt) => Of(TestRun.Of(RunWalks.Lifts(Inches), PassPattern.UpAndDown, []), closing, doubt);

    private static PassesApart? Of(TestRun run, Func<double, double> closing, BenchDoubt doubt)
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[8], doubt);
        var sweep = bench.Add(run.On(RunWalks.Plain()) with { Cut = bench.Cut(0), Bench = bench.BenchId, Range = bench.Range.Name });
        foreach (var step in run.Steps)
        {
            var area = 0.0012 * Math.Sin(step.Lift.Value * 2.2) * (run.WayOf(step) == PassWay.Closing ? closing(step.Lift.Value) : 1);
            bench.Add(new FlowReading(sweep, step.Lift, bench.Shows(area, FlowDirection.Draw, step.TestPressure?.Value ?? 28), TestPressure: step.TestPressure, Pass: step.Pass));
        }

        var kept = bench.Ledger.Get<Sweep>(sweep);
        return PassesApart.Of(RunWalk.Of(bench.Ledger, kept), SweepReduction.Reduce(bench.Ledger, kept));
    }
}
