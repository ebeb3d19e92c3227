using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>How a section was measured.</summary>
public enum SectionForm
{
    // Records hold the name and are read by number too: neither is ever changed.
    /// <summary>Width, height, then one corner radius, or four: roof at the cylinder wall, roof at the centre, floor at the cylinder wall, floor at the centre.</summary>
    Rectangle = 0,

    /// <summary>An ellipse: width, height.</summary>
    Oval = 1,

    /// <summary>Two half rounds joined by straights: width, height.</summary>
    Racetrack = 2,

    /// <summary>Two circles joined by tangents: roof radius, floor radius, height.</summary>
    Egg = 3,

    /// <summary>Floor width, roof width, height.</summary>
    Trapezoid = 4,

    /// <summary>Height above the floor and width there, in pairs from floor to roof.</summary>
    Widths = 5,

    /// <summary>Points of the outline, x towards the centre side and y towards the roof, in pairs.</summary>
    Traced = 6,

    /// <summary>Width and height by tape or caliper, then the points of the template that fits, in pairs.</summary>
    Template = 7,
}

/// <summary>The outline of the port at a station, as it was measured at one cut.</summary>
/// <param name="Readings">In the order <see cref="SectionForm"/> states.</param>
/// <param name="CornerRadii">Of a section by widths or a trapezoid: one, or four as for the rectangle; null for sharp corners.</param>
/// <param name="Tilt">Angle of the measured plane to the square section of the centreline; null: square.</param>
/// <param name="Step">The finest step the caliper or tape shows; null: .001 in.</param>
/// <param name="InAir">What stands in it and takes its area off; null: nothing was noted.</param>
public sealed record Section(
    Guid Cut,
    Guid Station,
    SectionForm Form,
    IReadOnlyList<Typed> Readings,
    IReadOnlyList<Typed>? CornerRadii = null,
    Typed? Tilt = null,
    Typed? Step = null,
    string Notes = "",
    IReadOnlyList<MetalInAir>? InAir = null) : Fact
{
    public override bool IsMeasured => true;
}

/// <summary>The port's volume as a burette gave it, valve seated, flange closed by a plate.</summary>
/// <param name="Liquid">Of the burette and the metal; null: 20 degC.</param>
public sealed record VolumeReading(Guid Cut, Typed Volume, Typed? Liquid = null, string Notes = "") : Fact
{
    public override bool IsMeasured => true;
}
