using CsCheck;
using Portwright.Engine.Charge;

namespace Portwright.Engine.Tests.Charges;

public sealed class ChargeTests
{
    private static readonly ChargeGas Petrol = ChargeGas.Of(Fuel.Petrol, 1.12);

    private static readonly Fuel[] Known = [Fuel.IsoOctane, Fuel.Petrol, Fuel.Methanol, Fuel.Ethanol];

    private static readonly Gen<Fuel> Fuels = Gen.Int[0, 3].Select(i => Known[i]);

    [Fact]
    public void Temperature_is_found_again_from_energy_from_any_guess() =>
        Gen.Select(Gen.Double[200, 3500], Gen.Double[0, 1], Gen.Double[200, 3500]).Sample((temperature, burnt, guess) =>
            Assert.Equal(1, Petrol.Temperature(Petrol.InternalEnergy(temperature, burnt), burnt, guess) / temperature, 1e-9));

    [Fact]
    public void No_temperature_for_an_energy_out_of_reach_is_said() => Assert.Throws<ArithmeticException>(() => Petrol.Temperature(1e9, 0, 300));

    [Fact]
    public void Heat_capacity_is_the_slope_of_enthalpy() =>
        Gen.Select(Gen.Double[250, 3400], Gen.Double[0, 1]).Where((t, _) => Math.Abs(t - 1000) > 1).Sample((t, burnt) =>
            Assert.Equal(1, (Petrol.Enthalpy(t + 0.5, burnt) - Petrol.Enthalpy(t - 0.5, burnt)) / Petrol.HeatCapacity(t, burnt), 1e-6));

    [Fact]
    public void Enthalpy_is_counted_from_298_15_K()
    {
        Assert.Equal(0, Petrol.Enthalpy(298.15, 0.4), 1e-9);
        Assert.Equal(-Petrol.GasConstant(0.4) * 298.15, Petrol.InternalEnergy(298.15, 0.4), 1e-6);
    }

    [Fact]
    public void Constant_heats_stay_constant()
    {
        var gas = ChargeGas.Constant(1.35, 290);

        Assert.Equal(1.35, gas.HeatCapacityRatio(2500, 0.7), 1e-12);
        Assert.Equal(290, gas.GasConstant(0.3), 1e-12);
        Assert.Equal(Math.Sqrt(1.35 * 290 * 700), gas.SoundSpeed(700, 0), 1e-9);
    }

    [Fact]
    public void Burning_keeps_every_atom_of_carbon_hydrogen_and_oxygen() =>
        Gen.Select(Fuels, Gen.Double[0.3, 1.5]).Sample((fuel, richness) =>
        {
            var burnt = Composition.Burnt(fuel, richness);
            Assert.Equal(fuel.Carbon, burnt.CarbonDioxide + burnt.CarbonMonoxide, 1e-9);
            Assert.Equal(fuel.Hydrogen, 2 * (burnt.Water + burnt.Hydrogen), 1e-9);
            var oxygen = 2 * fuel.OxygenToBurn / richness + fuel.Oxygen;
            Assert.Equal(oxygen, 2 * burnt.CarbonDioxide + burnt.CarbonMonoxide + burnt.Water + 2 * burnt.Oxygen, 1e-9);
        });

    [Fact]
    public void Rich_gas_freezes_at_the_water_gas_constant_and_nothing_is_below_zero() =>
        Gen.Select(Fuels, Gen.Double[1.01, 1.5]).Sample((fuel, richness) =>
        {
            var burnt = Composition.Burnt(fuel, richness);
            Assert.Equal(Composition.WaterGas, burnt.CarbonMonoxide * burnt.Water / (burnt.CarbonDioxide * burnt.Hydrogen), 1e-6);
            Assert.True(burnt is { CarbonDioxide: > 0, CarbonMonoxide: > 0, Hydrogen: > 0, Water: > 0 });
        });

    /// <summary>Mass of air over mass of fuel, from the atoms by hand: iso-octane 12.5 O2 x 4.7733 x 28.96/114.23 = 15.13.</summary>
    [Fact]
    public void Air_that_just_burns_the_fuel()
    {
        Assert.Equal(15.13, Fuel.IsoOctane.AirForFuel, 0.02);
        Assert.Equal(6.47, Fuel.Methanol.AirForFuel, 0.02);
        Assert.Equal(9.0, Fuel.Ethanol.AirForFuel, 0.02);
    }

    [Fact]
    public void All_the_heating_value_comes_out_where_there_is_air_enough_and_less_where_there_is_not()
    {
        Assert.Equal(Fuel.Petrol.HeatingValue, Fuel.Petrol.HeatAt(0.9), 1e-6);
        Assert.Equal(Fuel.Petrol.HeatingValue, Fuel.Petrol.HeatAt(1), 1e-6);
        Assert.Equal(Fuel.Petrol.HeatingValue, Fuel.Petrol.HeatAt(1 + 1e-9), 1.0);
        Assert.InRange(Fuel.Petrol.HeatAt(1.2) / Fuel.Petrol.HeatingValue, 0.75, 0.87);
        // Beyond just enough, the same air sets less free: oxygen that only makes carbon monoxide of carbon gives the least heat of all.
        Assert.InRange(Fuel.Petrol.HeatPerAir(1.2) / Fuel.Petrol.HeatPerAir(1), 0.9, 1);
    }

    [Fact]
    public void Heat_of_a_kilogram_of_charge_is_that_of_its_air() =>
        Gen.Select(Fuels, Gen.Double[0.3, 1.5]).Sample((fuel, richness) =>
            Assert.Equal(1, fuel.HeatPerCharge(richness) * (1 + richness / fuel.AirForFuel) / fuel.HeatPerAir(richness), 1e-12));

    [Theory]
    [InlineData(0.2)]
    [InlineData(1.6)]
    [InlineData(double.NaN)]
    public void A_mixture_too_lean_or_too_rich_to_burn_is_refused(double richness) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Composition.Burnt(Fuel.Petrol, richness));
}
