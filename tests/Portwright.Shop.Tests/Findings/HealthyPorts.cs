using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Findings;

/// <summary>Ten healthy ports, each with its own noise: the catalogue has nothing to say about them.</summary>
public sealed class HealthyPorts(ITestOutputHelper output)
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 10)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_healthy_port_is_left_in_peace(int seed)
    {
        var port = new MadePort(seed).Survey();
        foreach (var ball in port.Balls)
        {
            output.WriteLine($"{ball.Station.Fact.Letter} {ball.Bearing}: {ball.Response?.Answer} fall {ball.Fall.Value:P2} expected {ball.Response?.Expected.Fall.Value:P2} {ball.Problem}");
        }

        Assert.Empty(port.Remarks);
        Assert.Equal(9, port.Balls.Count());
        Assert.Equal(3, port.Stations.Count(s => s.Ring is not null));
        Assert.Empty(PortFindings.Of(port).Select(f => $"{f.Title}: {f.Sentence.Us()} ({f.Confidence:F3})"));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Nor_does_a_finer_bench_find_fault_with_it(int seed)
    {
        var port = new MadePort(seed) { Range = Ranges.OfEachKind[3] }.Survey();
        Assert.Empty(PortFindings.Of(port).Select(f => $"{f.Title}: {f.Sentence.Us()} ({f.Confidence:F3})"));
    }

    [Fact]
    public void Air_torn_off_the_short_side_is_found_by_ball_and_flag()
    {
        var port = new MadePort(1)
        {
            BallFactor = (s, b) => s == "D" && b == 6 ? -0.4 : 1,
            Flag = (s, b) => s == "D" && b == 6 ? Steadiness.TurnsBack : Steadiness.Still,
        }.Survey();
        var finding = Assert.Single(PortFindings.Of(port), f => f.Rule.Key == "short-side-torn-off");
        Assert.Equal("The air is torn off the short side at D", finding.Title);
        Assert.True(finding.Confidence > 0.95);
        Assert.True(finding.Suggestion!.Gain.Value > 0);
        output.WriteLine(finding.Sentence.Us());
    }

    [Fact]
    public void A_thin_wall_is_a_stop_and_takes_the_cut_away()
    {
        var port = new MadePort(2)
        {
            BallFactor = (s, b) => s == "D" && b == 6 ? -0.4 : 1,
            Wall = (s, b) => 0.0254 * (s == "D" && b == 6 ? 0.094 : 0.200),
        }.Survey();
        var findings = PortFindings.Of(port);
        Assert.Equal("Leave the metal at D", Assert.Single(findings, f => f.Kind == FindingKind.Stop).Title);
        var torn = Assert.Single(findings, f => f.Rule.Key == "short-side-torn-off");
        Assert.Null(torn.Suggestion);
        output.WriteLine(torn.Sentence.Us());
        Assert.Contains("Nothing is to be cut here: .094 in of metal at D, 6 o'clock (floor), water behind it, limit .120 in", torn.Sentence.Us(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_port_that_falls_off_past_its_peak_backs_up_and_one_that_goes_flat_does_not()
    {
        var made = new MadePort(3);
        var flat = made.EffectiveArea(0.010);
        made.FlowFactor = lift => lift > 0.0101 ? flat / new MadePort(3).EffectiveArea(lift) : 1;
        Assert.DoesNotContain(PortFindings.Of(made.Survey()), f => f.Rule.Key == "backs-up");
        made.FlowFactor = lift => lift > 0.0101 ? 0.96 * flat / new MadePort(3).EffectiveArea(lift) : 1;
        var found = Assert.Single(PortFindings.Of(made.Survey()), f => f.Rule.Key == "backs-up");
        Assert.Contains("The cam", found.Sentence.Us(), StringComparison.Ordinal);
        Assert.Equal([0.010, 0.0125], found.Lifts.Select(l => Math.Round(l, 6)));
    }
}
