using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;

namespace Portwright.Shop.Tests.Findings;

/// <summary>What mending a loss brings, by losses in series worked by hand: Ae' = Ae / sqrt(1 - share of the whole loss that goes).</summary>
public sealed class GainByHand
{
    private static readonly Survey.PortSurvey Port = new MadePort(3) { RingsAt = [], Places = [], ExhaustShare = null, Repeats = 1 }.Survey();

    /// <summary>The port's part of the loss at a lift is 1 - x, with x the square of the measured area over the best the window passes (docs/theory).</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.2)]
    public void A_share_of_the_ports_loss_goes(double share)
    {
        var window = Port.Sheet.Windows.Single(w => Math.Abs(w.Lift - 0.010) < 1e-6);
        var x = Math.Pow(window.OfWindow.Value / ExpectedGain.BestWindow, 2);
        var flow = Port.Sheet.Flow!.Curve.PointAt(0.010)!.Flow.Value;
        Assert.Equal(1 / Math.Sqrt(1 - (1 - x) * share) - 1, ExpectedGain.OfPort(Port, Estimate.Exact(share), 0.010, 0.010)!.Value / flow, 1e-6);
        Assert.Equal(1 / Math.Sqrt(1 - x * share) - 1, ExpectedGain.OfWindow(Port, Estimate.Exact(share), 0.010, 0.010)!.Value / flow, 1e-6);
    }

    /// <summary>Nine tenths of a loss are the most that goes: flow times the root of ten. At low lift nearly all of it is the window's.</summary>
    [Fact]
    public void Never_more_than_nine_tenths_of_a_loss_go()
    {
        var flow = Port.Sheet.Flow!.Curve.PointAt(0.0025)!.Flow.Value;
        Assert.Equal(Math.Sqrt(10) - 1, ExpectedGain.OfWindow(Port, Estimate.Exact(1), 0.0025, 0.0025)!.Value / flow, 1e-6);
        Assert.Equal(Math.Sqrt(10) - 1, ExpectedGain.OfWindow(Port, Estimate.Exact(1.2), 0.0025, 0.0025)!.Value / flow, 1e-6);
        Assert.Equal(0, ExpectedGain.OfWindow(Port, Estimate.Exact(-0.2), 0.0025, 0.0025)!.Value, 1e-9);
    }

    [Fact]
    public void Only_lifts_that_were_tested_in_the_range_count()
    {
        Assert.Null(ExpectedGain.OfPort(Port, Estimate.Exact(0.5), 0.0101, 0.0124));
        var one = ExpectedGain.OfPort(Port, Estimate.Exact(0.5), 0.010, 0.010)!.Value;
        var two = ExpectedGain.OfPort(Port, Estimate.Exact(0.5), 0.010, 0.0125)!.Value;
        var last = ExpectedGain.OfPort(Port, Estimate.Exact(0.5), 0.0125, 0.0125)!.Value;
        Assert.Equal((one + last) / 2, two, 1e-9);
    }

    /// <summary>The gain's doubt is the judged share's, through the slope of the gain: for a small share half of it for each of the share.</summary>
    [Fact]
    public void The_gain_is_as_unsure_as_the_share()
    {
        var window = Port.Sheet.Windows.Single(w => Math.Abs(w.Lift - 0.010) < 1e-6);
        var x = Math.Pow(window.OfWindow.Value / ExpectedGain.BestWindow, 2);
        var flow = Port.Sheet.Flow!.Curve.PointAt(0.010)!.Flow.Value;
        var gain = ExpectedGain.OfPort(Port, ExpectedGain.Judged(0.1, 0.04, "judged"), 0.010, 0.010)!;
        Assert.Equal((1 - x) / 2 * Math.Pow(1 - (1 - x) * 0.1, -1.5) * 0.04, gain.StandardUncertainty / flow, 1e-4);
    }
}
