using Portwright.Shop.Judgement;

namespace Portwright.Shop.Tests.Judgement;

/// <summary>
/// What probe and ball say of one place, against integrals known in closed form (two normals make a normal of their summed variances) and, for
/// the ball's cube, against quadrature on a grid twenty times as fine, worked outside the program.
/// </summary>
public sealed class AirByQuadrature
{
    /// <summary>All of the grid's width, 126 classes of 0.02: a reading that is of elsewhere is as likely everywhere.</summary>
    private const double Blind = 1 / (126 * 0.02);

    /// <summary>9,997 readings in 10,000 are of the place; three sound places in 100 lie 1.7 times as wide; a probe held at a place is open by 0.02.</summary>
    [Theory]
    [InlineData(0, 0.1, 0.13)]
    [InlineData(0.1, 0.1, 0.13)]
    [InlineData(0.4, 0.05, 0.13)]
    [InlineData(0.12, 0.02, 0.04)]
    [InlineData(0.16, 0.02, 0.04)]
    [InlineData(-1, 0.05, 0.13)]
    public void A_probe_is_as_likely_as_the_normals_say(double log, double doubt, double spread)
    {
        double At(double s) => 0.9997 * Normal(log, s * s + doubt * doubt + 0.0004) + 0.0003 * Blind;
        var expected = 0.97 * At(spread) + 0.03 * At(1.7 * spread);
        Assert.Equal(expected, AirLikelihood.Of((log, doubt), null).Under(0, spread), 2e-3 * expected);
    }

    /// <summary>With the step the mean moves, and no place is wider: here all of the air is 0.5 slower.</summary>
    [Fact]
    public void A_step_moves_the_mean()
    {
        var slower = AirLikelihood.Of((-0.5, 0.1), null).Under(0, 0.13, new Step(0.5, 1, StepWay.Down));
        Assert.Equal(0.9997 * Normal(0, 0.0169 + 0.0104) + 0.0003 * Blind, slower, 2e-3 * slower);
    }

    /// <summary>The whole reach of speeds is looked at, from a fifth of even air's to 2.4 times it; doubt 0.01 and the place's 0.02, and the class's own width over the root of 12.</summary>
    [Theory]
    [InlineData(-1.5)]
    [InlineData(0)]
    [InlineData(0.8)]
    public void A_probe_alone_says_its_own_speed(double log)
    {
        var (mean, spread) = AirLikelihood.Of((log, 0.01), null).ByProbe!.Value;
        Assert.Equal(log, mean, 1e-4);
        Assert.Equal(Math.Sqrt(0.0001 + 0.0004 + 0.02 * 0.02 / 12), spread, 1e-4);
    }

    /// <summary>Drag times speed goes with the cube: a ball that loses e^0.6 of its due stands in air 0.2 faster.</summary>
    [Theory]
    [InlineData(0.2)]
    [InlineData(-0.3)]
    public void A_ball_says_the_cube_root_of_its_loss(double log)
    {
        var (mean, spread) = Ball(log, 0.03).ByBall!.Value;
        Assert.Equal(log, mean, 3e-3);
        Assert.Equal(0.03 / 3, spread, 4e-3);
    }

    /// <summary>
    /// A ball that loses a tenth of its due of 0.02 (doubt 0.0016), as likely as 80 where the air is off; the probe there slow or not, or not held. Both look at one speed of sound air, so that a
    /// slow one surprises them once. By quadrature, the step 0.5 with no place beside it read.
    /// </summary>
    [Theory]
    [InlineData(-0.5, 531.06)]
    [InlineData(-0.2, 749.34)]
    [InlineData(0.0, 6.1751)]
    [InlineData(null, 523.45)]
    public void Air_off_the_wall_is_one_surprise_to_two_instruments(double? probe, double ratio) =>
        Assert.Equal(ratio, TornOff(probe, default(Beside)), 0.03 * ratio);

    [Fact]
    public void What_lies_beside_speaks_of_air_off_the_wall_too() => Assert.Equal(605.63, TornOff(-0.5, new Beside(-6, 20, 0.2), default), 20.0);

    private static double TornOff(double? probe, params Beside[] beside) =>
        AirLikelihood.Of(probe is { } log ? (log, 0.05) : null, (0.002, 0.0016, 0.02, 0.04)).TornOff(0, 0.13, new Step(0.5, 1, StepWay.Down), 80, beside);

    [Theory]
    [InlineData(0, 321.685)]
    [InlineData(-0.3, 0.015762)]
    public void Probe_and_ball_multiply_where_both_look(double ball, double likelihood) =>
        Assert.Equal(likelihood, Both(0, 0.05, ball).Under(0, 0.13), 0.02 * likelihood);

    /// <summary>A due known to a fifth makes the ball say less than one known to a twenty-fifth.</summary>
    [Theory]
    [InlineData(0.04, 10.0889)]
    [InlineData(0.2, 16.2571)]
    public void The_doubt_of_the_due_is_the_balls_too(double due, double likelihood) =>
        Assert.Equal(likelihood, AirLikelihood.Of(null, (Fall(-0.3), 0.08 * Fall(-0.3), 0.02, due)).Under(0, 0.13), 0.02 * likelihood);

    /// <summary>Two instruments that agree on sound air, or on air far from sound, do not contradict each other; half apart they do. By quadrature.</summary>
    [Theory]
    [InlineData(0, 0.05, 0, 0.130836)]
    [InlineData(0, 0.3, -0.6, 17.8321)]
    [InlineData(0, 0.3, 0.5, 9.07253)]
    [InlineData(0, 0.05, 0.15, 2.26382)]
    [InlineData(-0.7, 0.05, -0.7, 0.044608)]
    [InlineData(0.5, 0.05, 0.5, 0.0778056)]
    public void Two_instruments_apart_are_one_that_is_wrong(double probe, double doubt, double ball, double ratio) =>
        Assert.Equal(ratio, Both(probe, doubt, ball).Contradiction(0, 0.13), 0.02 * ratio);

    [Fact]
    public void One_instrument_contradicts_nothing()
    {
        Assert.Equal(1, Ball(0.5).Contradiction(0, 0.13));
        Assert.Equal(1, AirLikelihood.Of((0.5, 0.05), null).Contradiction(0, 0.13));
        Assert.False(Ball(0.5).IsOfBoth);
        Assert.True(Both(0, 0.05, 0).IsOfBoth);
    }

    [Fact]
    public void Readings_that_no_speed_explains_say_nothing() => Assert.Null(AirLikelihood.Of(null, (-5, 0.001, 0.02, 0.04)).ByBall);

    private static double Fall(double log) => 0.02 * Math.Exp(3 * log);

    private static AirLikelihood Ball(double log, double doubt = 0.08) => AirLikelihood.Of(null, (Fall(log), doubt * Fall(log), 0.02, doubt == 0.08 ? 0.04 : 0));

    private static AirLikelihood Both(double probe, double doubt, double ball) => AirLikelihood.Of((probe, doubt), (Fall(ball), 0.08 * Fall(ball), 0.02, 0.04));

    private static double Normal(double off, double variance) => Math.Exp(-off * off / (2 * variance)) / Math.Sqrt(2 * Math.PI * variance);
}
