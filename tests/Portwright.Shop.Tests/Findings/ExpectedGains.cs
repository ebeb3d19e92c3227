using CsCheck;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;

namespace Portwright.Shop.Tests.Findings;

/// <summary>The expected gain keeps to its limits.</summary>
public sealed class ExpectedGains
{
    private static readonly MadePort Healthy = new(41) { RingsAt = [], Places = [], ExhaustShare = null };

    [Fact]
    public void Taking_no_share_of_the_loss_gains_nothing()
    {
        var port = Healthy.Survey();
        Assert.Equal(0, ExpectedGain.OfPort(port, Estimate.Exact(0), 0.0025, 0.0125)!.Value, 12);
        Assert.Equal(0, ExpectedGain.OfWindow(port, Estimate.Exact(0), 0.0025, 0.0125)!.Value, 12);
    }

    [Fact]
    public void A_larger_share_never_gains_less()
    {
        var port = Healthy.Survey();
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Bool).Sample((a, b, window) =>
        {
            double Gain(double share) => (window
                ? ExpectedGain.OfWindow(port, Estimate.Exact(share), 0.0025, 0.0125)
                : ExpectedGain.OfPort(port, Estimate.Exact(share), 0.0025, 0.0125))!.Value;
            Assert.True(Gain(Math.Min(a, b)) <= Gain(Math.Max(a, b)) + 1e-15);
            Assert.True(Gain(a) >= 0);
        }, iter: 300);
    }

    [Fact]
    public void A_port_that_passes_all_its_window_allows_gains_nothing_by_cutting()
    {
        // The whole loss is the window's: past 0.95 of it nothing is left for the port.
        var made = new MadePort(42) { RingsAt = [], Places = [], ExhaustShare = null, PortArea = 10, FlowFactor = _ => 0.97 / 0.92 };
        var port = made.Survey();
        Assert.Equal(0, ExpectedGain.OfPort(port, ExpectedGain.Judged(0.5, 0.2, "any cut"), 0.0025, 0.0125)!.Value, 12);
        Assert.True(ExpectedGain.OfWindow(port, Estimate.Exact(0.1), 0.0025, 0.0125)!.Value > 0);
    }

    [Fact]
    public void A_share_of_the_whole_loss_adds_up_in_series_by_hand()
    {
        // Without a valve the whole loss is the port's: a quarter of it gone leaves sqrt(1/0.75) of the flow.
        var made = new MadePort(43) { RingsAt = [], Places = [], ExhaustShare = null };
        var port = made.Survey();
        port = port with { Sheet = port.Sheet with { Windows = [] } };
        var flow = port.Sheet.Flow!.Curve.PointAt(0.0125)!.Flow.Value;
        Assert.Equal(flow * (1 / Math.Sqrt(0.75) - 1), ExpectedGain.OfPort(port, Estimate.Exact(0.25), 0.0125, 0.0125)!.Value, 9);
    }

    [Fact]
    public void Doubt_of_the_share_becomes_doubt_of_the_gain()
    {
        var port = Healthy.Survey();
        var gain = ExpectedGain.OfPort(port, ExpectedGain.Judged(0.2, 0.1, "any cut"), 0.005, 0.0125)!;
        // A gain about straight in its share has half its size in doubt where the share has.
        Assert.InRange(gain.StandardUncertainty / gain.Value, 0.45, 0.65);
    }

    [Fact]
    public void Where_nothing_was_swept_no_gain_is_guessed() =>
        Assert.Null(ExpectedGain.OfPort(Healthy.Survey(), Estimate.Exact(0.2), 0.014, 0.016));
}
