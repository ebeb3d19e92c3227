using CsCheck;
using Portwright.Physics.TestPiece;

namespace Portwright.Physics.Tests.TestPiece;

public sealed class NozzleTests
{
    private static readonly Gen<double> HeatRatio = Gen.Double[1.05, 1.67];

    [Fact]
    public void Flow_is_continuous_where_it_chokes() => HeatRatio.Sample(k =>
    {
        const double p0 = 101_325, rho0 = 1.2;
        var critical = p0 * Nozzle.CriticalPressureRatio(k);
        var choked = Nozzle.MassFlux(p0, rho0, k, critical * (1 - 1e-12));
        Assert.Equal(choked, Nozzle.MassFlux(p0, rho0, k, critical * (1 + 1e-9)), choked * 1e-12);
        // The slope vanishes there too: a step of 1e-5 in pressure moves the flow by the square of it.
        Assert.Equal(choked, Nozzle.MassFlux(p0, rho0, k, critical * (1 + 1e-5)), choked * 1e-9);
    });

    [Fact]
    public void Choked_flow_does_not_know_what_lies_downstream() =>
        Gen.Select(HeatRatio, Gen.Double[0, 0.999], Gen.Double[0, 0.999]).Sample((k, a, b) =>
        {
            const double p0 = 101_325, rho0 = 1.2;
            var critical = p0 * Nozzle.CriticalPressureRatio(k);
            Assert.True(Nozzle.IsChoked(p0, k, a * critical));
            Assert.Equal(Nozzle.MassFlux(p0, rho0, k, a * critical), Nozzle.MassFlux(p0, rho0, k, b * critical));
        });

    [Fact]
    public void Flow_grows_with_the_pressure_drop_until_it_chokes() =>
        Gen.Select(HeatRatio, Gen.Double[0.001, 0.999], Gen.Double[0.001, 0.999]).Sample((k, a, b) =>
        {
            const double p0 = 101_325, rho0 = 1.2;
            var span = 1 - Nozzle.CriticalPressureRatio(k);
            double small = Math.Min(a, b) * span, large = Math.Max(a, b) * span;
            Assert.True(Nozzle.MassFlux(p0, rho0, k, p0 * (1 - small)) <= Nozzle.MassFlux(p0, rho0, k, p0 * (1 - large)) * (1 + 1e-14));
        });

    /// <summary>Opening terms of the nozzle function: G = sqrt(2 rho dp)(1 - 3x/4k + ...), x = dp/p0. Figures are kept down to thousandths of a pascal.</summary>
    [Fact]
    public void Small_pressures_keep_all_their_figures() =>
        Gen.Select(HeatRatio, Gen.Double[-3, 2]).Sample((k, exponent) =>
        {
            const double p0 = 101_325, rho0 = 1.2;
            var down = p0 - Math.Pow(10, exponent);
            var dp = p0 - down;
            var x = dp / p0;
            Assert.Equal(1 - 0.75 * x / k, Nozzle.MassFlux(p0, rho0, k, down) / Math.Sqrt(2 * rho0 * dp), 1e-15 + x * x);
        });

    [Fact]
    public void No_pressure_drop_passes_nothing() => Assert.Equal(0, Nozzle.MassFlux(101_325, 1.2, 1.4, 101_325));

    [Fact]
    public void Flow_against_the_pressure_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("downstreamPressure", () => Nozzle.MassFlux(101_325, 1.2, 1.4, 101_326));
}
