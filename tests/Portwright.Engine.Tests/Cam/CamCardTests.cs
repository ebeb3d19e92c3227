using CsCheck;
using Portwright.Engine.Cam;

namespace Portwright.Engine.Tests.Cam;

public sealed class CamCardTests
{
    private const double Degree = Math.PI / 180, Inch = 0.0254;

    /// <summary>Cards as they are met: mild to fierce, hydraulic and solid.</summary>
    private static readonly Gen<CamCard> AnyCard = Gen.Select(
        Gen.Double[0.25, 0.48], Gen.Double[200, 270], Gen.Double[34, 70], Gen.Double[100, 118], Gen.Double[1, 1.8], Gen.Double[0, 0.02],
        (lift, at050, slower, centre, ratio, lash) => new CamCard(lift * Inch, (at050 + slower) * Degree, at050 * Degree, centre * Degree) { RockerRatio = ratio, Lash = lash * Inch });

    private static ValveLift Intake(CamCard card)
    {
        var lift = ValveLift.OfIntake(card, out var problem);
        Assert.Null(problem);
        return lift!;
    }

    [Fact]
    public void Lobe_meets_its_card_to_rounding() => AnyCard.Sample(card =>
    {
        // Without lash the valve is the lobe times the ratio.
        var lift = Intake(card with { Lash = 0 });
        Assert.Equal(card.LobeLift * card.RockerRatio, lift.Highest, 1e-15);
        Assert.Equal(card.LobeCentre, lift.HighestAt, 1e-15);
        Assert.Equal(card.SeatDuration, lift.Duration(card.SeatLift * card.RockerRatio), 1e-11);
        Assert.Equal(card.DurationAt050, lift.Duration(CamCard.Checking * card.RockerRatio), 1e-11);
    });

    [Fact]
    public void Third_duration_of_a_card_is_met_too()
    {
        var card = new CamCard(0.350 * Inch, 280 * Degree, 230 * Degree, 110 * Degree) { Further = [new(0.200 * Inch, 148 * Degree)] };
        var lift = Intake(card);
        Assert.Equal(148 * Degree, lift.Duration(0.200 * Inch), 1e-11);
        Assert.Equal(230 * Degree, lift.Duration(0.050 * Inch), 1e-11);
        Assert.True(lift.Area > Intake(card with { Further = [] }).Area);
    }

    [Fact]
    public void Lash_is_taken_off_the_lift_and_shortens_the_event() => AnyCard.Sample(card =>
    {
        ValveLift tight = Intake(card with { Lash = 0 }), loose = Intake(card);
        Assert.Equal(tight.Highest - card.Lash, loose.Highest, 1e-15);
        Assert.Equal(card.HighestLift, loose.Highest, 1e-15);
        Assert.True(loose.Closes - loose.Opens <= tight.Closes - tight.Opens);
        Assert.Equal(Math.Max(0, tight.At(1.0) - card.Lash), loose.At(1.0), 1e-15);
    });

    /// <summary>
    /// Across every place, the points of the card and both ends included, acceleration moves by no more than the jerk allows: halving the distance halves the difference.
    /// Away from those places the same holds of any polynomial.
    /// </summary>
    [Fact]
    public void Acceleration_has_no_step() => AnyCard.Sample(card =>
    {
        var lift = Intake(card with { Lash = 0 });
        var scale = card.LobeLift * card.RockerRatio;
        double[] places = [lift.Opens, lift.Closes, card.LobeCentre, .. new[] { card.SeatDuration, card.DurationAt050 }.SelectMany(d => new[] { card.LobeCentre - d / 2, card.LobeCentre + d / 2 })];
        foreach (var at in places)
        {
            Assert.Equal(lift.Acceleration(at - 1e-9), lift.Acceleration(at + 1e-9), 1e-6 * scale);
            Assert.Equal(lift.Speed(at - 1e-9), lift.Speed(at + 1e-9), 1e-7 * scale);
        }
    });

    [Fact]
    public void Lift_rises_to_the_nose_and_falls_from_it_evenly() => Gen.Select(AnyCard, Gen.Double[0, 2.9], Gen.Double[0, 2.9]).Sample((card, a, b) =>
    {
        var lift = Intake(card);
        Assert.True(lift.At(card.LobeCentre + Math.Min(a, b)) >= lift.At(card.LobeCentre + Math.Max(a, b)) - 1e-15);
        Assert.Equal(lift.At(card.LobeCentre - a), lift.At(card.LobeCentre + a), 1e-13);
        Assert.True(lift.At(card.LobeCentre + a) >= 0);
    });

    [Fact]
    public void Speed_and_acceleration_are_the_slopes_of_lift_and_speed() => Gen.Select(AnyCard, Gen.Double[-1.2, 1.2]).Sample((card, off) =>
    {
        const double h = 1e-5;
        var lift = Intake(card);
        var at = card.LobeCentre + off;
        Assert.Equal((lift.At(at + h) - lift.At(at - h)) / (2 * h), lift.Speed(at), 1e-9 * lift.Highest);
        Assert.Equal((lift.Speed(at + h) - lift.Speed(at - h)) / (2 * h), lift.Acceleration(at), 1e-7 * lift.Highest);
    });

    [Fact]
    public void Lift_repeats_with_the_cycle_and_an_exhaust_stands_before_the_top()
    {
        var card = new CamCard(0.350 * Inch, 280 * Degree, 230 * Degree, 110 * Degree) { RockerRatio = 1.5 };
        ValveLift intake = Intake(card), exhaust = ValveLift.OfExhaust(card, out _)!;
        Assert.Equal(intake.At(1.3), intake.At(1.3 + 8 * Math.PI), 1e-15);
        Assert.Equal(intake.At(1.3), intake.At(1.3 - 4 * Math.PI), 1e-15);
        Assert.Equal(intake.At(0.2), exhaust.At(-0.2), 1e-15);
        Assert.Equal(exhaust.At(-0.2), exhaust.At(4 * Math.PI - 0.2), 1e-14);
        Assert.True(intake.Opens < 0 && intake.Closes > Math.PI && exhaust.Closes > 0 && exhaust.Opens < -Math.PI);
        Assert.Equal(0, intake.At(2 * Math.PI));
    }

    /// <summary>Common practice, no source: lobes of about 280 and 230 degrees hold 0.200 in for 135 to 150.</summary>
    [Fact]
    public void Lobe_is_about_as_full_as_lobes_are() =>
        Assert.InRange(Intake(new CamCard(0.350 * Inch, 280 * Degree, 230 * Degree, 110 * Degree)).Duration(0.200 * Inch) / Degree, 135, 150);

    [Fact]
    public void Area_is_the_sum_of_the_lift() => AnyCard.Sample(card =>
    {
        var lift = Intake(card);
        const int parts = 4000;
        double sum = 0, step = (lift.Closes - lift.Opens) / parts;
        for (var i = 0; i < parts; i++) sum += lift.At(lift.Opens + (i + 0.5) * step) * step;
        Assert.Equal(1, sum / lift.Area, 1e-5);
    });

    [Fact]
    public void Card_that_cannot_be_is_refused_with_the_cure()
    {
        var good = new CamCard(0.350 * Inch, 280 * Degree, 230 * Degree, 110 * Degree);
        void Refused(CamCard card, string says)
        {
            Assert.Null(ValveLift.OfIntake(card, out var problem));
            Assert.Contains(says, problem, StringComparison.Ordinal);
        }

        Refused(good with { SeatDuration = good.DurationAt050, DurationAt050 = good.SeatDuration }, "swapped");
        Refused(good with { LobeLift = 0.350 }, "another unit");
        Refused(good with { RockerRatio = 15 }, "Rocker ratio");
        Refused(good with { Lash = 0.02 }, "Lash");
        Refused(good with { LobeCentre = 110 }, "Lobe centre");
        Refused(good with { SeatDuration = 231 * Degree }, "No smooth lobe");
        Refused(good with { Further = [new(CamCard.Checking, 200 * Degree)] }, "Two durations");
    }
}
