using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Entering;

/// <summary>The port's own measures. What ports usually are: common practice, no source.</summary>
public static class EnteredPort
{
    /// <summary>Flange to seat along the middle line.</summary>
    public static readonly EnteredField Length = new("port.length", "Flange to seat", Dimension.Length, 0.01, 0.5,
        _ => [new(0.045, 0.22, $"a port is {Quantity.Length(0.045)} to {Quantity.Length(0.22)} long")]);

    public static readonly EnteredField Straight = new("port.straight", "Straight", Dimension.Length, 0, 0.5, around =>
        [new(0, 0.95 * (around[Length] ?? 0.22), $"it is shorter than the port")]);

    /// <summary>Of a station, from the flange.</summary>
    public static readonly EnteredField Distance = new("port.distance", "From the flange", Dimension.Length, 0, 0.5, around =>
        [new(0, 1.02 * (around[Length] ?? 0.22), around[Length] is { } length ? (Sentence)$"the port is {Quantity.Length(length)} long" : $"ports are shorter")]);

    /// <summary>A width, height or radius of a section.</summary>
    public static readonly EnteredField Width = new("section.width", "Width", Dimension.Length, 0.0005, 0.15,
        _ => [new(0.008, 0.085, $"a port is {Quantity.Length(0.008)} to {Quantity.Length(0.085)} across")]);

    /// <summary>Of a valve stem that stands in a section: the valve's own, where that is written down.</summary>
    public static readonly EnteredField StemInAir = new("section.stem", "Stem", Dimension.Length, 0.002, 0.02, around => [around[EnteredValve.Stem] is { } stem
        ? new(0.93 * stem, 1.07 * stem, $"the valve's stem is {Quantity.Length(stem)}")
        : new(0.0043, 0.0128, $"a stem is {Quantity.Length(0.0043)} to {Quantity.Length(0.0128)} thick")]);

    /// <summary>A size of a guide or its boss that stands in a section: less than the section is across.</summary>
    public static readonly EnteredField MetalInAir = new("section.in-air", "Guide or boss", Dimension.Length, 0.0005, 0.1, around => [around[Width] is { } across
        ? new(0.0015, 0.8 * across, $"it stands in a section {Quantity.Length(across)} across")
        : new(0.0015, 0.03, $"guides and bosses are {Quantity.Length(0.0015)} to {Quantity.Length(0.03)}")]);

    /// <summary>Where it stands: up from the floor, or in from the cylinder-wall side.</summary>
    public static readonly EnteredField PlaceInAir = new("section.in-air-place", "Its middle", Dimension.Length, 0, 0.15, around => around[Width] is { } across
        ? [new(0, across, $"the section is {Quantity.Length(across)} at its widest")] : []);

    /// <summary>Edge of it that lies on the port's wall.</summary>
    public static readonly EnteredField OnWall = new("section.on-wall", "Edge on the wall", Dimension.Length, 0, 0.15, around => around[MetalInAir] is { } size
        ? [new(0, 1.6 * size, $"it is {Quantity.Length(size)} at its most")] : []);

    /// <summary>What the sections make of it, to hold the burette against.</summary>
    public static readonly EnteredField Volumes = new("port.volume-by-sections", "Volume by sections", Dimension.Volume, 0, 5e-3, _ => []);

    public static readonly EnteredField Volume = new("port.volume", "Volume", Dimension.Volume, 1e-6, 5e-3, around => [around[Volumes] is { } sections
        ? new(0.75 * sections, 1.3 * sections, $"the sections make {Quantity.Volume(sections)}")
        : new(15e-6, 450e-6, $"ports hold {Quantity.Volume(15e-6)} to {Quantity.Volume(450e-6)}")]);

    /// <summary>Metal left at a wall point.</summary>
    public static readonly EnteredField Wall = new("wall.thickness", "Metal left", Dimension.Length, 0.0001, 0.05,
        _ => [new(0.001, 0.016, $"walls are {Quantity.Length(0.001)} to {Quantity.Length(0.016)} thick")]);

    /// <summary>Of a ball on a rod.</summary>
    public static readonly EnteredField Ball = new("ball.diameter", "Ball diameter", Dimension.Length, 0.001, 0.06,
        _ => [new(0.0045, 0.027, $"balls are {Quantity.Length(0.0045)} to {Quantity.Length(0.027)}")]);

    /// <summary>A pitot probe's reading: no more than the test pressure and a quarter, for what the gauge and a blown jet add.</summary>
    public static readonly EnteredField Probe = new("probe.reading", "Probe", Dimension.Pressure, 0, 40e3, around =>
        [new(0, 1.25 * (around[EnteredRoom.TestPressure] ?? 12e3), $"no air in the port can have more than the test pressure gives it")]);

    public static readonly EnteredField Lift = new("sweep.lift", "Lift", Dimension.Lift, 0, 0.03, around => [around[EnteredValve.Head] is { } head
        ? new(0, 0.42 * head, $"a valve of {Quantity.Length(head)} is lifted to {Quantity.Lift(0.42 * head)} at most")
        : new(0, 0.021, $"valves are lifted to {Quantity.Lift(0.021)} at most")]);

    public static readonly EnteredField Adapter = new("sweep.adapter", "Bore adapter", Dimension.Length, 0.02, 0.4, around => [around[EnteredPlan.Bore] is { } bore
        ? new(0.9 * bore, 1.12 * bore, $"the bore is {Quantity.Length(bore)}")
        : new(0.048, 0.145, $"a bore is {Quantity.Length(0.048)} to {Quantity.Length(0.145)}")]);

    public static readonly EnteredField Hours = new("cut.hours", "Hours at it", Dimension.Duration, 0, 3.6e6, _ => [new(60, 60 * 3600, $"a cut takes minutes or hours")]);
}
