using Portwright.Shop.Record;

namespace Portwright.Judging.Ports;

/// <summary>A station of a made port: where it lies, its outline and its air.</summary>
public sealed class MadeStation(string letter, StationRole role, double along, SpeedField field)
{
    public Guid Id { get; set; }

    public string Letter { get; } = letter;

    public StationRole Role { get; } = role;

    /// <summary>Share of the centreline from the flange.</summary>
    public double Along { get; } = along;

    public SpeedField Field { get; } = field;

    public RoundedSection Section => Field.Section;

    /// <summary>The outline grows or shrinks to so many times its area.</summary>
    public void Resize(double area) => Field.Fill(Section.Sized(area));
}
