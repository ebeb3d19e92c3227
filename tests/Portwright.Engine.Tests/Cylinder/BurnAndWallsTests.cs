using CsCheck;
using Portwright.Engine.Cylinder;
using static Portwright.Engine.Tests.Cylinder.TrialEngines;

namespace Portwright.Engine.Tests.Cylinder;

/// <summary>Burning, heat to walls, friction and mean pressures against values worked by hand from the printed equations.</summary>
public sealed class BurnAndWallsTests
{
    [Fact]
    public void Burning_by_the_printed_equation()
    {
        var burn = new WiebeBurn(6, 1);

        Assert.Equal(0, burn.At(5.9));
        Assert.Equal(1 - Math.Exp(-5 * 0.125), burn.At(6.5), 1e-15);
        Assert.Equal(0.464739, burn.At(6.5), 1e-6);
        Assert.Equal(1 - Math.Exp(-5), burn.At(7.0), 1e-15);
        Assert.Equal(burn.At(7.0), burn.At(9));
    }

    [Fact]
    public void Burning_by_its_half_and_its_tenth_to_nine_tenths() =>
        Gen.Select(Gen.Double[6, 6.8], Gen.Double[0.1, 1.2], Gen.Double[2, 8], Gen.Double[0.5, 4]).Sample((half, span, a, m) =>
        {
            var burn = WiebeBurn.About(half, span, a, m);
            var all = burn.At(burn.End);
            Assert.Equal(0.5, burn.At(half) / all, 1e-10);
            Assert.Equal(span, Passes(0.9) - Passes(0.1), 1e-9);

            double Passes(double share)
            {
                double low = burn.Start, high = burn.End;
                for (var i = 0; i < 60; i++)
                {
                    var middle = (low + high) / 2;
                    if (burn.At(middle) < share * all) low = middle;
                    else high = middle;
                }

                return low;
            }
        });

    /// <summary>3.26 x 1.58489 x 251.189 x 0.0253105 x 6.30957.</summary>
    [Fact]
    public void Heat_transfer_by_the_printed_equation() => Assert.Equal(207.3, Woschni.Coefficient(0.1, 1e6, 800, 10), 0.1);

    /// <summary>2.28 x 10 + 3.24e-3 x 5e-4 x 350/(1e5 x 5.5e-4) x 3e6 = 22.8 + 30.93.</summary>
    [Fact]
    public void Gas_speed_while_burning_by_the_printed_equation() =>
        Assert.Equal(53.727, Woschni.BurningSpeed(10, 5e-4, 5e6, 2e6, (1e5, 5.5e-4, 350)), 1e-3);

    [Fact]
    public void Gas_speed_while_burning_never_falls_below_that_of_the_piston() =>
        Assert.Equal(22.8, Woschni.BurningSpeed(10, 5e-4, 1e6, 2e6, (1e5, 5.5e-4, 350)), 1e-12);

    [Fact]
    public void Hot_gas_loses_heat_and_cold_gas_gains_it()
    {
        var walls = Shut(PerfectAir) with { Walls = WallTemperatures.Usual };
        CylinderGas hot = new(walls, 50, 1, 1e5, 1500), cold = new(walls, 50, 1, 1e5, 300);
        hot.Step(1e-5, ValveFlow.None);
        cold.Step(1e-5, ValveFlow.None);

        Assert.True(hot.Totals.HeatToWalls > 0);
        Assert.True(cold.Totals.HeatToWalls < 0);
    }

    /// <summary>One short step against Woschni's coefficient times each surface by hand.</summary>
    [Fact]
    public void Heat_to_the_walls_is_that_of_each_surface()
    {
        var plan = Shut(PerfectAir) with { Walls = new(500, 520, 410), WallHeatScale = 1.2, Space = Space with { HeadArea = 8e-3, PistonCrownArea = 7e-3 } };
        CylinderGas gas = new(plan, 60, 1.2, 4e5, 900);
        var coefficient = Woschni.Coefficient(0.09, 4e5, 900, 2.28 * 2 * 0.08 * 60);
        var sleeve = Math.PI * 0.09 * Space.Crank.FromTop(1.2);
        gas.Step(1e-8, ValveFlow.None);

        Assert.Equal(1.2 * coefficient * (8e-3 * 400 + 7e-3 * 380 + sleeve * 490), gas.Totals.HeatToWalls / 1e-8, 0.05);
    }

    /// <summary>40,000 + 0.005 x 6e6 + 9,000 x 10 + 90 x 100.</summary>
    [Fact]
    public void Friction_by_the_printed_equation() => Assert.Equal(169_000, ChenFlynn.Usual.Pressure(6e6, 10), 1e-6);

    [Fact]
    public void A_megapascal_in_two_litres_turns_with_159_newton_metres() => Assert.Equal(159.155, MeanPressure.Torque(1e6, 2e-3), 1e-3);

    [Fact]
    public void Power_is_torque_times_speed() =>
        Gen.Select(Gen.Double[1e5, 3e6], Gen.Double[1e-4, 1e-2], Gen.Double[5, 200]).Sample((pressure, displacement, turns) =>
            Assert.Equal(1, MeanPressure.Power(pressure, displacement, turns) / (MeanPressure.Torque(pressure, displacement) * 2 * Math.PI * turns), 1e-12));

    [Fact]
    public void Room_over_the_piston_runs_from_clearance_to_the_compression_ratio()
    {
        Assert.Equal(Space.Clearance, Space.Volume(0), 1e-18);
        Assert.Equal(10.5, Space.Volume(Math.PI) / Space.Clearance, 1e-12);
        Assert.Equal(Math.PI / 4 * 0.09 * 0.09 * 0.08, Space.Displacement, 1e-15);
        Assert.Equal(Math.PI * 0.09 * 0.08, Space.SleeveArea(Space.Volume(Math.PI)), 1e-15);
        Assert.Equal((Space.Volume(1.0001) - Space.Volume(0.9999)) / 2e-4, Space.VolumeSlope(1), 1e-10);
    }

    /// <summary>Stroke 88, rod 145 mm, 90 degrees: 44 + 145 - sqrt(145^2 - 44^2) = 50.8370 mm.</summary>
    [Fact]
    public void Piston_a_quarter_turn_down_stands_lower_than_half_the_stroke() =>
        Assert.Equal(50.83705e-3, new Physics.Crank.SliderCrank(0.088, 0.145).FromTop(Math.PI / 2), 1e-7);
}
