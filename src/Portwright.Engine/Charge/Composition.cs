using Portwright.Physics;

namespace Portwright.Engine.Charge;

/// <summary>What burnt gas is made of.</summary>
public static class Composition
{
    /// <summary>Of dry air by volume. The rest, carbon dioxide, is counted with the nitrogen. No unit.</summary>
    public const double NitrogenInAir = 0.7812, OxygenInAir = 0.2095, ArgonInAir = 0.0093;

    /// <summary>Equilibrium constant of CO2 + H2 = CO + H2O at which the burnt gas of a rich mixture is taken to freeze: 3.5, as at 1740 K (Heywood 1988, section 4.9.2, from memory); the coefficients of <see cref="Species"/> give 3.5 at 1721 K and 3.58 at 1740 K. No unit.</summary>
    public const double WaterGas = 3.5;

    /// <summary>Moles of burnt gas from one mole of fuel. Nothing is dissociated: at 2800 K real gas is 100 to 150 K cooler for it.</summary>
    /// <param name="fuel">CxHyOz.</param>
    /// <param name="richness">Fuel over the fuel that just burns, 0.3 to 1.5; below 1 oxygen is left, above 1 carbon monoxide and hydrogen, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mixture is leaner or richer than that.</exception>
    public static BurntGas Burnt(Fuel fuel, double richness)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        Require.Between(richness, 0.3, 1.5, nameof(richness), "(no unit)");
        var oxygen = fuel.OxygenToBurn / richness;
        double nitrogen = oxygen * NitrogenInAir / OxygenInAir, argon = oxygen * ArgonInAir / OxygenInAir;
        if (richness <= 1) return new(fuel.Carbon, fuel.Hydrogen / 2, nitrogen, argon, oxygen - fuel.OxygenToBurn, 0, 0);

        // Oxygen atoms fix all but the carbon monoxide x: CO2 c - x, H2O o - 2c + x, H2 h/2 - H2O; x H2O = K CO2 H2 has one root between the limits.
        double c = fuel.Carbon, h2 = fuel.Hydrogen / 2, o = 2 * oxygen + fuel.Oxygen;
        var monoxide = Root.Between(
            x => (x * (o - 2 * c + x) - WaterGas * (c - x) * (h2 - o + 2 * c - x)) / (c * c),
            Math.Max(0, 2 * c - o),
            Math.Min(c, h2 + 2 * c - o));
        var water = o - 2 * c + monoxide;
        return new(c - monoxide, water, nitrogen, argon, 0, monoxide, h2 - water);
    }
}

/// <summary>Moles of each gas in what one mole of fuel leaves.</summary>
/// <param name="CarbonDioxide">No unit: moles a mole of fuel.</param>
/// <param name="Water">No unit: moles a mole of fuel.</param>
/// <param name="Nitrogen">No unit: moles a mole of fuel.</param>
/// <param name="Argon">No unit: moles a mole of fuel.</param>
/// <param name="Oxygen">No unit: moles a mole of fuel.</param>
/// <param name="CarbonMonoxide">No unit: moles a mole of fuel.</param>
/// <param name="Hydrogen">No unit: moles a mole of fuel.</param>
public readonly record struct BurntGas(
    double CarbonDioxide, double Water, double Nitrogen, double Argon, double Oxygen, double CarbonMonoxide, double Hydrogen)
{
    public HeatCurve Heat() => HeatCurve.Of(
        (Species.CarbonDioxide, CarbonDioxide), (Species.WaterVapour, Water), (Species.Nitrogen, Nitrogen), (Species.Argon, Argon),
        (Species.Oxygen, Oxygen), (Species.CarbonMonoxide, CarbonMonoxide), (Species.Hydrogen, Hydrogen));
}
