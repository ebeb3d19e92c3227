using CsCheck;
using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.Tests.TestPiece;

namespace Portwright.Physics.Tests.Metering;

public sealed class LaminarAndReadoutTests
{
    [Fact]
    public void A_laminar_elements_differential_is_that_of_viscosity_and_entries() =>
        Gen.Select(Weather.Any, Gen.Double[1, 2000], Gen.Double[0, 1e5]).Sample((air, dp, inertia) =>
        {
            var volume = new LaminarElement(2e-5, 1.8e-5, inertia).Flow(dp, air).MassFlow / air.Density;
            Assert.Equal(dp, air.DynamicViscosity / 1.8e-5 * volume / 2e-5 + inertia * air.Density * volume * volume, dp * 1e-13);
        });

    [Fact]
    public void Without_entries_a_laminar_element_is_a_straight_line() =>
        Gen.Select(Weather.Any, Gen.Double[1, 1000]).Sample((air, dp) =>
        {
            var element = new LaminarElement(2e-5, 1.8e-5);
            Assert.Equal(2 * element.Flow(dp, air).MassFlow, element.Flow(2 * dp, air).MassFlow, 1e-14);
        });

    /// <summary>The display computes Q = K sqrt(2 dp/rho_a); the air passed K sqrt(2 rho dp).</summary>
    [Fact]
    public void A_display_with_an_assumed_density_is_put_right_by_the_root_of_the_densities() =>
        Gen.Select(Weather.Any, Gen.Double[10, 5000]).Sample((air, dp) =>
        {
            const double k = 6e-4, assumed = 1.2;
            var shown = k * Math.Sqrt(2 * dp / assumed);
            var passed = k * Math.Sqrt(2 * air.Density * dp);
            Assert.Equal(passed, DirectReadout.AssumedDensity(assumed).Flow(shown, air).MassFlow, passed * 1e-14);
        });

    [Fact]
    public void Each_readout_basis_names_its_own_density() => Weather.Any.Sample(air =>
    {
        Assert.Equal(air.Density, DirectReadout.ActualAtMeter.Flow(1, air).MassFlow);
        Assert.Equal(air.At(100_000, 288.15).Density, DirectReadout.ActualAtState(100_000, 288.15).Flow(1, air).MassFlow);
        Assert.Equal(StandardAir.Default.Density, DirectReadout.StandardAirCorrected(StandardAir.Default).Flow(1, air).MassFlow);
    });
}
