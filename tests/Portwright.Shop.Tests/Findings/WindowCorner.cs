using Portwright.Shop.Diagnosis;

namespace Portwright.Shop.Tests.Findings;

public sealed class WindowCorner
{
    [Fact]
    public void The_corner_where_the_throat_takes_over_is_no_unsteadiness_of_the_air()
    {
        // A port without a loss of its own follows its valve window exactly, read at lifts a tenth of an inch apart.
        var port = new MadePort(5) { PortArea = 1, Lifts = [.. Enumerable.Range(1, 6).Select(i => 0.00254 * i)], RingsAt = [], Places = [] }.Survey();
        Assert.DoesNotContain(PortFindings.Of(port), f => f.Rule.Key == "curve-unsteady");
    }

    [Fact]
    public void A_lift_that_reads_a_third_high_is_seen_all_the_same()
    {
        var port = new MadePort(5)
        {
            Lifts = [.. Enumerable.Range(1, 6).Select(i => 0.00254 * i)],
            FlowFactor = lift => Math.Abs(lift - 0.00762) < 1e-6 ? 1.3 : 1,
            RingsAt = [],
            Places = [],
        }.Survey();
        var found = Assert.Single(PortFindings.Of(port), f => f.Rule.Key == "reading-out-of-line");
        Assert.Contains(0.00762, found.Lifts.Select(l => Math.Round(l, 6)));
    }
}
