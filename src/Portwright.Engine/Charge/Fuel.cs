namespace Portwright.Engine.Charge;

/// <summary>A fuel by its atoms and lower heating value.</summary>
/// <param name="Carbon">Atoms in a molecule of it, no unit.</param>
/// <param name="Hydrogen">Atoms in a molecule of it, no unit.</param>
/// <param name="Oxygen">Atoms in a molecule of it, no unit.</param>
/// <param name="HeatingValue">Lower, liquid fuel, constant pressure, J/kg.</param>
public sealed record Fuel(string Name, double Carbon, double Hydrogen, double Oxygen, double HeatingValue)
{
    private const double CarbonMass = 0.012011, HydrogenMass = 0.001008, OxygenMass = 0.015999;

    /// <summary>C8H18; 44.3 MJ/kg (Heywood 1988, table D.4, from memory).</summary>
    public static readonly Fuel IsoOctane = new("iso-octane", 8, 18, 0, 44.3e6);

    /// <summary>Usual petrol as C7.9H14.8; 44.0 MJ/kg (Heywood 1988, table D.4, from memory). Petrols differ: the conventional one of the Hydrogen Analysis Resource Center's table has 43.44.</summary>
    public static readonly Fuel Petrol = new("petrol", 7.9, 14.8, 0, 44.0e6);

    /// <summary>CH3OH; 20.0 MJ/kg (Heywood 1988, table D.4, from memory); 20.09 in that table.</summary>
    public static readonly Fuel Methanol = new("methanol", 1, 4, 1, 20.0e6);

    /// <summary>C2H5OH; 26.9 MJ/kg (Heywood 1988, table D.4, from memory); 26.95 in that table.</summary>
    public static readonly Fuel Ethanol = new("ethanol", 2, 6, 1, 26.9e6);

    /// <summary>kg/mol.</summary>
    public double MolarMass => Carbon * CarbonMass + Hydrogen * HydrogenMass + Oxygen * OxygenMass;

    /// <summary>Moles of O2 that burn one mole, no unit.</summary>
    public double OxygenToBurn => Carbon + Hydrogen / 4 - Oxygen / 2;

    /// <summary>Mass of dry air that just burns a mass of fuel, no unit.</summary>
    public double AirForFuel
    {
        get
        {
            var air = Composition.NitrogenInAir * Species.Nitrogen.MolarMass + Composition.OxygenInAir * Species.Oxygen.MolarMass + Composition.ArgonInAir * Species.Argon.MolarMass;
            return OxygenToBurn / Composition.OxygenInAir * air / MolarMass;
        }
    }

    /// <summary>Heat set free by a kilogram of fuel at this richness, J/kg: the heating value less what carbon monoxide and hydrogen still hold.</summary>
    /// <param name="richness">Ratio of the fuel to the fuel that just burns, 0.3 to 1.5.</param>
    /// <inheritdoc cref="Composition.Burnt"/>
    public double HeatAt(double richness)
    {
        var burnt = Composition.Burnt(this, richness);
        var kept = burnt.CarbonMonoxide * (Species.CarbonMonoxide.FormationEnthalpy - Species.CarbonDioxide.FormationEnthalpy)
            - burnt.Hydrogen * Species.WaterVapour.FormationEnthalpy;
        return HeatingValue - kept / MolarMass;
    }

    /// <summary>Heat for each kilogram of dry air, J/kg.</summary>
    /// <param name="richness">Ratio of the fuel to the fuel that just burns, 0.3 to 1.5.</param>
    /// <inheritdoc cref="Composition.Burnt"/>
    public double HeatPerAir(double richness) => HeatAt(richness) * richness / AirForFuel;

    /// <summary>Heat for each kilogram of air and fuel together, J/kg.</summary>
    /// <param name="richness">Ratio of the fuel to the fuel that just burns, 0.3 to 1.5.</param>
    /// <inheritdoc cref="Composition.Burnt"/>
    public double HeatPerCharge(double richness) => HeatPerAir(richness) * AirShare(richness);

    /// <summary>Mass of air in a kilogram of air and fuel together, no unit.</summary>
    /// <param name="richness">Zero or above, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">Richness is below zero.</exception>
    public double AirShare(double richness) => 1 / (1 + Require.NotNegative(richness, nameof(richness), "(no unit)") / AirForFuel);
}
