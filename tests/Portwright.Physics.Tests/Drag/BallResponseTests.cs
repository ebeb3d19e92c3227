using Portwright.Physics.Drag;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Drag;

public sealed class BallResponseTests
{
    private static readonly ExpectedBallLoss Expected = BallLoss.Expected(BallLossTests.Air());

    private static double Usual => Expected.Fall.Value;

    [Fact]
    public void The_four_probabilities_share_out_the_whole()
    {
        foreach (var share in new[] { -1, -0.2, 0, 0.4, 0.66, 1, 1.5, 2.5 })
        {
            var r = Respond(share * Usual, 0.003);
            Assert.Equal(1, r.ProbabilityTornOff + r.ProbabilityLazy + r.ProbabilityWorking + r.ProbabilityBusier, 1e-12);
        }
    }

    [Theory]
    [InlineData(-1, BallAnswer.TornOff)]
    [InlineData(0.1, BallAnswer.Lazy)]
    [InlineData(1, BallAnswer.Working)]
    [InlineData(2.5, BallAnswer.Busier)]
    [InlineData(0.55, BallAnswer.Undecided)]
    public void The_answer_follows_what_the_ball_took(double share, BallAnswer answer) =>
        Assert.Equal(answer, Respond(share * Usual, 0.002).Answer);

    [Fact]
    public void With_a_rough_bench_nothing_is_decided_and_with_two_degrees_of_freedom_neither()
    {
        Assert.Equal(BallAnswer.Undecided, Respond(0.1 * Usual, 0.03).Answer);
        Assert.Equal(BallAnswer.Undecided, BallResponse.Of(new(-Usual, [new("repeats", 0.02 * Usual, 2)]),
            new(Expected.Share, new(Usual, []), Expected.Working, null)).Answer);
    }

    [Fact]
    public void A_drift_that_is_linear_in_the_order_of_readings_leaves_no_loss()
    {
        Estimate Flow(double value, string name) => new(value, [new(name, 0.3, 20)]);
        for (var order = 0.1; order < 1; order += 0.2)
        {
            var fall = BallResponse.MeasuredFall(Flow(200, "a"), Flow(198, "c"), Flow(200 - 2 * order, "b"), "p", order);
            Assert.Equal(0, fall.Value, 1e-12);
            Assert.True(fall.StandardUncertainty * 200 > 2 / Math.Sqrt(12), "the drift may not have been linear");
        }
        Assert.Equal(Verdict.Real, BallResponse.Drift(Flow(200, "a"), Flow(198, "c")).Verdict);
        Assert.NotEqual(Verdict.Real, BallResponse.Drift(Flow(200, "a"), Flow(199.7, "c")).Verdict);
    }

    [Fact]
    public void A_common_error_of_the_meter_does_not_move_the_fall()
    {
        Estimate Flow(double value, string name) => new(value, [new("plate", 0.02 * value), new(name, 0.1, 20)]);
        var fall = BallResponse.MeasuredFall(Flow(200, "a"), Flow(200, "c"), Flow(194, "b"), "p");
        Assert.Equal(0.03, fall.Value, 1e-12);
        Assert.True(fall.StandardUncertainty < 0.001);
    }

    /// <summary>Nine cfm on one side, six on the other, of 200: with 0.3 cfm a reading that is real, with 1.2 cfm it is not.</summary>
    [Theory]
    [InlineData(0.3, Verdict.Real)]
    [InlineData(1.2, Verdict.InsideTheNoise)]
    public void Nine_cfm_on_one_side_and_six_on_the_other(double doubt, Verdict verdict)
    {
        Estimate Flow(double value, string name) => new(value, [new("plate", 0.01 * value), new(name, doubt, 20)]);
        Estimate before = Flow(200, "before"), after = Flow(200, "after");
        var centre = BallResponse.MeasuredFall(before, after, Flow(191, "centre side"), "centre side");
        var cylinder = BallResponse.MeasuredFall(before, after, Flow(194, "cylinder-wall side"), "cylinder-wall side");
        var difference = Comparison.Compare(cylinder, centre);
        Assert.Equal(0.015, difference.Of.Value, 1e-12);
        Assert.Equal(verdict, difference.Verdict);
        // The reference readings serve both sides alike: only the two ball readings are left in doubt.
        Assert.Equal(Math.Sqrt(2) * doubt / 200, difference.Of.StandardUncertainty, 0.04 * doubt / 200);
    }

    [Fact]
    public void The_interval_of_the_ratio_holds_the_ratio_and_is_unknown_for_a_loss_that_is_not_clear_of_zero()
    {
        var r = Respond(1.2 * Usual, 0.002);
        var interval = r.RatioInterval()!.Value;
        Assert.True(interval.Low < 1.2 && interval.High > 1.2 && interval.High - 1.2 > 1.2 - interval.Low);
        Assert.Equal(1.2, r.Ratio!.Value, 1e-12);
        Assert.Null(BallResponse.Of(r.Fall, new(Expected.Share, new(Usual, [new("wild", Usual)]), Expected.Working, null)).RatioInterval());
    }

    /// <summary>
    /// A 3/8 inch ball at the short side of a port of 200 cfm at 28 inH2O, air said to move at 100 m/s with 3 percent doubt; readings scatter by
    /// 0.3 percent, two of the reference and three with the ball. Healthy: the ball takes what the air's true speed, drag and walls make it take. Torn
    /// off: the flow rises by 0.5 to 2 percent.
    /// </summary>
    [Fact]
    public void A_short_side_torn_off_and_a_healthy_one_are_told_apart()
    {
        const int trials = 4000;
        const double scatter = 0.003;
        var random = new Random(20_260_403);
        int healthyRight = 0, tornRight = 0;
        var named = new int[2, Enum.GetValues<BallAnswer>().Length];
        double Noise() => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
        Estimate Read(double flow, string name, int readings)
        {
            var mean = 0.0;
            for (var i = 0; i < readings; i++) mean += flow * (1 + scatter * Noise()) / readings;
            return new(mean, [new(name, scatter * flow / Math.Sqrt(readings), 20, ContributionKind.Repeat, "bench scatter", readings)]);
        }
        for (var trial = 0; trial < trials; trial++)
        {
            // What the expected loss does not know: true speed, drag, walls, and that a port is no pipe.
            var air = BallLossTests.Air(speed: 100 * (1 + Math.Sqrt(0.01 * 0.01 + 0.02 * 0.02) * Noise()));
            var expected = BallLoss.Expected(air);
            var share = BallLoss.Expected(BallLossTests.Air()).Share.Value
                * (1 + expected.Working.Drag.RelativeUncertainty * Noise()) * (1 + expected.Working.Confinement.RelativeUncertainty * Noise())
                * (1 + BallLoss.PortUncertainty * Noise());
            var drift = 0.002 * Noise();
            BallResponse Check(double fall) => BallResponse.Of(
                BallResponse.MeasuredFall(Read(200, "before", 2), Read(200 * (1 + drift), "after", 2), Read(200 * (1 + drift / 2) * (1 - fall), "ball", 3), "short side"),
                expected);
            var healthy = Check(BallLoss.FallFromShare(share));
            var torn = Check(-(0.005 + 0.015 * random.NextDouble()));
            healthyRight += IsHealthy(healthy) ? 1 : 0;
            tornRight += IsHealthy(torn) ? 0 : 1;
            named[0, (int)healthy.Answer]++;
            named[1, (int)torn.Answer]++;
        }
        string Answers(int row) => string.Join(", ", Enum.GetValues<BallAnswer>().Select(a => FormattableString.Invariant($"{a} {named[row, (int)a] / (double)trials:P1}")));
        var figures = FormattableString.Invariant(
            $"told apart: healthy {healthyRight / (double)trials:P2}, torn off {tornRight / (double)trials:P2}; answers: healthy {Answers(0)}; torn off {Answers(1)}; expected fall {Usual:P2} +- {Expected.Fall.StandardUncertainty:P2}");
        TestContext.Current.TestOutputHelper!.WriteLine(figures);
        Assert.True(healthyRight >= 0.95 * trials && tornRight >= 0.95 * trials, figures);
        Assert.True(named[1, (int)BallAnswer.TornOff] + named[1, (int)BallAnswer.Lazy] >= 0.95 * trials, figures);
        Assert.True(named[0, (int)BallAnswer.TornOff] + named[0, (int)BallAnswer.Lazy] <= 0.01 * trials, figures);
    }

    /// <summary>Healthy where the air is more likely attached and at work than lazy or torn off, whether or not the answer is sure enough to be named.</summary>
    private static bool IsHealthy(BallResponse r) => r.ProbabilityWorking + r.ProbabilityBusier > r.ProbabilityTornOff + r.ProbabilityLazy;

    private static BallResponse Respond(double fall, double doubt) => BallResponse.Of(new(fall, [new("readings", doubt, 12)]), Expected);
}
