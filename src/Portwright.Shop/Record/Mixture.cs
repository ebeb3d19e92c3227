namespace Portwright.Shop.Record;

/// <summary>What is burnt. What a fuel is called in the porter's words stays in the plan's text.</summary>
public enum FuelKind
{
    // Records hold the name and are read by number too: neither is ever changed.
    Petrol = 0,
    Methanol = 1,
    Ethanol = 2,

    /// <summary>Another: the plan's text says which.</summary>
    Other = 3,
}

/// <summary>Fuel and how rich it is burnt; null where not known yet.</summary>
/// <param name="Richness">Fuel over the fuel the air could just burn: above 1 is rich.</param>
public sealed record Mixture(FuelKind? Fuel = null, double? Richness = null);

/// <summary>The air where the engine runs; null where not known yet.</summary>
/// <param name="Elevation">Above the sea, m.</param>
/// <param name="Pressure">Of the place itself, not reduced to the sea, Pa.</param>
/// <param name="Temperature">K, as it enters the engine.</param>
/// <param name="RelativeHumidity">As a share of one.</param>
public sealed record RunningAir(double? Elevation = null, double? Pressure = null, double? Temperature = null, double? RelativeHumidity = null);
