namespace Portwright.Shop.Units;

/// <summary>
/// What kind of quantity a field holds. Each has one SI unit inside, default units at the edge
/// (<see cref="Unit.Default"/>) and a range a typed value must lie in (<see cref="TypedRange"/>).
/// </summary>
public enum Dimension
{
    // Sentences that were saved name a dimension by its number: a new one goes to the end, none is ever moved.
    /// <summary>A length: bore, valve head, distance along the port. m.</summary>
    Length = 0,
    /// <summary>Valve lift. As <see cref="Length"/>, but whole thousandths of an inch may be typed bare. m.</summary>
    Lift = 1,
    /// <summary>Height above the sea; may be negative. m.</summary>
    Elevation = 2,
    /// <summary>A pressure difference: test pressure, manometer, pitot. Pa.</summary>
    Pressure = 3,
    /// <summary>Absolute air pressure of the room. Pa.</summary>
    Barometer = 4,
    /// <summary>Temperature. K.</summary>
    Temperature = 5,
    /// <summary>Volume flow. m³/s.</summary>
    VolumeFlow = 6,
    /// <summary>Mass flow. kg/s.</summary>
    MassFlow = 7,
    /// <summary>Speed. m/s.</summary>
    Speed = 8,
    /// <summary>Area. m².</summary>
    Area = 9,
    /// <summary>Volume. m³.</summary>
    Volume = 10,
    /// <summary>Angle. rad.</summary>
    Angle = 11,
    /// <summary>A share of a whole, typed in percent: humidity, percent of range. 1.</summary>
    Fraction = 12,
    /// <summary>A plain number: a coefficient, a rocker ratio. 1.</summary>
    Ratio = 13,
    /// <summary>Density. kg/m³.</summary>
    Density = 14,
    /// <summary>Rotational speed. rad/s.</summary>
    RotationalSpeed = 15,
    /// <summary>Power. W.</summary>
    Power = 16,
    /// <summary>Torque. N·m.</summary>
    Torque = 17,
    /// <summary>Dynamic viscosity. Pa·s.</summary>
    Viscosity = 18,
    /// <summary>Time. s.</summary>
    Duration = 19,
    /// <summary>A whole number of things. 1.</summary>
    Count = 20,
}

/// <summary>Which units are asked for and printed when none is named.</summary>
public enum UnitSystem
{
    // Pinned with the dimensions, whose units it chooses.
    /// <summary>Inch, cfm, ft/s, inH2O, °F, hp, lb-ft; port volumes in cc as the trade has them.</summary>
    UsCustomary = 0,
    /// <summary>mm, l/s, m/s, kPa, °C, kW, N·m.</summary>
    Si = 1,
}
