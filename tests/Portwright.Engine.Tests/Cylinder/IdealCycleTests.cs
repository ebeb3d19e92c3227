using Portwright.Engine.Charge;
using Portwright.Engine.Cylinder;
using static Portwright.Engine.Tests.Cylinder.TrialEngines;

namespace Portwright.Engine.Tests.Cylinder;

/// <summary>A shut cylinder from bottom to bottom dead centre against what thermodynamics says of it.</summary>
public sealed class IdealCycleTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(8.0)]
    [InlineData(10.5)]
    [InlineData(14.0)]
    public void Efficiency_tends_to_the_ideal_cycle_as_burning_grows_short(double compressionRatio)
    {
        var ideal = 1 - Math.Pow(compressionRatio, 1 - 1.4); // Heywood (1988), equation 5.31
        double[] durations = [16, 8, 4, 2];
        var missing = durations.Select(degrees =>
        {
            var plan = Shut(PerfectAir) with
            {
                Space = new(Space.Bore, Space.Crank, compressionRatio),
                Burn = WiebeBurn.About(360 * Degree, degrees * Degree),
                HeatOfFresh = 2.5e6,
            };
            var sum = Power(plan, 18_000).Totals;
            return ideal - sum.Work / sum.HeatSetFree;
        }).ToArray();

        output.WriteLine(string.Join(", ", missing.Select((m, i) => $"{durations[i]} degrees: {m:E2} short of {ideal:F6}")));
        // Heat that comes a small angle from the top comes at a volume larger by the square of that angle.
        for (var i = 1; i < missing.Length; i++) Assert.InRange(missing[i - 1] / missing[i], 3.3, 4.2);
        Assert.InRange(missing[^1], 0, 1.5e-4);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Motored_without_heat_loss_the_cycle_returns_its_work(bool realGas)
    {
        var plan = Shut(realGas ? ChargeGas.Of(Fuel.Petrol) : PerfectAir);
        CylinderGas gas = new(plan, 50, Math.PI, 0.9e5, 330, 0.1);
        const int steps = 3600;
        double start = gas.Energy, least = 0, step = 1 / (50.0 * steps);
        for (var i = 0; i < steps; i++)
        {
            gas.Step(step, ValveFlow.None);
            least = Math.Min(least, gas.Totals.Work);
        }

        output.WriteLine($"put in {-least:F3} J, left {gas.Totals.Work:E2} J");
        Assert.True(least < -100);
        Assert.Equal(0, gas.Totals.Work / least, 1e-6);
        Assert.Equal(start, gas.Energy, 1e-6 * Math.Abs(least));
        Assert.Equal(0.9e5, gas.State.Pressure, 1.0);
    }

    [Fact]
    public void Motored_compression_is_isentropic()
    {
        CylinderGas gas = new(Shut(PerfectAir), 50, Math.PI, 1e5, 300);
        for (var i = 0; i < 3600; i++) gas.Step(1 / (100.0 * 3600), ValveFlow.None);

        Assert.Equal(Math.Pow(10.5, 1.4), gas.State.Pressure / 1e5, 1e-5 * Math.Pow(10.5, 1.4));
        Assert.Equal(300 * Math.Pow(10.5, 0.4), gas.State.Temperature, 0.01);
    }

    /// <summary>For a gas whose heats change, entropy is the integral of cp dT/T less R ln p: found here apart, by Simpson's rule.</summary>
    [Fact]
    public void Compression_of_real_gas_keeps_its_entropy()
    {
        var real = ChargeGas.Of(Fuel.Petrol);
        CylinderGas gas = new(Shut(real), 50, Math.PI, 1e5, 340, 0.3);
        for (var i = 0; i < 3600; i++) gas.Step(1 / (100.0 * 3600), ValveFlow.None);

        const int pieces = 2000;
        double from = Math.Log(340), h = (Math.Log(gas.State.Temperature) - from) / pieces, rise = 0;
        for (var i = 0; i <= pieces; i++)
            rise += (i is 0 or pieces ? 1 : i % 2 == 1 ? 4 : 2) * h / 3 * real.HeatCapacity(Math.Exp(from + i * h), 0.3);
        var fall = real.GasConstant(0.3) * Math.Log(gas.State.Pressure / 1e5);
        Assert.Equal(1, rise / fall, 1e-5);
    }

    [Fact]
    public void The_step_is_of_second_order()
    {
        var plan = Fired with { Walls = null };
        int[] steps = [360, 720, 1440, 2880];
        var (work, pressure) = Of(46_080);
        var errors = steps.Select(n => Of(n)).Select(r => (Work: Math.Abs(r.Work - work), Pressure: Math.Abs(r.Pressure - pressure))).ToArray();

        output.WriteLine(string.Join(", ", errors.Select((e, i) => $"{steps[i]} steps: {e.Work / work:E2} of the work, {e.Pressure:E2} Pa")));
        Assert.InRange(Math.Log2(errors[0].Work / errors[^1].Work) / 3, 1.8, 2.6);
        Assert.InRange(Math.Log2(errors[0].Pressure / errors[^1].Pressure) / 3, 1.8, 2.6);

        (double Work, double Pressure) Of(int n)
        {
            var gas = Cycle(plan, n);
            return (gas.Totals.Work, gas.State.Pressure);
        }
    }

    [Fact]
    public void With_walls_too_a_degree_a_step_is_fine_enough()
    {
        var fine = Cycle(Fired, 23_040).Totals;
        var coarse = Cycle(Fired, 720).Totals;

        output.WriteLine($"work {coarse.Work / fine.Work - 1:E2}, heat to walls {coarse.HeatToWalls / fine.HeatToWalls - 1:E2}, peak {coarse.PeakPressure / fine.PeakPressure - 1:E2}");
        Assert.Equal(1, coarse.Work / fine.Work, 1e-3);
        Assert.Equal(1, coarse.HeatToWalls / fine.HeatToWalls, 5e-3);
        Assert.Equal(1, coarse.PeakPressure / fine.PeakPressure, 1e-3);
    }

    /// <summary>Compression and power stroke in equal steps, at 50 revolutions a second.</summary>
    private static CylinderGas Power(CylinderPlan plan, int steps)
    {
        CylinderGas gas = new(plan, 50, Math.PI, 1e5, 320);
        for (var i = 0; i < steps; i++) gas.Step(1 / (50.0 * steps), ValveFlow.None);
        return gas;
    }
}
