using System.Globalization;
using CsCheck;
using Portwright.Physics.Drag;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Drag;

public sealed class BallLossTests
{
    private const double InchOfWater = 249.08891;

    public static TheoryData<string[]> HandWorked =>
    [
        .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "balls.md"))
            .SkipWhile(l => !l.StartsWith("| case |", StringComparison.Ordinal)).Skip(2).TakeWhile(l => l.StartsWith('|'))
            .Select(l => l.Trim('|').Split('|', StringSplitOptions.TrimEntries)),
    ];

    /// <summary>The table in docs/theory/balls.md, worked apart from this project, repeated to the figures it prints.</summary>
    [Theory, MemberData(nameof(HandWorked))]
    public void A_hand_worked_case_comes_out_the_same(string[] row)
    {
        double At(int i) => double.Parse(row[i], CultureInfo.InvariantCulture);
        var w = BallLoss.Work(At(1) * 1e-3, At(2), At(3) * 1e-6, At(4), At(5) * 1e-6, At(6), At(7));
        double[] got = [w.Reynolds, w.DiameterRatio, w.Drag.Mean, w.Confinement.Factor, w.Force, w.PressureLoss, 100 * w.Share, 100 * w.Fall];
        for (var i = 0; i < got.Length; i++)
        {
            var decimals = row[8 + i].Contains('.', StringComparison.Ordinal) ? row[8 + i].Length - row[8 + i].IndexOf('.', StringComparison.Ordinal) - 1 : 0;
            Assert.True(Math.Abs(got[i] - At(8 + i)) <= 0.51 * Math.Pow(10, -decimals), $"{row[0]}, figure {i + 1}: printed {row[8 + i]}, got {got[i]:R}");
        }
    }

    [Fact]
    public void The_table_holds_its_eight_cases() => Assert.Equal(8, HandWorked.Count);

    [Fact]
    public void No_ball_and_no_speed_take_nothing()
    {
        Assert.Equal(0, BallLoss.Work(0, 100, 1e-3, 1.2, 1.81e-5, 0.09, 7000).Fall);
        Assert.Equal(0, BallLoss.Work(0.0095, 0, 1e-3, 1.2, 1.81e-5, 0.09, 7000).Fall);
        Assert.Equal(0, BallLoss.Expected(Air(ball: 0)).Fall.Value);
        Assert.Equal(0, BallLoss.Expected(Air(speed: 0)).Fall.StandardUncertainty);
    }

    /// <summary>Towards no ball and towards no speed the loss fades to nothing and never jumps there.</summary>
    [Fact]
    public void A_shrinking_ball_and_slowing_air_take_less_and_less()
    {
        double ByBall(double d) => BallLoss.Work(d, 100, 1e-3, 1.2, 1.81e-5, 0.09, 7000).Fall;
        double BySpeed(double u) => BallLoss.Work(0.0095, u, 1e-3, 1.2, 1.81e-5, 0.09, 7000).Fall;
        for (var s = 1e-9; s < 1; s *= 1.5)
        {
            Assert.True(ByBall(0.009 * s) < ByBall(0.009 * s * 1.5) && ByBall(0.009 * s) < 0.04 * s);
            Assert.True(BySpeed(60 * s) < BySpeed(60 * s * 1.5) && BySpeed(60 * s) < 0.02 * s);
        }
    }

    [Fact]
    public void A_small_loss_is_half_the_share_of_the_test_pressure_it_takes() => Gen.Double[-9, -3].Sample(log =>
    {
        var x = Math.Pow(10, log);
        Assert.Equal(x / 2, BallLoss.FallFromShare(x), x * x);
        Assert.Equal(x, BallLoss.ShareFromFall(BallLoss.FallFromShare(x)), x * 1e-10);
    });

    /// <summary>The second route: loss coefficient on the section in series with the effective area, at one test pressure.</summary>
    [Fact]
    public void Two_losses_in_series_give_the_same_fall() =>
        Gen.Select(Gen.Double[3e-3, 12e-3], Gen.Double[20, 115], Gen.Double[7e-4, 1.5e-3], Gen.Double[0.4, 0.9]).Sample((d, u, area, share) =>
        {
            const double rho = 1.17, dp = 6974.5;
            var effective = share * area;
            var flow = effective * Math.Sqrt(2 * dp / rho);
            var w = BallLoss.Work(d, u, area, rho, 1.81e-5, flow, dp);
            var k = w.PressureLoss / (0.5 * rho * Math.Pow(flow / area, 2));
            var after = 1 / Math.Sqrt(1 / (effective * effective) + k / (area * area));
            Assert.Equal(1 - after / effective, w.Fall, 1e-12);
        });

    [Fact]
    public void Faster_air_and_a_larger_ball_take_more_under_the_drag_crisis() =>
        Gen.Select(Gen.Double[4e-3, 11e-3], Gen.Double[30, 110]).Sample((d, u) =>
        {
            double Fall(double ball, double speed) => BallLoss.Work(ball, speed, 1e-3, 1.17, 1.81e-5, 0.094, 6974.5).Fall;
            Assert.True(Fall(d * 1.05, u) > Fall(d, u) && Fall(d, u * 1.05) > Fall(d, u));
        });

    [Fact]
    public void Drag_and_confinement_lead_the_doubt_and_a_calibration_in_a_pipe_removes_them()
    {
        var air = Air();
        var plain = BallLoss.Expected(air);
        Assert.Contains(plain.Fall.Contributions, c => c.Source == BallLoss.DragSource && c.Amount > 0.04 * plain.Fall.Value);
        Assert.Contains(plain.Fall.Contributions, c => c.Source == BallLoss.ConfinementSource && c.Amount > 0.02 * plain.Fall.Value);

        var pipe = Air("pipe", area: 1134e-6, speed: 83);
        var measured = BallLoss.Expected(pipe).Fall.Value * 1.12;
        var calibration = BallCalibration.From(pipe, new Estimate(measured, [new("pipe readings", measured * 0.05, 12)]));
        var calibrated = BallLoss.Expected(air, calibration);
        Assert.Equal(1.12, calibration.Factor.Value, 0.005);
        Assert.Equal(1.12 * plain.Share.Value, calibrated.Share.Value, 0.005 * plain.Share.Value);
        Assert.DoesNotContain(calibrated.Fall.Contributions, c => c.Source is BallLoss.DragSource or BallLoss.ConfinementSource);
        double Model(ExpectedBallLoss e) => Math.Sqrt(e.Share.Contributions
            .Where(c => c.Source.StartsWith(BallLoss.DragSource, StringComparison.Ordinal) || c.Source.StartsWith(BallLoss.ConfinementSource, StringComparison.Ordinal))
            .Sum(c => c.Amount * c.Amount)) / e.Share.Value;
        Assert.True(Model(calibrated) < Model(plain) / 3, $"{Model(calibrated):P1} against {Model(plain):P1}");
    }

    /// <summary>The law of propagation against drawing every input from its doubt (JCGM 101:2008): speed enters with its cube.</summary>
    [Fact]
    public void The_doubt_of_the_inputs_is_what_drawing_them_shows()
    {
        var air = Air();
        var random = new Random(8);
        double Drawn(Estimate e) => MathNet.Numerics.Distributions.Normal.Sample(random, e.Value, e.StandardUncertainty);
        var falls = Enumerable.Range(0, 40_000).Select(_ => BallLoss.Work(Drawn(air.Diameter), Drawn(air.Speed), Drawn(air.SectionArea),
            Drawn(air.Density), air.Viscosity, Drawn(air.Flow), Drawn(air.TestPressure)).Fall).ToArray();
        var inputs = new Estimate(0, [.. BallLoss.Expected(air).Fall.Contributions.Where(c =>
            c.Source is not (BallLoss.DragSource or BallLoss.ConfinementSource) && !c.Source.Contains("no pipe", StringComparison.Ordinal))]);
        Assert.Equal(RepeatScatter.Of(falls).StandardDeviation, inputs.StandardUncertainty, 0.02 * inputs.StandardUncertainty);
    }

    [Fact]
    public void A_ball_calibrated_where_it_is_used_leaves_drag_and_walls_without_doubt()
    {
        Assert.Equal(0, SphereDragSpread.Ratio(6e4, 6e4).StandardUncertainty, 1e-15);
        Assert.Equal(0, Confinement.Ratio(0.25, 0.25, 0.45).StandardUncertainty, 1e-15);
        Assert.Equal(1, Confinement.At(0, 0.45).Factor);
    }

    [Fact]
    public void What_cannot_be_expected_is_said_with_its_cure()
    {
        Assert.Contains("Use a smaller ball", Air(ball: 0.02).Problem, StringComparison.Ordinal);
        Assert.Contains("Measure the section", Air(area: 0).Problem, StringComparison.Ordinal);
        Assert.Contains("Air speed", Air(speed: -1).Problem, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("air", () => BallLoss.Expected(Air(ball: 0.02)));
        Assert.Throws<ArgumentOutOfRangeException>("reynolds", () => SphereDragSpread.At(2e6));
    }

    /// <summary>A 3/8 inch ball in air of 100 m/s, section 1000 mm2, 28 inH2O: usual doubts.</summary>
    internal static BallAir Air(string place = "here", double ball = 9.525e-3, double speed = 100, double area = 1e-3) => new(
        place,
        new(ball, [new("ball caliper", 1e-5)]),
        new(speed, [new("probe factor", 0.01 * speed), new($"{place}: probe", 0.02 * Math.Abs(speed), 8)]),
        new(area, [new("calipers", 0.01 * area)]),
        new(1.16, [new("weather", 0.003)]),
        new(0.0944, [new("bench", 0.0005)]),
        new(28 * InchOfWater, [new("manometer", 10)]),
        1.81e-5);
}
