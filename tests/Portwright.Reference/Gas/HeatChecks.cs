using System.Text.Json.Nodes;
using Portwright.Engine.Charge;

namespace Portwright.Reference.Gas;

/// <summary>Heat capacity and enthalpy of air, burnt gas and their mixtures, 300 to 2,800 K: GRI-Mech 3.0 (1999).</summary>
public sealed class HeatChecks
{
    private static readonly Dictionary<string, Species> Gases = new[]
    {
        Species.Nitrogen, Species.Oxygen, Species.Argon, Species.CarbonDioxide, Species.WaterVapour, Species.CarbonMonoxide, Species.Hydrogen,
    }.ToDictionary(s => s.Formula.ToUpperInvariant());

    private static readonly ChargeGas Stoichiometric = ChargeGas.Of(Fuel.IsoOctane), Lean = ChargeGas.Of(Fuel.IsoOctane, 0.85);

    public static TheoryData<PublishedCase> Pure => [.. PublishedCases.Read("gas-dynamics", "species-")];

    public static TheoryData<PublishedCase> Air => [.. PublishedCases.Read("gas-dynamics", "air-")];

    public static TheoryData<PublishedCase> Burnt => [.. PublishedCases.Read("gas-dynamics", "burnt-").Where(c => !c.Id.StartsWith("burnt-lean", StringComparison.Ordinal))];

    public static TheoryData<PublishedCase> BurntLean => [.. PublishedCases.Read("gas-dynamics", "burnt-lean-")];

    public static TheoryData<PublishedCase> Mixed => [.. PublishedCases.Read("gas-dynamics", "mixed-")];

    [Fact]
    public void Coefficients_are_those_printed()
    {
        var c = PublishedCases.Read("gas-dynamics", "nasa7-coefficients").Single();
        foreach (var (name, value) in c.Expected)
        {
            static double[] Row(JsonNode node) => [.. node.AsArray().Select(v => v!.GetValue<double>())];
            var printed = value!.AsObject();
            Assert.Equal(Row(printed["low"]!), Gases[name].Low);
            Assert.Equal(Row(printed["high"]!), Gases[name].High);
            Assert.Equal(Species.Middle, printed["middle_k"]!.GetValue<double>());
            Assert.Equal(printed["molar_mass_kg_mol"]!.GetValue<double>(), Gases[name].MolarMass);
        }
    }

    [Theory, MemberData(nameof(Pure))]
    public void Pure_gas_holds_the_published_heat(PublishedCase c)
    {
        var gas = Gases[c.Text("species").ToUpperInvariant()];
        var heat = HeatCurve.Of((gas, 1));
        var temperatures = c.List("temperature_k");
        for (var i = 0; i < temperatures.Length; i++)
        {
            Near("cp_j_mol_k", heat.HeatCapacity(temperatures[i]) * gas.MolarMass);
            Near("enthalpy_above_298_15_j_mol", heat.Enthalpy(temperatures[i]) * gas.MolarMass);

            void Near(string key, double got)
            {
                var expected = c.Expected[key]!.AsArray()[i]!.GetValue<double>();
                Assert.True(Math.Abs(got / expected - 1) <= c.Tolerance, $"{c.Id} ({c.Source}): {key} at {temperatures[i]} K expected {expected:R}, got {got:R}");
            }
        }
    }

    [Theory, MemberData(nameof(Air))]
    public void Air_holds_the_published_heat(PublishedCase c) => Check(c, Stoichiometric, 0);

    [Theory, MemberData(nameof(Burnt))]
    public void Burnt_gas_holds_the_published_heat(PublishedCase c) => Check(c, Stoichiometric, 1);

    [Theory, MemberData(nameof(BurntLean))]
    public void Burnt_gas_of_a_lean_mixture_holds_the_published_heat(PublishedCase c) => Check(c, Lean, 1);

    [Theory, MemberData(nameof(Mixed))]
    public void Fresh_and_burnt_gas_mixed_hold_the_published_heat(PublishedCase c) => Check(c, Stoichiometric, c.In("burnt_mass_fraction"));

    private static void Check(PublishedCase c, ChargeGas gas, double burnt)
    {
        double t = c.In("temperature_k"), r = gas.GasConstant(burnt);
        c.Check("molar_mass_kg_mol", Species.GasConstant / r);
        c.Check("gas_constant_j_kg_k", r);
        c.Check("cp_j_kg_k", gas.HeatCapacity(t, burnt));
        c.Check("gamma", gas.HeatCapacityRatio(t, burnt));
        c.Check("enthalpy_above_298_15_j_kg", gas.Enthalpy(t, burnt));
        c.Check("enthalpy_with_formation_j_kg", gas.Enthalpy(t, burnt) + (1 - burnt) * gas.Fresh.EnthalpyAtDatum + burnt * gas.Burnt.EnthalpyAtDatum);
        // Counted there from zero at 298.15 K, here from -R 298.15 K.
        c.Check("internal_energy_above_298_15_j_kg", gas.InternalEnergy(t, burnt) + r * Species.Datum);
        c.Check("sound_speed_m_s", gas.SoundSpeed(t, burnt));
    }
}
