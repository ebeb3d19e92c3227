namespace Portwright.Shop.Units;

/// <summary>
/// What kind of quantity a field holds. Each has one SI unit inside, default units at the edge
/// (<see cref="Unit.Default"/>) and a range a typed value must lie in (<see cref="TypedRange"/>).
/// </summary>
public enum Dimension
{
    /// <summary>A length: bore, valve head, distance along the port. m.</summary>
    Length,
    /// <summary>Valve lift. As <see cref="Length"/>, but whole thousandths of an inch may be typed bare. m.</summary>
    Lift,
    /// <summary>Height above the sea; may be negative. m.</summary>
    Elevation,
    /// <summary>A pressure difference: test pressure, manometer, pitot. Pa.</summary>
    Pressure,
    /// <summary>Absolute air pressure of the room. Pa.</summary>
    Barometer,
    /// <summary>Temperature. K.</summary>
    Temperature,
    /// <summary>Volume flow. m³/s.</summary>
    VolumeFlow,
    /// <summary>Mass flow. kg/s.</summary>
    MassFlow,
    /// <summary>Speed. m/s.</summary>
    Speed,
    /// <summary>Area. m².</summary>
    Area,
    /// <summary>Volume. m³.</summary>
    Volume,
    /// <summary>Angle. rad.</summary>
    Angle,
    /// <summary>A share of a whole, typed in percent: humidity, percent of range. 1.</summary>
    Fraction,
    /// <summary>A plain number: a coefficient, a rocker ratio. 1.</summary>
    Ratio,
    /// <summary>Density. kg/m³.</summary>
    Density,
    /// <summary>Rotational speed. rad/s.</summary>
    RotationalSpeed,
    /// <summary>Power. W.</summary>
    Power,
    /// <summary>Torque. N·m.</summary>
    Torque,
    /// <summary>Dynamic viscosity. Pa·s.</summary>
    Viscosity,
    /// <summary>Time. s.</summary>
    Duration,
    /// <summary>A whole number of things. 1.</summary>
    Count,
}

/// <summary>Which units are asked for and printed when none is named.</summary>
public enum UnitSystem
{
    /// <summary>Inch, cfm, ft/s, inH2O, °F, hp, lb-ft; port volumes in cc as the trade has them.</summary>
    UsCustomary,
    /// <summary>mm, l/s, m/s, kPa, °C, kW, N·m.</summary>
    Si,
}
