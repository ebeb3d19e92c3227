using CsCheck;
using Portwright.Physics.Valves;

namespace Portwright.Physics.Tests.Valves;

public sealed class ValveWindowTests
{
    /// <summary>Seats wide and narrow, steep and flat, over throats large and far too small.</summary>
    private static readonly Gen<ValveSeat> AnySeat = Gen.Select(
        Gen.Double[0.02, 0.06], Gen.Double[0, 1.3], Gen.Double[0, 0.15], Gen.Double[0.2, 1.1], Gen.Double[0, 0.6],
        (head, angle, width, throat, stem) => new ValveSeat(head, angle, width * head, throat * head, stem * throat * head));

    [Fact]
    public void The_window_never_closes_as_the_valve_opens() =>
        Gen.Select(AnySeat, Gen.Double[0, 0.03], Gen.Double[0, 0.03]).Sample((seat, a, b) =>
            Assert.True(ValveWindow.At(seat, Math.Min(a, b)).Area <= ValveWindow.At(seat, Math.Max(a, b)).Area * (1 + 1e-12)));

    [Fact]
    public void The_window_has_no_step_where_a_regime_ends() => AnySeat.Sample(seat =>
    {
        foreach (var lift in new[] { ValveWindow.FirstRegimeEnds(seat), ValveWindow.ThroatTakesOver(seat) })
        {
            if (double.IsInfinity(lift) || lift > 1) continue; // a flat seat leaves regime 1 at no lift that can be had
            var here = ValveWindow.At(seat, lift).Area;
            Assert.Equal(here, ValveWindow.At(seat, lift * (1 + 1e-12)).Area, 1e-9 * seat.ThroatArea);
            Assert.Equal(here, ValveWindow.At(seat, lift * (1 - 1e-12)).Area, 1e-9 * seat.ThroatArea);
        }
    });

    [Fact]
    public void The_throat_takes_over_exactly_where_it_is_said_to() => AnySeat.Sample(seat =>
    {
        var lift = ValveWindow.ThroatTakesOver(seat);
        Assert.Equal(seat.ThroatArea, ValveWindow.At(seat, lift * (1 + 1e-9)).Area, seat.ThroatArea * 1e-12);
        Assert.Equal(3, ValveWindow.At(seat, lift * (1 + 1e-9)).Regime);
        Assert.True(ValveWindow.At(seat, lift * 0.99).Area < seat.ThroatArea);
        Assert.NotEqual(3, ValveWindow.At(seat, lift * 0.99).Regime);
    });

    [Fact]
    public void The_window_is_never_larger_than_the_curtain_or_the_throat() =>
        Gen.Select(AnySeat, Gen.Double[0, 0.03]).Sample((seat, lift) =>
        {
            var window = ValveWindow.At(seat, lift);
            Assert.True(window.Area <= window.CurtainArea * (1 + 1e-12));
            Assert.True(window.Area <= window.ThroatArea);
        });

    [Fact]
    public void A_flat_seat_opens_a_plain_cylinder_at_its_inner_edge()
    {
        var seat = new ValveSeat(0.04, 0, 0.001, 0.036, 0.006);
        Assert.Equal(Math.PI * 0.038 * 0.005, ValveWindow.At(seat, 0.005).Area, 1e-15);
        Assert.Equal(seat.ThroatArea / (Math.PI * 0.038), ValveWindow.ThroatTakesOver(seat), 1e-12);
    }

    [Fact]
    public void Discharge_coefficients_are_one_area_over_three() =>
        Gen.Select(AnySeat, Gen.Double[0.001, 0.02], Gen.Double[1e-5, 1e-3]).Sample((seat, lift, area) =>
        {
            var window = ValveWindow.At(seat, lift);
            var c = DischargeCoefficients.From(area, seat, lift);
            Assert.Equal(area, c.OnCurtain * window.CurtainArea, area * 1e-14);
            Assert.Equal(area, c.OnWindow * window.Area, area * 1e-14);
            Assert.Equal(area, c.OnThroat * window.ThroatArea, area * 1e-14);
        });

    [Fact]
    public void A_closed_valve_has_no_coefficient_on_curtain_or_window()
    {
        var c = DischargeCoefficients.From(1e-6, new ValveSeat(0.04, 0.785, 0.001, 0.036, 0.006), 0);
        Assert.True(double.IsNaN(c.OnCurtain) && double.IsNaN(c.OnWindow) && c.OnThroat > 0);
    }

    [Fact]
    public void Net_lift_is_lobe_times_rocker_less_lash_and_never_below_closed()
    {
        Assert.Equal(0.0145, NetLift.From(0.010, 1.5, 0.0005), 1e-15);
        Assert.Equal(0, NetLift.From(0.0002, 1.5, 0.0005));
    }

    [Fact]
    public void A_stem_as_thick_as_the_throat_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("stemDiameter", () => new ValveSeat(0.04, 0.785, 0.001, 0.036, 0.036));
}
