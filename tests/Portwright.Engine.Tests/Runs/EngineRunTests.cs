using CsCheck;
using Portwright.Engine.Runs;

namespace Portwright.Engine.Tests.Runs;

public sealed class EngineRunTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(1000)]
    [InlineData(3000)]
    [InlineData(5000)]
    [InlineData(7000)]
    [InlineData(9000)]
    public void A_street_engine_settles_and_gives_what_such_engines_give(double rpm)
    {
        var p = MadeEngines.Street().At(rpm);
        output.WriteLine(p.ToString());
        Assert.True(p.IsSettled);
        Assert.InRange(p.VolumetricEfficiency, 0.35, 1.05);
        Assert.InRange(p.Residual, 0.01, 0.2);
        // Work by the heat in the air that came in: indicated efficiency of a petrol engine of 10 to 1 (common practice, no source).
        var efficiency = p.IndicatedPressure / (p.VolumetricEfficiency * 101_325 / (287.05 * 293.15) * Charge.Fuel.Petrol.HeatPerAir(1.12));
        Assert.InRange(efficiency, 0.25, 0.42);
        Assert.Equal(p.Power, p.Torque * 2 * Math.PI * p.TurnsASecond, 1e-9 * Math.Abs(p.Power));
    }

    [Fact]
    public void What_goes_in_comes_out_with_the_fuel_that_burnt()
    {
        var design = MadeEngines.Street();
        var engine = new RunningEngine(design, 4000 / 60.0);
        EngineRun.Settle(engine, design, 4000 / 60.0, new(1e-8, 100), TestContext.Current.CancellationToken);
        var cylinder = engine.Cylinders[0];
        var into = cylinder.IntakeMouth.MassIn - cylinder.IntakeMouth.MassOut;
        var outOf = cylinder.ExhaustMouth.MassOut - cylinder.ExhaustMouth.MassIn;
        Assert.Equal(into + cylinder.Gas.Totals.FuelMass, outOf, 1e-6 * into);
        Assert.Equal(cylinder.Gas.Totals.FreshThatBurnt * design.Richness / design.Fuel.AirForFuel, cylinder.Gas.Totals.FuelMass, 1e-9 * into);
    }

    [Fact]
    public void Finer_cells_and_shorter_steps_change_the_result_less_and_less()
    {
        foreach (var rpm in new[] { 3000, 6000 })
        {
            var filling = new[] { 0.04, 0.02, 0.01, 0.005 }.Select(c => MadeEngines.Street().WithCells(c).At(rpm, 1e-6).VolumetricEfficiency).ToArray();
            var steps = new[] { 0.85, 0.4, 0.2 }.Select(c => (MadeEngines.Street() with { Courant = c }).At(rpm, 1e-6).VolumetricEfficiency).ToArray();
            output.WriteLine($"{rpm}: cells {string.Join(" ", filling.Select(f => f.ToString("0.00000", System.Globalization.CultureInfo.InvariantCulture)))}; steps {string.Join(" ", steps.Select(f => f.ToString("0.00000", System.Globalization.CultureInfo.InvariantCulture)))}");
            // What is left at the usual cell, by the change to the half of it.
            Assert.InRange(Math.Abs(filling[3] / filling[2] - 1), 0, 0.001);
            Assert.True(Math.Abs(filling[3] - filling[2]) < Math.Abs(filling[1] - filling[0]));
            Assert.InRange(Math.Abs(steps[2] / steps[0] - 1), 0, 0.001);
        }
    }

    [Fact]
    public void Cylinders_alike_behind_one_plenum_and_one_collector_fill_alike_in_any_firing_order()
    {
        var one = MadeEngines.Four().At(4000, 1e-6);
        var other = (MadeEngines.Four() with { FiringOrder = [1, 2, 4, 3] }).At(4000, 1e-6);
        Assert.Equal(one.Torque, other.Torque, 1e-5 * one.Torque);
        Assert.InRange(one.VolumetricEfficiency, 0.85, 1.0);
    }

    [Fact]
    public void Four_cylinders_with_long_pipes_into_one_collector_settle_at_every_speed()
    {
        var design = MadeEngines.Street(runner: 0.6, primary: 1.2) with { Cylinders = 4, FiringOrder = [1, 3, 4, 2], Manifold = new(0.004, 14e-4), Collector = new(4, 0.5, 0.06) };
        var points = new EngineBatch().Run([.. SpeedRange.Even(2500 / 60.0, 6500 / 60.0, 9).Tasks(design, Settling.Usual)]);
        Assert.All(points, p => Assert.True(p.IsSettled && p.VolumetricEfficiency is > 0.5 and < 1.2, p.ToString()));
    }

    [Theory]
    [InlineData(2, 2)]
    [InlineData(3, 3)]
    [InlineData(4, 2)]
    [InlineData(6, 3)]
    [InlineData(8, 4)]
    public void All_cylinders_settle_with_the_collectors_such_engines_have(int cylinders, int primaries)
    {
        var design = MadeEngines.Street(primary: 0.81).WithCells(0.015) with
        {
            Cylinders = cylinders,
            FiringOrder = [.. Enumerable.Range(1, cylinders)],
            Manifold = new(0.003, cylinders * 4e-4),
            Collector = new(primaries, 0.3, 0.044 * (0.75 + 0.25 * primaries)),
        };
        Assert.All(new[] { 3000, 7000 }, rpm =>
        {
            var p = design.At(rpm);
            Assert.True(p.IsSettled && p.VolumetricEfficiency is > 0.4 and < 1.2, p.ToString());
        });
    }

    [Fact]
    public void A_small_cylinder_that_a_long_cam_leaves_open_is_emptied_in_steps_it_can_bear()
    {
        var design = MadeEngines.Street(0.0326, 0.0282, 1.2e-4, 0.2, 0.3);
        ValveTiming Timing(double seat, double centre) => new() { Card = new(6e-3, seat * MadeEngines.Degree, (seat - 60) * MadeEngines.Degree, centre * MadeEngines.Degree) };
        design = design with
        {
            Size = design.Size with { CompressionRatio = 13.6 },
            Intake = design.Intake with { Timing = Timing(315, 105) },
            Exhaust = design.Exhaust with { Timing = Timing(323, 108) },
        };
        Assert.InRange(design.At(5713).VolumetricEfficiency, 0.2, 1.4);
    }

    [Fact]
    public void Vapour_in_the_air_takes_its_share_of_the_heat()
    {
        var dry = MadeEngines.Street();
        var ratio = (dry with { DryShare = 0.97 }).At(4000, 1e-6).IndicatedPressure / dry.At(4000, 1e-6).IndicatedPressure;
        Assert.InRange(ratio, 0.965, 0.985);
    }

    [Fact]
    public void A_turned_engine_without_fuel_costs_work_and_burns_nothing()
    {
        var p = (MadeEngines.Street() with { Combustion = Combustion.None }).At(3000);
        Assert.True(p.IndicatedPressure < 0);
        Assert.Equal(0, p.Residual, 1e-9);
        Assert.Equal(0, p.FreshLost - 1, 0.02);
    }

    [Fact]
    public void Thin_air_gives_power_nearly_as_its_density()
    {
        var sea = MadeEngines.Street();
        var mountain = sea with { Air = new(80_000, 283.15) };
        var ratio = mountain.At(4500).IndicatedPressure / sea.At(4500).IndicatedPressure;
        var density = 80_000 / 283.15 / (101_325 / 293.15);
        Assert.Equal(density, ratio, 0.03);
    }

    // A large exhaust valve blows down into a pipe that opens out behind it: the stream runs away from the valve faster than sound.
    [Theory]
    [InlineData(4500)]
    [InlineData(6500)]
    public void A_large_exhaust_valve_before_a_widening_port_settles(double rpm)
    {
        var design = MadeEngines.Street();
        design = design with
        {
            Exhaust = design.Exhaust with
            {
                Areas = design.Exhaust.Areas.Scaled(_ => 1.6),
                Tract = design.Exhaust.Tract with { Stations = [new(0, 9.8e-4), new(0.06, 11e-4), new(0.08, 13.6e-4), new(0.9, 13.6e-4)] },
            },
        };
        Assert.True(design.At(rpm).IsSettled);
    }

    [Fact]
    public void One_cylinder_for_all_draws_through_its_share_of_the_throttle()
    {
        var free = MadeEngines.Street() with { Cylinders = 8 };
        EngineDesign Behind(double area) => free with { Manifold = new(0.003, area) };
        var (open, wide, narrow) = (free.At(5500), Behind(1).At(5500), Behind(14e-4).At(5500));
        Assert.Equal(open.VolumetricEfficiency, wide.VolumetricEfficiency, 2e-4);
        Assert.InRange(narrow.VolumetricEfficiency / open.VolumetricEfficiency, 0.75, 0.97);

        // A restrictor passes its choked flow and no more, whatever the speed: m* = A p0 sqrt(k/(R T0)) (2/(k+1))^((k+1)/(2(k-1))) (Zucker and Biblarz 2002, from memory; derived the same in an open course on compressible flow).
        var k = 1.4;
        var choked = 3e-4 * 101_325 * Math.Sqrt(k / (287.05 * 293.15)) * Math.Pow(2 / (k + 1), (k + 1) / (2 * (k - 1)));
        foreach (var rpm in new[] { 5000, 7000 })
        {
            var p = Behind(3e-4).At(rpm);
            output.WriteLine($"{rpm} {p}");
            Assert.True(p.IsSettled);
            var flow = p.VolumetricEfficiency * 101_325 / (287.05 * 293.15) * free.Displacement * rpm / 120;
            Assert.Equal(1, flow / choked, 0.01);
        }
    }

    // Torque of eight behind one plenum and of one standing for all, the pipes beyond apart.
    [Fact]
    public void One_for_all_and_all_agree_on_what_a_throttle_costs()
    {
        var all = MadeEngines.Four() with { Collector = null };
        double Cost(EngineDesign d) => (d with { Manifold = new(0.02, 8e-4) }).At(5500).VolumetricEfficiency / (d with { Manifold = new(0.02, 60e-4) }).At(5500).VolumetricEfficiency;
        Assert.Equal(Cost(all), Cost(all with { FiringOrder = null }), 0.03);
    }

    [Fact]
    public void A_wrong_firing_order_is_refused_by_name()
    {
        var refused = Assert.Throws<ArgumentException>(() => (MadeEngines.Four() with { FiringOrder = [1, 3, 3, 2] }).At(3000));
        Assert.Contains("1-3-3-2", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_written_cycle_adds_up_to_the_charge_and_begins_where_it_ends()
    {
        var design = MadeEngines.Street();
        var trace = CycleTrace.At(design, 4000 / 60.0, settling: new(1e-6, 100), cancel: TestContext.Current.CancellationToken);
        var outside = 101_325 / (287.05 * 293.15) * design.Size.Space().Displacement;
        // The mean flow times the time of a cycle is what came in.
        Assert.Equal(trace.Point.VolumetricEfficiency * outside, trace.IntakeFlow.Average() * 2 / (4000 / 60.0), 0.01 * outside);
        Assert.Equal(trace.CylinderPressure[719], trace.CylinderPressure[0], 0.05 * trace.CylinderPressure[0]);
        Assert.Equal(trace.Point.PeakPressure, trace.CylinderPressure.Max(), 0.01 * trace.Point.PeakPressure);
        Assert.Equal(180, trace.Intake.AllFrames.Count);
        Assert.All(trace.Intake.AllFrames, f => Assert.Equal(trace.Intake.Distances.Count, f.Pressure.Count));
        Assert.InRange(trace.Intake.ValveMach.Max(), 0.2, 0.8);
        Assert.InRange(trace.IntakeLift.ToList().IndexOf(trace.IntakeLift.Max()), 106, 110);
        Assert.InRange(trace.ExhaustLift.ToList().IndexOf(trace.ExhaustLift.Max()), 606, 610);
    }

    [Fact]
    public void Engines_of_any_sane_size_stay_in_bounds() =>
        Gen.Select(Gen.Double[0.05, 0.14], Gen.Double[0.6, 1.3], Gen.Double[0.06, 0.12], Gen.Double[4, 26], Gen.Double[0.1, 0.8], Gen.Double[0.1, 1.2])
            .Sample(
                (bore, stroke, share, piston, runner, primary) =>
                {
                    var design = MadeEngines.Street(bore, bore * stroke, share * Math.PI / 4 * bore * bore, runner, primary);
                    var p = EngineRun.At(design, piston / (2 * bore * stroke));
                    return p.VolumetricEfficiency is > 0.1 and < 1.5 && p.Residual is > 0 and < 0.7 && p.PeakPressure is > 3e5 and < 200e5 && p.Reversion >= 0;
                },
                iter: 25);
}
