namespace Portwright.Shop.Record;

/// <summary>What is burnt. What a fuel is called in the porter's words stays in the plan's text.</summary>
public enum FuelKind
{
    Petrol,
    Methanol,
    Ethanol,

    /// <summary>Another: the plan's text says which.</summary>
    Other,
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
